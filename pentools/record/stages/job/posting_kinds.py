"""What is asked as a pen is posted: how it is packed and sent, and how it arrived."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.common import yes_no
from pentools.units import Reading

__all__ = ["ARRIVED", "CARRIED", "PARCEL", "STATES", "Arrived", "Parcel"]

CARRIED: tuple[tuple[str, str], ...] = (
    ("hand", "handed over"),
    ("letter", "letter post"),
    ("registered", "registered letter"),
    ("parcel", "parcel"),
    ("insured", "insured parcel"),
    ("courier", "courier"),
)
"""How it goes: the class alone, whoever carries it."""
STATES: tuple[tuple[str, str], ...] = (
    ("whole", "whole"),
    ("marked", "the box was marked, the pen is whole"),
    ("damaged", "damaged"),
    ("lost", "it did not arrive"),
)
_PACKED = (
    ("tube", "nib up, in a tube with padded ends"),
    ("box", "in its own box, padded all round"),
    ("both", "in a tube, the tube in a box"),
    ("other", "otherwise"),
)


# fmt: off
class Parcel(Form, frozen=True):
    """How it is sent: what one entry holds."""

    carried: Annotated[str | None, ask("How it goes", "choice", choices=CARRIED, required=True, hint="the class; no carrier is named")] = None
    sent_on: Annotated[str | None, ask("Sent on", "date", required=True, hint="2026-03-30; the day it was handed over, too")] = None
    packed: Annotated[str | None, ask("Packed", "choice", choices=_PACKED)] = None
    empty: Annotated[bool | None, yes_no("Is it empty and dry?", "no ink, no water")] = None
    insured: Annotated[str | None, ask("Insured for", "money", hint="the value declared at intake stands here")] = None
    basis: Annotated[str | None, ask("Basis of that value", hint="empty: as it was said at intake")] = None
    weighs: Annotated[Reading | None, ask("Mass of the parcel", "quantity", unit="g", low=5, high=5000, hint="such as 210 g")] = None
    number: Annotated[str | None, ask("Number", hint="as the receipt has it")] = None
    border: Annotated[bool | None, yes_no("Does it cross a customs border?", "the packing list then says what is asked there")] = None


PARCEL = Kind("posting", "parcel", "How it is sent", Parcel, log=False)


class Arrived(Form, frozen=True):
    """How it arrived: what one entry holds."""

    arrived_on: Annotated[str | None, ask("Arrived on", "date", hint="2026-04-02; empty where it did not")] = None
    state: Annotated[str | None, ask("How it arrived", "choice", choices=STATES, required=True, hint="as the owner says")] = None
    said: Annotated[str | None, ask("What the owner said", "long text", hint="such as: it wrote at once")] = None


ARRIVED = Kind("posting", "arrived", "How it arrived", Arrived, log=False)


# fmt: on
