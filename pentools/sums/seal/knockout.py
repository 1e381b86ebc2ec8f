"""The knock-out sum: feed and section in, windows for a tube and its block out, to be made and found again."""

from __future__ import annotations

from pentools import tables
from pentools.calc.seal.knockout import CLEARANCE_MM, LEAST_WALL_MM, KnockoutTool, Soak, knockout_tool
from pentools.calc.treatment.limits import CompatibilityRow, treatment_limits
from pentools.calc.treatment.materials import UNKNOWN
from pentools.fields import Field
from pentools.sums.base import Inputs, Sum, SumAnswer

__all__ = ["KNOCKOUT", "knockout_answer"]

FIELDS = (
    Field("tail", "Feed's tail", "quantity", unit="mm", low=0, high=8, required=True, hint="what must stay clear inside the tube, such as 1.80 mm; 0 mm for a solid punch"),
    Field("shoulder", "Feed's shoulder", "quantity", unit="mm", low=0.5, high=14, required=True, hint="what the tube bears on, such as 4.20 mm"),
    Field("bore", "Section bore", "quantity", unit="mm", low=1, high=15, required=True, hint="smallest bore on the nipple side, such as 5.00 mm"),
    Field("depth", "Depth", "quantity", unit="mm", low=0, high=60, hint="from the nipple's mouth to the shoulder and the way to drive, such as 18 mm"),
    Field("front", "Nib and feed", "quantity", unit="mm", low=1, high=16, hint="largest width that falls through the block, such as 8.0 mm"),
    Field("section", "Section's front edge", "quantity", unit="mm", low=3, high=20, hint="outside diameter that rests on the block, such as 10.5 mm"),
    Field("material", "Section's material", hint="such as black hard rubber or casein; it decides whether section and feed may be soaked"),
    Field("clearance", "Clearance", "quantity", unit="mm", low=0.02, high=1, default="0.10 mm", hint="gap in diameter to what must stay free"),
)  # fmt: skip


def knockout_answer(given: Inputs) -> SumAnswer:
    """A knock-out tube and its block.

    Parameters
    ----------
    given : Inputs
        Values of the fields.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If a size is out of range or contradicts another.
    """
    tool = knockout_tool(
        given.needed("tail"),
        given.needed("shoulder"),
        given.needed("bore"),
        depth_mm=given.number("depth", 0.0),
        front_mm=given.number("front"),
        section_mm=given.number("section"),
        clearance_mm=given.number("clearance", CLEARANCE_MM),
        soak=_soak(given.text("material", "")),
    )
    sentence = _sentence(tool)
    tube = tool.tube
    data = {
        "sentence": sentence,
        "possible": tool.possible,
        "inside_mm": None if tube is None else tube.inside_mm,
        "outside_mm": None if tube is None else tube.outside_mm,
        "wall_mm": None if tube is None else tube.wall_mm,
        "least_wall_mm": LEAST_WALL_MM,
        "inside_low_mm": tool.inside_low_mm,
        "inside_high_mm": tool.inside_high_mm,
        "outside_low_mm": tool.outside_low_mm,
        "outside_high_mm": tool.outside_high_mm,
        "reach_mm": tool.reach_mm,
        "block_low_mm": tool.block_low_mm,
        "block_high_mm": tool.block_high_mm,
        "findings": [f.as_json() for f in tool.findings],
    }
    return SumAnswer(sentence, data, tool.findings, _table(tool), tool)


def _soak(material: str) -> Soak | None:
    """How far the section's material may lie in cold water, by the table of treatments; None where it is not named."""
    limit = treatment_limits(material, "cold water soak", tables.read(CompatibilityRow, "compatibility"))
    return None if limit.material == UNKNOWN else Soak(limit.verdict, limit.limit)


def _sentence(tool: KnockoutTool) -> str:
    tube = tool.tube
    if tube is None:
        return "No tube with a wall that stands clears the tail, bears on the shoulder and passes the bore."
    reach = f"at least {tool.reach_mm:.0f} mm long"
    if tube.inside_mm == 0:
        return f"Punch: {tube.outside_mm:.2f} mm, solid, {reach}."
    return (
        f"Tube: {tube.inside_mm:.2f} mm inside with {tube.outside_mm:.2f} mm outside (wall {tube.wall_mm:.2f} mm), {reach}. "
        f"Any other pair does that is {tool.inside_low_mm:.2f} to {tool.inside_high_mm:.2f} mm inside and, outside, at least "
        f"{2 * LEAST_WALL_MM:.2f} mm more than its inside and at most {tool.outside_high_mm:.2f} mm."
    )


def _table(tool: KnockoutTool) -> tuple[tuple[str, ...], ...]:
    def mm(value: float | None) -> str:
        return "–" if value is None else f"{value:.2f} mm"

    tube = tool.tube
    inside, outside, wall = (None, None, None) if tube is None else (tube.inside_mm, tube.outside_mm, tube.wall_mm)
    return (
        ("what", "take", "from", "to"),
        ("tube inside", mm(inside), mm(tool.inside_low_mm), mm(tool.inside_high_mm)),
        (
            "tube outside",
            mm(outside),
            f"its inside and {mm(2 * LEAST_WALL_MM)}",
            mm(tool.outside_high_mm),
        ),
        ("wall", mm(wall), mm(LEAST_WALL_MM), "–"),
        ("block hole", "–", mm(tool.block_low_mm), mm(tool.block_high_mm)),
    )


KNOCKOUT = Sum(
    "knockout",
    "Knock-out tube and block",
    "Inside and outside diameter of a tube that drives feed and nib out of a section, and the hole of the block.",
    FIELDS,
    knockout_answer,
    'pentools sums knockout --tail "1.80 mm" --shoulder "4.20 mm" --bore "5.00 mm" --depth "18 mm"',
)
