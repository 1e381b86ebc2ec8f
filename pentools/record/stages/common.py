"""Choices and fields that several stages share."""

from __future__ import annotations

from dataclasses import replace

from pentools.fields import Audience, Field, ask
from pentools.systems.dimensions import ASKED
from pentools.systems.registry import system_choices

__all__ = ["PARTS", "SEVERITIES", "length", "mass", "measured", "system_choices", "yes_no"]

PARTS: tuple[tuple[str, str], ...] = (
    ("cap", "cap"),
    ("inner-cap", "inner cap"),
    ("clip", "clip"),
    ("bands", "bands and rings"),
    ("barrel", "barrel"),
    ("blind-cap", "blind cap or end knob"),
    ("section", "section"),
    ("feed", "feed"),
    ("nib", "nib"),
    ("filler", "filling mechanism"),
    ("seals", "seals and sac"),
    ("imprint", "imprint"),
    ("threads", "threads"),
    ("whole", "whole pen"),
)

SEVERITIES: tuple[tuple[str, str], ...] = (
    ("0", "0 sound"),
    ("1", "1 slight: a mark, no effect"),
    ("2", "2 moderate: shows or will grow"),
    ("3", "3 serious: the pen does not work because of it"),
    ("4", "4 lost: the part cannot be saved"),
)


def length(label: str, hint: str, low: float, high: float, *, audience: Audience = "everybody") -> Field:
    """A length of a pen part [mm] with its plausible range."""
    return ask(label, "quantity", unit="mm", hint=hint, low=low, high=high, audience=audience)


def measured(name: str) -> Field:
    """A length of the pen as the vocabulary of dimensions has it: label, unit, range and hint are written there."""
    return replace(ASKED[name].field(), name="", audience="everybody")


def mass(label: str, hint: str, *, required: bool = False) -> Field:
    """A mass on the bench balance [g]; a pen and its parts weigh 0 to 200 g."""
    return ask(label, "quantity", unit="g", hint=hint, low=0, high=200, audience="everybody", required=required)


def yes_no(label: str, hint: str = "yes or no", *, audience: Audience = "owner", required: bool = False) -> Field:
    """A yes or a no; empty means it was not asked."""
    return ask(label, "yes-no", hint=hint, audience=audience, required=required)
