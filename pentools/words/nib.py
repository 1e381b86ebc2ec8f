"""What is said of nibs: the tip and its smoothing, flow, flex, the setting of the feed."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]

SMOOTHING: Mapping[str, Template] = {
    "finish-not-reached": (
        "The finest owned grade, {last}, leaves a finish like {leaves:.3g} µm: the nib will keep some feedback; {wanted:.3g} µm "
        "would end it."
    ),
    "too-coarse": "Nothing owned is {limit:.2g} µm or finer: no smoothing with what is here.",
    "align-first:now": "Align the tines first: most scratchy nibs are out of line, not rough.",
    "align-first:look": "Look first: tines level and the slit open under a 10x loupe? Grinding does not mend that.",
    "no-tipping:look": "Look first: is there hard tipping left? Without it the nib's own metal is cut, at once and for good.",
    "no-tipping:seen": "No tipping left: the nib's own metal is cut, at once and for good.",
    "stop-early": "Stop early: tipping does not grow back, and rounded inner edges make a nib skip.",
}

WORDS: Mapping[str, Template] = {**SMOOTHING}
