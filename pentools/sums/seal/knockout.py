"""The knock-out sum: feed and section in, windows for a tube and its block out, to be made and found again."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.calc.seal.knockout import knockout_tool
from pentools.fields import Field, Value
from pentools.sums.base import Sum, SumAnswer
from pentools.units import Reading

__all__ = ["KNOCKOUT", "knockout_answer"]

FIELDS = (
    Field("tail", "Feed's tail", "quantity", unit="mm", low=0, high=8, required=True, hint="what must stay clear inside the tube, such as 1.80 mm; 0 mm for a solid punch"),
    Field("shoulder", "Feed's shoulder", "quantity", unit="mm", low=0.5, high=14, required=True, hint="what the tube bears on, such as 4.20 mm"),
    Field("bore", "Section bore", "quantity", unit="mm", low=1, high=15, required=True, hint="smallest bore on the nipple side, such as 5.00 mm"),
    Field("depth", "Depth", "quantity", unit="mm", low=0, high=60, hint="from the nipple's mouth to the shoulder and the way to drive, such as 18 mm"),
    Field("front", "Nib and feed", "quantity", unit="mm", low=1, high=16, hint="largest width that falls through the block, such as 8.0 mm"),
    Field("section", "Section's front edge", "quantity", unit="mm", low=3, high=20, hint="outside diameter that rests on the block, such as 10.5 mm"),
    Field("clearance", "Clearance", "quantity", unit="mm", low=0.02, high=1, default="0.10 mm", hint="gap in diameter to what must stay free"),
)  # fmt: skip


def _mm(values: Mapping[str, Value], name: str) -> float | None:
    value = values.get(name)
    return value.value if isinstance(value, Reading) else None


def knockout_answer(values: Mapping[str, Value]) -> SumAnswer:
    """Windows for a knock-out tube and its block.

    Parameters
    ----------
    values : mapping of str to Value
        Values of the fields; missing ones None.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If a size is out of range or contradicts another.
    """
    clearance = _mm(values, "clearance")
    tool = knockout_tool(
        _mm(values, "tail") or 0.0,
        _mm(values, "shoulder") or 0.0,
        _mm(values, "bore") or 0.0,
        depth_mm=_mm(values, "depth") or 0.0,
        front_mm=_mm(values, "front"),
        section_mm=_mm(values, "section"),
        clearance_mm=0.1 if clearance is None else clearance,
    )
    inside = "solid" if tool.inside_low_mm == 0 else f"{tool.inside_low_mm:.2f} to {tool.inside_high_mm:.2f} mm inside"
    sentence = (
        f"Tube: {inside}, {tool.outside_low_mm:.2f} to {tool.outside_high_mm:.2f} mm outside, at least {tool.reach_mm:.0f} mm long."
        if tool.possible
        else "No tube clears the tail, bears on the shoulder and passes the bore."
    )
    data = {
        "sentence": sentence,
        "possible": tool.possible,
        "inside_low_mm": tool.inside_low_mm,
        "inside_high_mm": tool.inside_high_mm,
        "outside_low_mm": tool.outside_low_mm,
        "outside_high_mm": tool.outside_high_mm,
        "reach_mm": tool.reach_mm,
        "block_low_mm": tool.block_low_mm,
        "block_high_mm": tool.block_high_mm,
        "findings": [f.as_json() for f in tool.findings],
    }
    block = (
        "–" if tool.block_low_mm is None else f"{tool.block_low_mm:.2f}",
        "–" if tool.block_high_mm is None else f"{tool.block_high_mm:.2f}",
    )
    table = (
        ("what", "from", "to"),
        ("tube inside", f"{tool.inside_low_mm:.2f} mm", f"{tool.inside_high_mm:.2f} mm"),
        ("tube outside", f"{tool.outside_low_mm:.2f} mm", f"{tool.outside_high_mm:.2f} mm"),
        ("block hole", f"{block[0]} mm", f"{block[1]} mm"),
    )
    return SumAnswer(sentence, data, tool.findings, table, tool)


KNOCKOUT = Sum(
    "knockout",
    "Knock-out tube and block",
    "Inside and outside diameter of a tube that drives feed and nib out of a section, and the hole of the block.",
    FIELDS,
    knockout_answer,
    'pentools sums knockout --tail "1.80 mm" --shoulder "4.20 mm" --bore "5.00 mm" --depth "18 mm"',
)
