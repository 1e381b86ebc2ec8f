"""The setting sum: what feed, section and nipple are of in; the temperatures between which the feed is set out."""

from __future__ import annotations

from pentools import tables
from pentools.calc.nib.setting import FeedWindow, Neighbour, feed_window
from pentools.calc.treatment.heat_window import HeatLimitRow
from pentools.calc.treatment.materials import UNKNOWN, material_name
from pentools.fields import Field
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.tables.nib import figure

__all__ = ["RUBBERS", "SETTING", "neighbours_of", "setting_answer", "window_of"]

RUBBERS = ("hard rubber", "faded hard rubber", "coloured hard rubber")
"""What a feed must be of to be set by heat."""
ON_NIPPLE = (
    ("none", "none, or the pen has no nipple"), ("bare", "nothing on it"), ("sac", "a sac"), ("unknown", "not known"),
)  # fmt: skip
FIELDS = (
    Field("feed", "Feed", default="unknown", hint="what it is of, such as hard rubber; plastic is not set by heat, and not known counts as plastic"),
    Field("section", "Section", default="unknown", hint="what it is of, such as celluloid; not known is taken as the strictest"),
    Field("nipple", "On the nipple", "choice", choices=ON_NIPPLE, default="unknown", hint="a sac is never warmed; not known counts as one"),
    Field("alone", "Are nib and feed out of the section?", "yes-no", default="no", hint="then only the feed counts"),
)  # fmt: skip


def _limit(name: str) -> float | None:
    """The limit of a material's surface [°C]; None where it is never warmed."""
    rows = tables.read(HeatLimitRow, "heat_limits")
    return next((row.value for row in rows if row.material == name and row.rule in ("working limit", "no heat")), None)


def _name(material: str) -> str:
    rows = tables.read(HeatLimitRow, "heat_limits")
    return material_name(material, dict.fromkeys(row.material for row in rows if row.material != "any"))[0]


def neighbours_of(sections: tuple[str, ...], nipple: str) -> tuple[Neighbour, ...]:
    """What is warmed with a feed that sits in its section.

    Parameters
    ----------
    sections : tuple of str
        What the section is of, in everyday words.
    nipple : str
        A choice of `ON_NIPPLE`: on one that is not known there is a sac, and a sac is never warmed.

    Returns
    -------
    tuple of Neighbour
        Section, then what is on its nipple.
    """
    names = [_name(said) for said in sections]
    found = [Neighbour("section", "not named" if name == UNKNOWN else name, _limit(name)) for name in names]
    if nipple in ("sac", "unknown"):
        found.append(
            Neighbour("sac on its nipple", "as if there were one" if nipple == "unknown" else "latex", _limit("latex"))
        )
    return tuple(found)


def window_of(feed: str, neighbours: tuple[Neighbour, ...]) -> FeedWindow:
    """The heat window of a feed by what it is of, in everyday words."""
    name, soft = _name(feed), figure("feed-softens")
    softens = (soft.low or 0.0, soft.high or 0.0) if name in RUBBERS else None
    return feed_window("not named" if name == UNKNOWN else name, softens, figure("feed-water").high or 0.0, neighbours)


def setting_answer(given: Inputs) -> SumAnswer:
    """Between what temperatures a feed is set.

    Parameters
    ----------
    given : Inputs
        Values of the fields.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.
    """
    alone = given.flag("alone")
    beside = () if alone else neighbours_of((given.text("section", UNKNOWN),), given.text("nipple", "unknown"))
    window = window_of(given.text("feed", UNKNOWN), beside)
    sentence = window.findings[0].text
    data = {
        "sentence": sentence,
        "feed": window.feed,
        "kind": window.kind,
        "low_c": window.low_c,
        "high_c": window.high_c,
        "strictest": None if window.strictest is None else window.strictest.part,
        "findings": [f.as_json() for f in window.findings],
    }
    limits = [
        (f"{one.part}, {one.material}", "never warmed" if one.limit_c is None else f"{one.limit_c:g} °C")
        for one in beside
    ]
    soft, water, hot, cool = (figure(f"feed-{key}") for key in ("softens", "water", "hot", "cool"))
    table = (
        ("what", "how far"),
        ("hard rubber softens", f"{soft.low:g} to {soft.high:g} °C"),
        ("water", f"{water.low:g} to {water.high:g} °C: {water.note}"),
        *limits,
        ("time in it", f"{hot.low:g} to {hot.high:g} s ({hot.certainty})"),
        ("held in cool water", f"{cool.low:g} to {cool.high:g} s ({cool.certainty})"),
    )
    return SumAnswer(sentence, data, window.findings, table, window)


SETTING = Sum(
    "setting",
    "Heat-setting of a feed",
    "Between what temperatures a feed is set against its nib: where it softens, and where the first of its neighbours gives way.",
    FIELDS,
    setting_answer,
    'pentools sums setting --feed "hard rubber" --section "hard rubber" --alone yes',
)
