"""How each dimension of a pen is taken at the bench, in a line each; common practice, no source."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["MEASURES", "Measure"]


@dataclass(frozen=True, slots=True)
class Measure:
    """How one dimension is taken.

    Parameters
    ----------
    words : str
        The dimension in words.
    parts : tuple of str
        Parts drawn; none for the whole pen.
    tool : {"outside", "inside", "blade", "depth", "step"}
        Caliper jaws outside, inside, thin blades, depth rod; "step" for no tool drawn.
    how : str
        What to mind.
    """

    words: str
    parts: tuple[str, ...]
    tool: str
    how: str


_SAC = ("sac", "bellows")
MEASURES: dict[str, Measure] = {
    "bore": Measure("bore", ("barrel",), "inside", "Inside jaws; two depths, three angles at each. Clean off old rubber first."),
    "barrel_depth": Measure("barrel depth", ("barrel",), "depth", "Depth rod, from the mouth to the floor, held square."),
    "depth": Measure("depth for ink", ("barrel", "section", "cap-threads"), "step", "From the section's face to the bottom: barrel depth less the section's tail."),
    "barrel_diameter": Measure("barrel diameter", ("barrel",), "outside", "Outside jaws, clear of threads and trim."),
    "barrel_length": Measure("barrel length", ("barrel",), "outside", "Outside jaws, mouth to end, without the end piece."),
    "thread_diameter": Measure("cap thread diameter", ("barrel", "cap-threads"), "outside", "Outside jaws across the crests, lightly."),
    "section_diameter": Measure("section diameter", ("section", "nipple"), "outside", "Outside jaws at the widest place of the grip."),
    "section_length": Measure("section length", ("section", "nipple"), "outside", "Outside jaws, from the lip to the shoulder."),
    "nipple": Measure("nipple diameter", ("section", "nipple"), "outside", "Outside jaws, with old shellac and rubber off."),
    "nib_length": Measure("exposed nib length", ("nib", "feed", "section"), "step", "From the tip to the section's lip; a rule will do."),
    "feed_diameter": Measure("feed diameter", ("feed",), "outside", "Outside jaws on the plain part, fins left alone."),
    "feed_tail": Measure("feed tail", ("feed",), "outside", "Outside jaws: a knock-out tube must clear it."),
    "rod": Measure("rod diameter", ("rod", "plunger", "spindle"), "outside", "Outside jaws where it runs, three places; wear shows."),
    "stroke": Measure("stroke", ("rod", "washer", "piston-head", "plunger", "pump-body", "spring", "barrel", "head-seal"), "step", "Travel from stop to stop: mark the rod at both."),
    "head_diameter": Measure("head diameter", ("piston-head", "washer", "rod"), "outside", "Outside jaws on the head, the seal off."),
    "head_length": Measure("head length", ("piston-head",), "outside", "Outside jaws, face to face."),
    "groove_diameter": Measure("groove diameter", ("piston-head",), "blade", "Thin blades in the groove, the seal off."),
    "groove_width": Measure("groove width", ("piston-head",), "inside", "Inside jaws between the groove's two walls."),
    "housing": Measure("packing housing bore", ("packing-unit", "gland"), "inside", "Inside jaws, the packing out."),
    "sac_outside": Measure("sac outside diameter", _SAC, "outside", "Outside jaws just touching: do not flatten it."),
    "sac_wall": Measure("sac wall", ("sac",), "step", "Flatten a cut end, measure two walls, take half."),
    "sac_length": Measure("sac length", _SAC, "outside", "Uncut or cut, unstretched, neck to rounded end."),
    "breather_length": Measure("breather tube length", ("feed", "breather-tube"), "outside", "From the feed to the tube's open end."),
    "breather_diameter": Measure("breather tube diameter", ("feed", "breather-tube"), "outside", "Outside jaws, very lightly: old tubes crack."),
    "tube_diameter": Measure("pneumatic tube diameter", ("pneumatic-tube",), "outside", "Outside jaws, three angles."),
    "cartridge_length": Measure("cartridge or converter length", ("converter", "knob"), "outside", "Outside jaws, end to end."),
    "cartridge_diameter": Measure("cartridge or converter diameter", ("converter",), "outside", "Outside jaws on the body."),
    "capped_length": Measure("capped length", (), "outside", "Long jaws or a rule against two blocks."),
    "open_length": Measure("uncapped length", (), "outside", "Tip to end; do not press on the nib."),
    "cap_length": Measure("cap length", ("cap", "clip", "cap-band"), "outside", "Outside jaws, top to lip."),
    "cap_diameter": Measure("cap diameter", ("cap", "clip", "cap-band"), "outside", "Outside jaws, clear of band and clip."),
}  # fmt: skip
"""Dimension name -> how it is taken (common practice, no source)."""
