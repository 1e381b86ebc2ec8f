"""What is asked at cleaning: baths and soaks, the flush mix, the rinse and the drying."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form, asked_by
from pentools.record.kinds import Kind
from pentools.record.stages.common import PARTS, yes_no
from pentools.sums.treatment.mix import MIX
from pentools.units import Reading

__all__ = [
    "BATH",
    "BATHS",
    "DRYING",
    "FLUSH_MIX",
    "RINSE",
    "SOAK_ENDED",
    "SOAK_STARTED",
    "Bath",
    "Drying",
    "FlushMix",
    "Rinse",
    "SoakEnded",
    "SoakStarted",
]

BATHS: tuple[tuple[str, str], ...] = (
    ("cold water soak", "cool water"), ("flush mix soak", "flush mix of ammonia and water"), ("ultrasonic", "ultrasonic bath"),
    ("alcohol", "alcohol"), ("naphtha", "naphtha"), ("peroxide", "hydrogen peroxide"),
)  # fmt: skip
"""What a part may be put into; the keys are the treatments of the table of limits."""

# fmt: off
_PART = ask("Part", "choice", choices=PARTS, required=True, hint="which part of the pen", audience="everybody")

_BATH = ask("In what", "choice", choices=BATHS, required=True, hint="the table of limits is asked before it is saved", audience="everybody")

_CAME_OUT = ask("What came out", "long text", hint="colour, crumbs, how the water ran at the end", audience="everybody")

class FlushMix(Form, frozen=True):
    """Flush mix: what one entry holds."""

    ammonia: Annotated[Reading | None, asked_by(MIX)] = None
    parts_water: Annotated[float | None, asked_by(MIX)] = None
    jar: Annotated[Reading | None, asked_by(MIX)] = None
    room: Annotated[Reading | None, asked_by(MIX)] = None
    beside: Annotated[tuple[str, ...] | None, asked_by(MIX)] = None


FLUSH_MIX = Kind("clean", "flush mix", "Flush mix", FlushMix, log=False, help="One part of household ammonia to nine of water is common practice; how strong that is depends on the bottle.")


class Bath(Form, frozen=True):
    """A bath that is over: what one entry holds."""

    part: Annotated[str | None, _PART] = None
    bath: Annotated[str | None, _BATH] = None
    strength: Annotated[str | None, ask("Strength, or what else was in it", hint="such as 1 + 9, a drop of washing-up liquid", audience="everybody")] = None
    minutes: Annotated[Reading | None, ask("Minutes", "quantity", unit="min", low=0.05, high=2880, hint="such as 3 min", audience="everybody")] = None
    temperature: Annotated[Reading | None, ask("Temperature of the bath", "quantity", unit="degC", low=2, high=60, hint="such as 20 °C", audience="everybody")] = None
    came_out: Annotated[str | None, _CAME_OUT] = None


BATH = Kind("clean", "bath", "A bath that is over", Bath)


class SoakStarted(Form, frozen=True):
    """A soak begins: what one entry holds."""

    part: Annotated[str | None, _PART] = None
    bath: Annotated[str | None, _BATH] = None
    limit: Annotated[Reading | None, ask("Your own limit", "quantity", unit="min", low=0.5, high=2880, hint="if shorter than the table’s, such as 10 min", audience="everybody")] = None
    strength: Annotated[str | None, ask("Strength, or what else is in it", hint="such as 1 + 9", audience="everybody")] = None


SOAK_STARTED = Kind("clean", "soak started", "A soak begins", SoakStarted, help="The clock runs from the moment it is saved.")


class SoakEnded(Form, frozen=True):
    """A soak ends: what one entry holds."""

    part: Annotated[str | None, _PART] = None
    came_out: Annotated[str | None, _CAME_OUT] = None


SOAK_ENDED = Kind("clean", "soak ended", "A soak ends", SoakEnded, help="Save it as the part comes out; its minutes are worked out.")


class Rinse(Form, frozen=True):
    """Rinse after compound or grease: what one entry holds."""

    part: Annotated[str | None, _PART] = None
    with_what: Annotated[str | None, ask("With what", required=True, hint="such as a drop of washing-up liquid in 200 ml, then clear water", audience="everybody")] = None
    minutes: Annotated[Reading | None, ask("Minutes", "quantity", unit="min", low=0.05, high=120, hint="such as 2 min", audience="everybody")] = None
    wets: Annotated[bool | None, yes_no("Does water spread on it now?", "no: polish or grease is left, and ink will not wet it", audience="everybody")] = None


RINSE = Kind("clean", "rinse", "Rinse after compound or grease", Rinse, help="Polishing compound and silicone keep ink from wetting feed, nib and section: wash until a drop spreads.")


class Drying(Form, frozen=True):
    """Drying: what one entry holds."""

    part: Annotated[str | None, _PART] = None
    hours: Annotated[Reading | None, ask("How long it dries", "quantity", unit="h", low=0.05, high=720, required=True, hint="such as 24 h; a feed keeps water longest", audience="everybody")] = None
    begun_ago: Annotated[Reading | None, ask("Begun how long ago", "quantity", unit="h", low=0, high=720, hint="empty: now", audience="bench")] = None
    how: Annotated[str | None, ask("How", hint="such as nib down on tissue, in moving air, no heat", audience="everybody")] = None


DRYING = Kind("clean", "drying", "Drying", Drying, help="The earliest moment of the next step is worked out: nothing is sealed, weighed or warmed wet.")


# fmt: on
