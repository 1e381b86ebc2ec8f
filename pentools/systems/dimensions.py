"""The dimensions of a pen, each said once: what it is called, its unit and range, and how the bench takes it.

How a dimension is taken is common practice, no source; a range only stops what cannot be a pen (judged).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pentools.calc.weighing.expected import Limit
from pentools.errors import InputError
from pentools.fields import Field

__all__ = ["ASKED", "DIMENSIONS", "LIMITS", "Dimension", "Taken", "dimension_named", "dimension_words"]

Tool = Literal["outside", "inside", "blade", "depth", "step"]
_UNIT_WORDS = {"mm": "mm", "ml": "mL", "1": "(a share)", "": ""}


@dataclass(frozen=True, slots=True)
class Taken:
    """How one dimension is taken at the bench.

    Parameters
    ----------
    tool : {"outside", "inside", "blade", "depth", "step"}
        Calliper jaws outside, inside, thin blades, depth rod; "step" for no tool drawn.
    how : str
        What to mind.
    parts : tuple of str
        Parts drawn with it; none for the whole pen.
    """

    tool: Tool
    how: str
    parts: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Dimension:
    """One dimension of a pen.

    Parameters
    ----------
    name : str
        Its name in the drawings.
    words : str
        What it is called in a sentence.
    low, high : float
        What it may be [`unit`].
    unit : {"mm", "ml", "1", ""}
        "1" for a share, nothing for a count.
    asked : str
        Its name in a form, in the record and in the formulas, where that is another; "-" where no form asks for it.
    label, hint : str
        Above and under its box.
    rough : bool
        Whether it is a way or a depth inside the pen, read by depth rod or rule.
    also : tuple of str
        Other names it goes by in a record.
    taken : Taken or None
        How it is measured; None where no drawing shows it.
    """

    name: str
    words: str
    low: float
    high: float
    unit: Literal["mm", "ml", "1", ""] = "mm"
    asked: str = "-"
    label: str = ""
    hint: str = ""
    rough: bool = False
    also: tuple[str, ...] = ()
    taken: Taken | None = None

    def field(self) -> Field:
        """The box that asks for it."""
        kind: Literal["quantity", "count"] = "quantity" if self.unit else "count"
        low, high = (self.low, self.high) if self.unit else (int(self.low), int(self.high))
        return Field(self.asked, self.label, kind, unit=self.unit, hint=self.hint, low=low, high=high)

    def limit(self) -> Limit:
        """What it may be, as the calculations take it."""
        return Limit(self.low, self.high, _UNIT_WORDS[self.unit], self.words)


_SAC = ("sac", "bellows")
_TUBE = ("feed", "breather-tube")
_NIPPLE = ("section", "nipple")
_CAP = ("cap", "clip", "cap-band")
_TRAVEL = ("rod", "washer", "piston-head", "plunger", "pump-body", "spring", "barrel", "head-seal")
_LENGTH = "Length inside"
_LENGTH_HINT = "of the sac from nipple to end, or of the cartridge; such as 60 mm"

_MECHANISM = (
    Dimension("bore", "bore", 1, 28, asked="bore", label="Bore", hint="inside diameter where the head runs or the ink stands, at three angles; such as 8.50 mm",
              taken=Taken("inside", "Inside jaws; two depths, three angles at each. Clean off old rubber first.", ("barrel",))),
    Dimension("rod", "rod diameter", 0, 15, asked="rod", label="Rod", hint="diameter of the rod that stands in the ink; leave empty if it does not; such as 2.60 mm", also=("rod_diameter",),
              taken=Taken("outside", "Outside jaws where it runs, three places; wear shows.", ("rod", "plunger", "spindle"))),
    Dimension("stroke", "stroke", 2, 150, asked="stroke", label="Stroke", hint="way of the head from end to end, by the depth rod; such as 28.0 mm", rough=True,
              taken=Taken("step", "Travel from stop to stop: mark the rod at both.", _TRAVEL)),
    Dimension("sac_outside", "sac outside diameter", 2, 20, asked="outside", label="Sac, outside diameter", hint="measured on the sac, not read from its number; such as 6.35 mm", also=("sac_diameter",),
              taken=Taken("outside", "Outside jaws just touching: do not flatten it.", _SAC)),
    Dimension("sac_wall", "sac wall", 0.1, 3, asked="wall", label="Sac, wall", hint="half of what two walls pressed together measure; such as 0.50 mm",
              taken=Taken("step", "Flatten a cut end, measure two walls, take half.", ("sac",))),
    Dimension("sac_length", "sac length", 5, 150, asked="length", label=_LENGTH, hint=_LENGTH_HINT, rough=True,
              taken=Taken("outside", "Uncut or cut, unstretched, neck to rounded end.", _SAC)),
    Dimension("cartridge_length", "cartridge or converter length", 5, 150, asked="length", label=_LENGTH, hint=_LENGTH_HINT, rough=True,
              taken=Taken("outside", "Outside jaws, end to end.", ("converter", "knob"))),
    Dimension("pressed_share", "share that pressing empties", 0.1, 1, "1", asked="pressed_share", label="Share that pressing empties", hint="about 75 % for a bar (judged), such as 75 %"),
    Dimension("breather_length", "breather tube length", 3, 150, asked="reach", label="Reach of the breather tube", hint="from the section's face in the barrel to the tube's end; such as 55 mm", rough=True, also=("breather_tube",),
              taken=Taken("outside", "From the feed to the tube's open end.", _TUBE)),
    Dimension("breather_diameter", "breather tube diameter", 0.3, 8, asked="tube", label="Breather tube, outside diameter", hint="such as 2.0 mm",
              taken=Taken("outside", "Outside jaws, very lightly: old tubes crack.", _TUBE)),
    Dimension("depth", "depth for ink", 5, 160, asked="depth", label="Depth of the barrel", hint="from the section's face to the bottom, by the depth rod; such as 55 mm", rough=True,
              taken=Taken("step", "From the section's face to the bottom: barrel depth less the section's tail.", ("barrel", "section", "cap-threads"))),
    Dimension("standing", "diameter of what stands in the barrel", 0, 15, asked="nipple", label="What stands in the barrel, diameter", hint="the section's tail or the carrier; such as 6.0 mm"),
    Dimension("standing_length", "length of what stands in the barrel", 0, 40, asked="nipple_length", label="What stands in the barrel, length", hint="such as 6.0 mm", rough=True),
    Dimension("dead_behind", "dead volume behind the washer", 0, 1, "ml", asked="dead_behind", label="Dead volume behind the washer", hint="air that stays behind it when the rod is drawn out; none if left empty; such as 0.06 ml"),
    Dimension("dead_ahead", "dead volume ahead of the washer", 0, 1, "ml", asked="dead_ahead", label="Dead volume ahead of the washer", hint="air ahead of it at the end of the stroke; none if left empty; such as 0.10 ml"),
    Dimension("lift", "height the liquid is lifted", 0, 200, asked="head", label="Height the liquid is lifted", hint="from the liquid's surface to the washer at its end; 60 mm if left empty", rough=True),
    Dimension("strokes", "strokes made", 0, 60, "", asked="strokes", label="Strokes made", hint="with the next one, to say what so many strokes should bring; leave empty if pumped until full"),
    Dimension("stroke_volume", "volume of a stroke", 0, 3, "ml", asked="stroke_volume", label="Volume of a stroke", hint="what the diaphragm or bulb moves; such as 0.28 ml"),
    Dimension("tube_volume", "content of the breather tube", 0, 0.5, "ml", asked="tube_volume", label="Content of the breather tube", hint="pushed back first at each stroke; 0.03 ml (judged) if left empty"),
    Dimension("void_share", "share of the cell that is open", 0.1, 1, "1", asked="void_share", label="Share of the cell that is open", hint="about 60 % (judged)"),
)  # fmt: skip
_OUTSIDE = (
    Dimension("open_length", "uncapped length", 60, 220, also=("length_uncapped", "length_open"), taken=Taken("outside", "Tip to end; do not press on the nib.")),
    Dimension("capped_length", "capped length", 60, 220, asked="capped_mm", label="Length capped", hint="such as 128.5 mm or 5 1/16 in", also=("length_capped",),
              taken=Taken("outside", "Long jaws or a rule against two blocks.")),
    Dimension("cap_length", "cap length", 20, 120, asked="cap_mm", label="Length of the cap", hint="such as 62.0 mm", taken=Taken("outside", "Outside jaws, top to lip.", _CAP)),
    Dimension("cap_diameter", "cap diameter", 6, 35, asked="cap_outside_mm", label="Cap, outside diameter", hint="at its widest, such as 14.1 mm",
              taken=Taken("outside", "Outside jaws, clear of band and clip.", _CAP)),
    Dimension("barrel_length", "barrel length", 20, 160, asked="barrel_mm", label="Length of the barrel", hint="without section and end knob, such as 70.0 mm",
              taken=Taken("outside", "Outside jaws, mouth to end, without the end piece.", ("barrel",))),
    Dimension("barrel_diameter", "barrel diameter", 5, 30, asked="barrel_outside_mm", label="Barrel, outside diameter", hint="at its widest, such as 12.6 mm", also=("barrel",),
              taken=Taken("outside", "Outside jaws, clear of threads and trim.", ("barrel",))),
    Dimension("section_length", "section length", 5, 50, asked="section_mm", label="Length of the section", hint="such as 16.0 mm",
              taken=Taken("outside", "Outside jaws, from the lip to the shoulder.", _NIPPLE)),
    Dimension("section_diameter", "section diameter", 4, 25, asked="section_outside_mm", label="Section, outside diameter", hint="at its middle, such as 9.8 mm", also=("section",),
              taken=Taken("outside", "Outside jaws at the widest place of the grip.", _NIPPLE)),
    Dimension("nib_length", "exposed nib length", 3, 45, asked="nib_mm", label="Nib, length that shows", hint="from section to tip, such as 22.0 mm",
              taken=Taken("step", "From the tip to the section's lip; a rule will do.", ("nib", "feed", "section"))),
    Dimension("end_length", "end piece length", 2, 60, asked="end_mm", label="Blind cap or end knob, length", hint="such as 12.0 mm", also=("blind_cap_length",)),
    Dimension("barrel_depth", "barrel depth", 5, 160, taken=Taken("depth", "Depth rod, from the mouth to the floor, held square.", ("barrel",))),
    Dimension("thread_diameter", "cap thread diameter", 5, 30, taken=Taken("outside", "Outside jaws across the crests, lightly.", ("barrel", "cap-threads"))),
    Dimension("thread_length", "cap thread length", 0.5, 20),
)  # fmt: skip
_INSIDE = (
    Dimension("feed_diameter", "feed diameter", 1.5, 12, taken=Taken("outside", "Outside jaws on the plain part, fins left alone.", ("feed",))),
    Dimension("feed_tail", "feed tail", 1, 12, taken=Taken("outside", "Outside jaws: a knock-out tube must clear it.", ("feed",))),
    Dimension("nipple", "nipple diameter", 2, 15, also=("nipple_diameter",), taken=Taken("outside", "Outside jaws, with old shellac and rubber off.", _NIPPLE)),
    Dimension("head_diameter", "head diameter", 2, 28, also=("head",), taken=Taken("outside", "Outside jaws on the head, the seal off.", ("piston-head", "washer", "rod"))),
    Dimension("head_length", "head length", 0.5, 30, taken=Taken("outside", "Outside jaws, face to face.", ("piston-head",))),
    Dimension("groove_diameter", "groove diameter", 1, 27, also=("groove",), taken=Taken("blade", "Thin blades in the groove, the seal off.", ("piston-head",))),
    Dimension("groove_width", "groove width", 0.3, 10, also=("width",), taken=Taken("inside", "Inside jaws between the groove's two walls.", ("piston-head",))),
    Dimension("housing", "packing housing bore", 1, 25, taken=Taken("inside", "Inside jaws, the packing out.", ("packing-unit", "gland"))),
    Dimension("tube_diameter", "pneumatic tube diameter", 3, 25, taken=Taken("outside", "Outside jaws, three angles.", ("pneumatic-tube",))),
    Dimension("lever_length", "lever length", 5, 50),
    Dimension("cartridge_diameter", "cartridge or converter diameter", 3, 14, taken=Taken("outside", "Outside jaws on the body.", ("converter",))),
)  # fmt: skip

DIMENSIONS: dict[str, Dimension] = {dimension.name: dimension for dimension in (*_MECHANISM, *_OUTSIDE, *_INSIDE)}
"""Name in the drawings -> the dimension."""
ASKED: dict[str, Dimension] = {
    dimension.asked: dimension for dimension in reversed(DIMENSIONS.values()) if dimension.asked != "-"
}
"""Name in a form, the record and the formulas -> the dimension."""
LIMITS: dict[str, Limit] = {dimension.asked: dimension.limit() for dimension in _MECHANISM}
"""Name in the formulas -> what it may be."""
_ALSO = {name: dimension.name for dimension in DIMENSIONS.values() for name in dimension.also}


def dimension_named(name: str, *, length: str = "sac_length") -> str:
    """The name in the drawings of a dimension, however a record or a form calls it.

    Parameters
    ----------
    name : str
        A name; hyphens and an ending ``_mm`` are understood.
    length : str
        What "length" alone means for the pen.

    Returns
    -------
    str
        A key of `DIMENSIONS`, or the name itself where there is no such dimension.

    Examples
    --------
    >>> dimension_named("outside"), dimension_named("bore-mm"), dimension_named("length", length="cartridge_length")
    ('sac_outside', 'bore', 'cartridge_length')
    """
    plain = name.replace("-", "_")
    for candidate in (plain, plain.removesuffix("_mm")):
        if candidate == "length":
            return length
        if candidate in DIMENSIONS:
            return candidate
        if candidate in _ALSO:
            return _ALSO[candidate]
        if candidate in ASKED:
            return ASKED[candidate].name
    return plain.removesuffix("_mm")


def dimension_words(dimension: str) -> str:
    """A dimension's name in words.

    Parameters
    ----------
    dimension : str
        A key of `DIMENSIONS`.

    Returns
    -------
    str
        For example "sac outside diameter".

    Raises
    ------
    InputError
        When there is no such dimension.
    """
    if dimension not in DIMENSIONS:
        raise InputError("dimension", "one of " + ", ".join(DIMENSIONS), dimension)
    return DIMENSIONS[dimension].words
