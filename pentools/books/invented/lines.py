"""What is written down of an invented pen: the entries of its record, as far as the work has got."""

from __future__ import annotations

import datetime as dt
import random
from collections.abc import Mapping
from decimal import ROUND_CEILING, Decimal

from pentools.books.invented.pens import RATE
from pentools.books.invented.sealing import fit_seal
from pentools.books.invented.story import Story, quantity
from pentools.books.invented.truth import MINUTES, SEALS, TruePen, Truth
from pentools.record.entries import Entry, encode_entry
from pentools.systems.registry import system_named

__all__ = ["lines_of"]

WARMTH = {"celluloid": 48, "hard rubber": 55, "acrylic": 45}
_DAMAGE = {
    "re-sac": ("seals", "The sac is a hard tube and rattles in pieces."),
    "cork or ring": ("seals", "The seal has shrunk; ink stands behind the head."),
    "diaphragm": ("seals", "The diaphragm is stiff and split at its lip."),
    "plunger": ("seals", "The washer is hard and lets the ink past."),
    "nib only": ("nib", "The tines stand unlevel at the tip."),
    "finish only": ("barrel", "Scratches all over, of the drawer it lay in."),
    "whole": ("whole", "It has not been opened for a lifetime; nothing moves."),
    "look": ("whole", "Nothing is known of it."),
}
_LIMITS = (
    ("cap", "A hairline at the lip, 3 mm long.", "It is stable, and a weld would show."),
    ("clip", "Wear of the plating at the ball.", "Plating goes further off with every polish."),
    ("barrel", "A tooth mark beside the lever.", "It would have to be sanded out."),
    ("nib", "It stays as fine as it was.", "Nobody asked for another line."),
)


def lines_of(
    pen: TruePen, truth: Truth, parts: Mapping[str, TruePen], rng: random.Random, entries: int | None
) -> bytes:
    """The record of one pen, as it stands on the bench's last day.

    Parameters
    ----------
    parts : mapping of str to TruePen
        Every job by name, for a pen that comes back.
    entries : int or None
        How many lines at least; weighings and abrasive steps are added until there are.

    Returns
    -------
    bytes
        ``record.jsonl``, every line with its end.
    """
    story = _Telling(pen, truth, rng)
    story.tell(parts.get(pen.again_of))
    rows = [row for row in story.rows if row.at[:10] <= truth.until]
    _fill_up(rows, story, entries)
    return b"".join(encode_entry(row) + b"\n" for row in rows)


def _fill_up(rows: list[Entry], story: Story, entries: int | None) -> None:
    """More weighings and remarks, before the end where there is one, until there are so many lines."""
    missing = (entries or 0) - len(rows)
    if missing <= 0:
        return
    place = next((n for n, row in enumerate(rows) if row.stage in ("limits", "release")), len(rows))
    agreed = any(row.kind == "yes" for row in rows)
    story.at, story.rows = rows[place - 1].time, []
    for number in range(missing):
        story.at += dt.timedelta(seconds=1) if number < 50 else dt.timedelta(0)
        if not agreed:
            story.log("identify", "mark", {"where": "barrel", "text": f"a worn line, number {number + 1}"})
        elif number % 8 < 6 and story.pen.share is not None:
            story.log("fill test", "weighing", story.weighing("drained" if number % 8 < 3 else "filled"))
        else:
            story.log("work log", "note", {"note": f"Looked at again, number {number + 1}; no change."})
    rows[place:place] = story.rows


