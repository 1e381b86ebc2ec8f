"""The seals on a page: which size held and which failed, what the pen was sealed with, and what the tests said."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.fields import Value
from pentools.record.stages.seal.kinds import PLACES, TEST, asked_for
from pentools.record.stages.seal.measure import bore_readings, places_in_use
from pentools.record.stages.seal.sealing import (
    candidates,
    fit_words,
    measured,
    passed_places,
    place_words,
    proofs_done,
    results_that_count,
    suspects,
    trials,
)  # fmt: skip
from pentools.units import Reading, format_reading
from pentools.writeup.blocks import (
    Audience,
    Block,
    Details,
    Facts,
    FigureBlock,
    Findings,
    Lead,
    Notice,
    Paragraph,
    Section,
    Table,
)  # fmt: skip
from pentools.writeup.sections.generic import kind_table, may_show, releases_of
from pentools.writeup.words import THIN, capital, date_in_words, list_in_words

if TYPE_CHECKING:
    from pentools.calc.seal.fit import Candidate
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["section"]

TITLE = "How it was sealed"
CAUTION = (
    "Shellac is cut with alcohol, which burns: no flame near, and fresh air. Never heat celluloid or hard rubber over a flame to undo a joint. "
    "Follow local codes; ask a licensed professional."
)


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was measured, the sizes that failed, the one that held, the sealant, the tests.

    Parameters
    ----------
    job : Job
        The job.
    stage : Stage
        The seal.
    audience : {"client", "blog"}
        Who will see the page; dates, notes and released holds are for the client.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    if not job.record.live(stage.key):
        return Section(stage.key, TITLE)
    blocks: list[Block] = []
    places = places_in_use(job)
    tried = passed_places(job)
    lead = [fit_words(job, place) for place in places if place in tried]
    blocks += [Lead(" ".join(lead))] if lead else []
    for place in places:
        blocks += _place(job, place)
    blocks += _sealant(job, stage)
    blocks += _tests(job, stage, audience)
    if job.record.live(stage.key, "sealant"):
        blocks.append(Notice(CAUTION, "Caution"))
    blocks += _workings(job, stage, audience)
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, TITLE, tuple(blocks))


def _place(job: Job, place: str) -> list[Block]:
    """One seal: measured in a sentence, its ladder and its ring as figures."""
    from pentools.figures.seal.rings import ladder_drawing, ring_drawing

    blocks: list[Block] = []
    words = _measured_words(job, place)
    blocks += [Paragraph(words)] if words else []
    try:
        ladder = ladder_drawing(job, place, ahead=False)
        ring = _ring_that_held(job, place)
    except InputError as error:
        return [
            *blocks,
            Notice(f"The measurements of the {place_words(place)} give no result: {error}", "To be settled"),
        ]
    blocks += [FigureBlock(ladder)] if ladder is not None else []
    blocks += [FigureBlock(ring_drawing(ring))] if ring is not None else []
    return blocks


def _measured_words(job: Job, place: str) -> str:
    values = measured(job, place)
    readings = bore_readings(values)
    if not readings:
        return ""
    hole = "housing" if "housing" in PLACES[place].asks else "bore"
    mean, spread = sum(readings) / len(readings), max(readings) - min(readings)
    many = f", the mean of {len(readings)} readings that differ by {spread:.2f}{THIN}mm," if len(readings) > 1 else ""
    seats = {"groove": "groove or seat", "rod": "rod", "nipple": "nipple"}
    found = ((seats[n], values.get(n)) for n in ("groove", "rod", "nipple") if n in PLACES[place].asks)
    beside = [f"the {name} {value.value:.2f}{THIN}mm" for name, value in found if isinstance(value, Reading)]
    tail = f" and {list_in_words(beside)}" if beside else ""
    return f"At the {place_words(place)} the {hole} measures {mean:.2f}{THIN}mm{many}{tail}."


def _ring_that_held(job: Job, place: str) -> Candidate | None:
    """The ring that pulled back, with the sizes measured on it, in its groove; none while none held."""
    from pentools.calc.seal.fit import seal_fit
    from pentools.calc.seal.gland import Ring
    from pentools.sums.seal.stock import INSIDE_HALF_WIDTH_MM, SECTION_HALF_WIDTH_MM

    fit = candidates(job, place)
    if fit is None or not passed_places(job).get(place):
        return None
    good = {t.entry_id: t for t in trials(job, place) if t.dry and t.happened == "pulls back"}
    for entry, values in reversed(job.log("seal", "trial")):
        section_, inside = values["section"], values["inside"]
        if entry.id in good and isinstance(section_, Reading) and isinstance(inside, Reading):
            halves = (INSIDE_HALF_WIDTH_MM, SECTION_HALF_WIDTH_MM)
            ring = Ring(str(values["what"]), inside.value, section_.value, *halves, measured=True)
            return seal_fit(fit.gland, (ring,), fit.duty).best
    return None


def _sealant(job: Job, stage: Stage) -> list[Block]:
    kind = stage.kind("sealant")
    log = job.log(stage.key, "sealant")
    if not log:
        return []
    used = [v for _, v in log if v["sealant"] != "none"]
    if not used:
        return [Paragraph("No sealant was needed: it holds dry.")]
    parts = []
    for values in used:
        can = "" if values["reversible"] is None else "can" if values["reversible"] else "cannot"
        undone = f" ({can} be undone)" if can else ""
        parts.append(f"{kind.field('sealant').shown(values['sealant'])} at the {place_words(values['place'])}{undone}")
    passed = passed_places(job)
    waited = passed and all(passed.values()) and not job.record.releases("sealant")
    after = "After the dry fit had passed, it" if waited else "It"
    return [Paragraph(f"{after} was sealed with {list_in_words(parts)}.")]


def _tests(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    done = proofs_done(job)
    if not done:
        return []
    names = dict(TEST.field("test").choices)
    blocks: list[Block] = []
    tree, results = suspects(job), results_that_count(job)
    if tree is not None and len(results) > 1:
        text = tree.findings[0].text
        blocks.append(Paragraph(f"Tested together: {text[0].lower()}{text[1:]}" if not tree.named else text))
    entered = {entry.id: (date_in_words(entry.time), values) for entry, values in job.log(stage.key, "test")}
    head: tuple[str, ...] = ("Test", "Result", "Readings and what they say")
    head = ("Date", *head) if audience == "client" else head
    for caption, counts in (("Tests of the seals as they are now", True), ("Tests before the last change", False)):
        rows = []
        for test in (t for t in done if t.counts is counts):
            date, values = entered[test.entry_id]
            said = ". ".join(
                part for part in (_readings_words(values), " ".join(f.text for f in test.findings)) if part
            )
            row = (capital(names.get(test.test, test.test)), test.result or "cannot be told", said or "–")
            rows.append((date, *row) if audience == "client" else row)
        blocks += [Table(caption, head, tuple(rows))] if rows else []
    if tree is not None and tree.named:
        blocks.append(Findings(tree.findings))
    return blocks


_READING_WORDS = {
    "pushed": "pushed {}", "returned": "{} back", "volume": "{} of pen, hose and gauge", "vacuum_start": "from {}",
    "vacuum_end": "to {} below the room", "seconds": "in {}", "gauge": "gauge good to {}", "rested": "{} at rest",
    "damp": "damp: {}",
}  # fmt: skip


def _readings_words(values: Mapping[str, Value]) -> str:
    """What was read in one test, in one text; empty where nothing was read."""
    words = []
    for name, pattern in _READING_WORDS.items():
        value = values[name]
        if value is not None:
            shown = format_reading(value) if isinstance(value, Reading) else TEST.field(name).shown(value)
            words.append(pattern.format(shown))
    return capital(", ".join(words))


def _trial_table(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """Every trial as it was entered; the measured sizes in one column."""
    sizes = (("section", "section"), ("inside", "inside"), ("outside", "outside"))
    rows = []
    for entry, values in job.log(stage.key, "trial"):
        measured_ = [f"{word} {v.value:.2f}{THIN}mm" for n, word in sizes if isinstance(v := values[n], Reading)]
        row = (
            capital(place_words(values["place"])), str(values["what"]), ", ".join(measured_) or "not measured",
            "dry" if values["dry"] is True else "not dry", str(values["happened"]),
        )  # fmt: skip
        rows.append((date_in_words(entry.time), *row) if audience == "client" else row)
    head: tuple[str, ...] = ("Seal", "Size tried", "Measured", "How", "What happened")
    head = ("Date", *head) if audience == "client" else head
    return [Table("Every trial", head, tuple(rows))] if rows else []


def _sealant_table(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """Every sealant with its times."""
    kind = stage.kind("sealant")
    names = ("sealant", "place", "reversible", "open_time", "cure")
    rows = []
    for entry, values in job.log(stage.key, "sealant"):
        row = tuple("–" if values[name] is None else kind.field(name).shown(values[name]) for name in names)
        rows.append((date_in_words(entry.time), *row) if audience == "client" else row)
    head: tuple[str, ...] = ("What", "Where", "Can be undone", "Time to work it", "Time to set")
    head = ("Date", *head) if audience == "client" else head
    return [Table("Sealant", head, tuple(rows))] if rows else []


def _workings(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """Every reading, trial, sealant and tool as it was entered: folded on the screen, open in print."""
    blocks: list[Block] = []
    kind = stage.kind("measure")
    for entry, values in job.log(stage.key, "measure"):
        place = str(values["place"])
        rows = tuple(
            (field.label, field.shown(values[field.name]))
            for field in kind.fields
            if field.name in asked_for(place) and values[field.name] is not None and may_show(field, audience)
        )
        when = f", {date_in_words(entry.time)}" if audience == "client" else ""
        blocks += [Facts(f"Measured: {place_words(place)}{when}", rows)] if rows else []
    blocks += _trial_table(job, stage, audience) + _sealant_table(job, stage, audience)
    blocks += kind_table(job, stage, stage.kind("tool"), audience, caption="Tools made for the job")
    return [Details("Measurements, trials and tools as they were entered", tuple(blocks))] if blocks else []
