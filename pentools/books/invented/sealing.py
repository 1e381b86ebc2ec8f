"""How the seal of an invented pen is measured, tried and set."""

from __future__ import annotations

import random
from collections.abc import Sequence
from typing import Any

from pentools.books.invented.story import Story, quantity
from pentools.books.invented.truth import SEALS, TruePen

__all__ = ["fit_seal"]


def fit_seal(story: Story) -> None:
    """Measure, try dry, set and book the seal of a pen."""
    pen, rng, row = story.pen, story.rng, SEALS[story.pen.seal]
    held, fitted = pen.held_mm or 0.0, pen.fitted_to_mm or 0.0
    if rng.random() < story.rates.waits:
        wanted = {
            "what": f"{row.what}, {held:.1f} mm",
            "part": "seals",
            "ordered_on": story.day(0),
            "expected_by": story.day(21),
        }
        story.put("work log", "wanted", **wanted)
        story.wait(8, 30)
        story.put("work log", "wanted", **wanted, arrived_on=story.day(0))
    several = row.at in ("bore", "housing")
    size = [story.mm(fitted) for _ in range(3)] if several else story.mm(fitted)
    story.put("seal", "measure", place=row.place, **{row.at: size}, **_besides(pen, row.place, story))
    for tried, happened in _ladder(rng, held):
        story.put(
            "seal",
            "trial",
            place=row.place,
            what=f"{row.what}, {tried:.2f} mm",
            **{row.by: quantity(tried, "mm")},
            lot=pen.lot,
            dry=True,
            happened=happened,
        )
    story.put(
        "seal",
        "sealant",
        sealant=_sealant(pen.seal),
        place=row.place,
        reversible=True,
        cure=quantity(24, "h", 0),
    )
    story.put(
        "work log",
        "material",
        what=f"{row.what}, {held:.1f} mm",
        way="added",
        part="seals",
        reversible=True,
        lot=pen.lot,
        cost=f"{row.cost} EUR",
    )
    story.put("work log", "material", what="the old seal", way="removed", part="seals", reversible=False)
    story.work("seal")
    story.wait(1, 3)


def _sealant(seal: str) -> str:
    """What a seal is set with."""
    return {
        "latex sac": "shellac",
        "pleated sac": "shellac",
        "bulb": "shellac",
        "diaphragm": "shellac",
        "silicone sac": "silicone",
    }.get(seal, "grease")


def _besides(pen: TruePen, place: str, story: Story) -> dict[str, Any]:
    """What is measured beside the size that the seal is fitted to."""
    held = pen.held_mm or 0.0
    others: dict[str, dict[str, Any]] = {
        "sac": {"material": pen.seal.split()[0].replace("pleated", "latex"), "nipple": story.mm(held * 0.88), "nipple_length": story.mm(6.0), "depth": story.mm(78.0)},
        "head": {"groove": story.mm((pen.fitted_to_mm or 0.0) - 3.0), "width": story.mm(2.3)},
        "cork": {"length": story.mm(6.0)},
        "packing": {"rod": story.mm(2.5), "width": story.mm(3.0)},
        "washer": {"rod": story.mm(pen.dimensions.get("rod") or 2.5)},
        "diaphragm": {"rubber": story.mm(held), "rubber_length": story.mm(22.0)},
        "bulb": {"nipple_length": story.mm(6.0)},
    }  # fmt: skip
    return others.get(place, {})


def _ladder(rng: random.Random, held: float) -> Sequence[tuple[float, str]]:
    """Sizes tried dry, the one that held last."""
    below = [
        (held - 0.1 * n, "slides, no suction" if n == 1 else "no touch") for n in range(rng.randrange(0, 3), 0, -1)
    ]
    above = [(held + 0.15, "too stiff")] if rng.random() < 0.25 else []
    return (*below, *above, (held, "pulls back"))