class _Telling(Story):
    """All that happens to a pen, from the parcel to the answer."""

    def tell(self, before: TruePen | None) -> None:
        """The whole story, from the parcel to the answer."""
        self._arrives(before)
        self.wait(1, 9)
        self._looked_at()
        if not self._agreed(before):
            return
        if self.pen.ending in ("stopped", "returned"):
            self.wait(0, 3)
            self.work("look", "open")
            self._ends()
            return
        self.wait(1, 20)
        self._opened()
        if self.pen.seal:
            fit_seal(self)
        self._finished()
        self._tested()
        self._ends()

    def _arrives(self, before: TruePen | None) -> None:
        pen, rng = self.pen, self.rng
        self.put(
            "intake", "owner", owner=pen.owner, contact=f"{pen.owner.lower().replace(' ', '.')}@post.example",
            may_decide=True, declared_value=f"{rng.randrange(40, 300, 10)} EUR",
        )  # fmt: skip
        outside = max(pen.dimensions.get("bore", 0.0), pen.fitted_to_mm or 0.0, 8.5) + rng.uniform(2.4, 3.4)
        self.put(
            "intake", "arrival", pen=f"{pen.job.split('-')[2]} {system_named(pen.system).label}, no maker’s mark",
            system=pen.system, material=pen.material, arrived_on=pen.arrived_on, pieces=["pen with its cap"],
            mass_g=quantity(self.empty_g, "g"), capped_mm=self.mm(rng.uniform(118, 140)), cap_mm=self.mm(rng.uniform(56, 66)),
            barrel_mm=self.mm(rng.uniform(68, 80)), barrel_outside_mm=self.mm(outside), section_outside_mm=self.mm(rng.uniform(8.6, 9.8)),
        )  # fmt: skip
        self.put(
            "intake", "request", asked=f"Please see to it: {pen.work}.", work=pen.work, meant_for=rng.choice(("use", "use", "collection", "keepsake")),
            promised_by=self.day(rng.randint(40, 90)) if rng.random() < self.rates.promised else None,
        )  # fmt: skip
        if pen.lead:
            self.put("intake", "came with", lead=pen.lead)
        if before is not None:
            self.put(
                "intake", "coming back", older=before.job, failed="It leaks again.", part="seals", cause="part", covered=True,
                fitted=[f"seals and sac: {SEALS[before.seal].what}"], lots=[f"seals and sac: {before.lot}"],
            )  # fmt: skip

    def _looked_at(self) -> None:
        part, seen = _DAMAGE[self.pen.work]
        self.put("condition", "part", part=part, seen=seen, severity=str(self.pen.difficulty))
        for other in self.rng.sample(("cap", "clip", "barrel", "section", "feed"), self.rng.randrange(1, 4)):
            worst = min(self.pen.difficulty, self.rng.randrange(3))
            self.put("condition", "part", part=other, seen="Worn as its years allow.", severity=str(worst))

    def _agreed(self, before: TruePen | None) -> bool:
        """The estimate and the owner's yes to it; whether one came."""
        pen = self.pen
        parts = Decimal(SEALS[pen.seal].cost) if pen.seal else Decimal(0)
        most = Decimal(_euro(sum(pen.minutes.values()) / 60, parts)[:-4])
        if before is None:
            low, likely, high = self._hours()
            ceiling = _euro(high * 1.15, parts)
            self.put(
                "agree", "estimate", hours_low=quantity(low, "h"), hours_likely=quantity(likely, "h"),
                hours_high=quantity(high, "h"), parts_cost=f"{parts:.2f} EUR", price_low=_euro(low, parts),
                price_high=_euro(high, parts), ceiling=ceiling,
            )  # fmt: skip
            self.put(
                "agree",
                "proposal",
                part=_DAMAGE[pen.work][0],
                mendable="yes",
                proposed=f"{pen.work.capitalize()}, as usual.",
                reversible=True,
            )
            if self.rng.random() < self.rates.unanswered:
                return False
            most = max(most, Decimal(ceiling[:-4]))
            self.wait(1, 14)
        self.put(
            "agree", "yes", to=["heat", "soak", "polish", "sealant", "replace part", "nib work", "proposal"],
            at_most=f"{most + 5} EUR", answered_on=self.day(0), channel="by e-mail", by="the owner", authority=True,
        )  # fmt: skip
        if self.rng.random() < self.rates.deposits and before is None:
            self.put(
                "agree",
                "money received",
                amount="20.00 EUR",
                received_on=self.day(0),
                how="transfer",
                what_for="deposit",
            )
        self.work("look")
        return True

    def _hours(self) -> tuple[float, float, float]:
        """What the bench thinks it will take, low, likely and high [h], from its own medians and spreads."""
        pen, rates = self.pen, self.rates
        middle = sum(self.truth.minutes[f"{pen.system}|{pen.work}|{name}"] for name in MINUTES[pen.work])
        likely = middle * rates.step ** (pen.difficulty - 2) / 60
        return likely * 0.72, likely, likely * 1.45

    def _opened(self) -> None:
        pen = self.pen
        if "open" not in pen.minutes:
            return
        self.put(
            "open", "material", part="barrel", material=pen.material, told_by="its smell when rubbed warm", sure=True
        )
        self.put("open", "joint", joint="section", sealant="shellac", seen="Amber in the step to the barrel.")
        if pen.material in WARMTH:
            for number in range(self.rng.randrange(1, 4)):
                warm = WARMTH[pen.material] - self.rng.randrange(0, 6)
                self.put(
                    "open", "heat pass", joint="section", surface=quantity(warm, "degC", 0),
                    minutes=quantity(self.rng.randrange(2, 5), "min", 0), moved="nothing" if not number else "a hair", free=None,
                )  # fmt: skip
        self.put(
            "open", "step", number=1, did="Section out of the barrel by hand.", came_off=["section with nib and feed"]
        )
        if pen.material in ("celluloid", "acrylic"):
            self.put(
                "open", "material", part="nib", material="gold", told_by="stamped, no tarnish at the slit", sure=True
            )
            self.put(
                "clean",
                "bath",
                part="nib",
                bath="cold water soak",
                minutes=quantity(self.rng.randrange(4, 12), "min", 0),
                came_out="old ink",
            )
        self.work("open", "clean")

    def _finished(self) -> None:
        pen, rng = self.pen, self.rng
        if "nib" in pen.minutes:
            self.put(
                "nib",
                "loupe",
                when="found",
                tipping="sound",
                tines="left high",
                step=quantity(rng.uniform(0.02, 0.12), "mm"),
            )
            self.put("nib", "adjust", what="tines", did="Set level over a brass form.", bends=rng.randrange(1, 5))
            self.put("nib", "smoothing plan", feel="a little toothy")
            for grade in ("film 3 um", "film 1 um"):
                for _ in range(rng.randrange(1, 5)):
                    self.put("nib", "smoothing", grade=grade, strokes=rng.randrange(2, 5), figure="eight", looked=True)
            self.put("nib", "loupe", when="after", tipping="sound", tines="level")
            self.work("nib")
        if "finish" in pen.minutes:
            self._polished()
            self.work("finish")

    def _polished(self) -> None:
        pen, rng = self.pen, self.rng
        self.put("finish", "masks on", masks=True, with_what="tape over imprint and band")
        self.put(
            "finish",
            "plan",
            material=pen.material,
            defect="light scratch",
            finish="5 um",
            zone="plain barrel",
            trim="none",
            own=list(self.truth.removal),
        )
        across = rng.uniform(11.5, 13.0)
        factor = {"celluloid": 1.0, "hard rubber": 1.2}.get(pen.material, 0.7)
        self.put("finish", "measure", station="mid barrel", diameter=quantity(across, "mm", 3))
        for grade, rate in self.truth.removal.items():
            minutes = rng.randrange(3, 7)
            across -= 2 * rate * factor * minutes * rng.lognormvariate(0.0, 0.1) / 1000
            self.put(
                "finish",
                "step",
                grade=grade,
                zone="plain barrel",
                minutes=quantity(minutes, "min", 0),
                wet="wet",
                direction="around",
                cleared=True,
            )
            self.put("finish", "measure", station="mid barrel", diameter=quantity(across, "mm", 3))

    def _tested(self) -> None:
        pen = self.pen
        if pen.share is not None:
            names = [name for name in system_named(pen.system).dimensions() if name in pen.dimensions]
            given = {
                name: quantity(pen.dimensions[name], "1", 0) if name == "void_share" else self.read(name)
                for name in names
                if pen.dimensions[name]
            }
            self.put(
                "fill test",
                "setup",
                liquid="water",
                temperature=quantity(20, "degC", 0),
                readability=quantity(0.01, "g"),
            )
            self.put("fill test", "dimensions", **given)
            for _ in range(self.rng.randrange(1, 4)):
                self.drop_g = self.rng.uniform(0.0, self.rates.drop_g)
                for state in ("drained", "filled"):
                    for _ in range(3):
                        self.put("fill test", "weighing", **self.weighing(state))
        self.wait(0.5, 1.5)
        self.put("fill test", "leak check", rested=quantity(self.rng.randrange(10, 20), "h", 0), dry=True, how="nib up")
        self.work("test")

    def _ends(self) -> None:
        pen = self.pen
        early = pen.ending in ("stopped", "returned")
        if pen.ending == "done with limits":
            part, left, why = self.rng.choice(_LIMITS)
            self.put("limits", "limit", part=part, left=left, why=why)
        elif not early:
            self.put("limits", "nothing left", nothing_left=True)
        self.work("write")
        self.put(
            "release", "result", ending=pen.ending, summary="It goes home as it came." if early else "It works again.",
            price=None if early else f"{pen.price} EUR", care="Plain cool water and fountain pen ink.", released_on=self.day(0),
            promise_until=None if early else self.day(180), follow_up_on=self.day(60) if not early and self.rng.random() < 0.1 else None,
        )  # fmt: skip
        if self.rng.random() < self.rates.uncollected:
            return
        self.wait(1, 6)
        self.put("posting", "parcel", carried="registered", sent_on=self.day(0), packed="tube", empty=True)
        self.wait(2, 7)
        self.put("posting", "arrived", arrived_on=self.day(0), state="whole")


def _euro(hours: float, parts: Decimal) -> str:
    """Hours at the bench's rate and the parts, rounded up to a whole amount."""
    return f"{(RATE * Decimal(f'{hours:.2f}') + parts).quantize(Decimal(1), ROUND_CEILING)} EUR"
