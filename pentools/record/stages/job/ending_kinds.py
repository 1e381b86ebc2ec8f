"""What is asked as a job ends: what was left, which pictures show it, and how it ended."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.registry import STAGES
from pentools.record.stages.common import PARTS, length, mass, yes_no
from pentools.units import Reading

__all__ = [
    "EARLY",
    "ENDINGS",
    "FOLLOWED_UP",
    "LIMIT",
    "MOMENTS",
    "NOTHING_LEFT",
    "PICTURE",
    "RESULT",
    "FollowedUp",
    "Limit",
    "NothingLeft",
    "Picture",
    "Result",
]

ENDINGS: tuple[tuple[str, str], ...] = (
    ("done", "done"),
    ("done with limits", "done with limits"),
    ("stopped", "stopped: it will not go on for now"),
    ("returned", "returned unrepaired"),
)

EARLY = ("stopped", "returned")
"""Endings after which nothing is left to test, to close or to keep as mended."""

MOMENTS: tuple[tuple[str, str], ...] = (("before", "before"), ("during", "during the work"), ("after", "after"))


# fmt: off
class Limit(Form, frozen=True):
    """One thing left: what one entry holds."""

    part: Annotated[str | None, ask("Part", "choice", choices=PARTS, required=True, hint="which part of the pen", audience="everybody")] = None
    left: Annotated[str | None, ask("What could not be mended, or was left alone", "long text", required=True, hint="as the owner will find it", audience="everybody")] = None
    why: Annotated[str | None, ask("Why", "long text", required=True, hint="risk, loss of substance, cost, or the owner's wish", audience="everybody")] = None
    instead: Annotated[str | None, ask("What was done instead", "long text", hint="the workaround, or nothing", audience="everybody")] = None
    for_now: Annotated[bool | None, yes_no("Does what was done instead hold only for now?", "a trace of oil, putty, a borrowed part: a makeshift", audience="everybody")] = None
    wanted: Annotated[str | None, ask("What would replace it", hint="such as a section of its own; it goes on the list of parts wanted", audience="everybody")] = None
    advice: Annotated[str | None, ask("Advice for the next repair", "long text", hint="to whoever opens it next", audience="everybody")] = None
    photo: Annotated[str | None, ask("Photo", "photo", hint="a file in photos/", audience="everybody")] = None


LIMIT = Kind("limits", "limit", "One thing left", Limit)


class NothingLeft(Form, frozen=True):
    """Nothing was left: what one entry holds."""

    nothing_left: Annotated[bool | None, yes_no("Is it true that nothing was left unmended?", "yes, if so", required=True, audience="everybody")] = None


NOTHING_LEFT = Kind("limits", "nothing left", "Nothing was left", NothingLeft, log=False, help="If there is nothing to admit, say so: an empty page is no statement.")


class Picture(Form, frozen=True):
    """One picture: what one entry holds."""

    photo: Annotated[str | None, ask("File", "photo", required=True, hint="a file in photos/, such as open-before.jpg", audience="everybody")] = None
    moment: Annotated[str | None, ask("When", "choice", choices=MOMENTS, required=True, hint="before, during or after", audience="everybody")] = None
    view: Annotated[str | None, ask("View", hint="the same word for the same view before and after, such as side", audience="everybody")] = None
    shows: Annotated[str | None, ask("What it shows", hint="one sentence, read aloud to those who cannot see it; left empty, it is drafted from view, moment and pen", audience="everybody")] = None
    caption: Annotated[str | None, ask("Caption", hint="what stands under it; left empty, what it shows", audience="everybody")] = None
    belongs_to: Annotated[str | None, ask("Stage it belongs to", "choice", choices=tuple((key, key) for key in STAGES), hint="its chapter shows it", audience="everybody")] = None
    taken_on: Annotated[str | None, ask("Taken on", "date", hint="2026-03-14", audience="everybody")] = None
    light_and_scale: Annotated[str | None, ask("Light and scale", hint="such as raking light from the left, 10 mm bar", audience="everybody")] = None
    known_mm: Annotated[Reading | None, length("A length in it", "of something in the plane of the pen, such as 20 mm of a ruler; the pages then show a scale bar", 1, 300)] = None
    known_px: Annotated[float | None, ask("The same length in pixels", "number", low=20, high=100_000, hint="from end to end in the file as it is; or set its two ends in the picture", audience="everybody")] = None
    drawn: Annotated[bool | None, yes_no("Is it drawn or simulated?", audience="everybody")] = None
    public: Annotated[bool | None, yes_no("May it be shown to everybody?")] = None


PICTURE = Kind("pictures", "picture", "One picture", Picture, help="Place, camera and owner data inside the files never reach a page.")


class Result(Form, frozen=True):
    """How the job ended: what one entry holds."""

    ending: Annotated[str | None, ask("Result", "choice", choices=ENDINGS, required=True, hint="stopped and returned are proper endings too", audience="everybody")] = None
    summary: Annotated[str | None, ask("In a few sentences", "long text", required=True, hint="what the owner should know first", audience="everybody")] = None
    price: Annotated[str | None, ask("Price", "money", hint="such as 95 EUR")] = None
    care: Annotated[str | None, ask("Care", "long text", hint="how to fill, flush and keep it; a draft stands in the box", audience="everybody")] = None
    follow_up: Annotated[str | None, ask("Follow-up", "long text", hint="what to watch for, and when to come back", audience="everybody")] = None
    follow_up_on: Annotated[str | None, ask("Ask after it on", "date", hint="2026-05-14; the queue then names it", audience="bench")] = None
    promise_until: Annotated[str | None, ask("Work is answered for until", "date", hint="2026-06-14")] = None
    mass_g: Annotated[Reading | None, mass("Mass as it leaves", "empty and dry, such as 16.55 g")] = None
    released_on: Annotated[str | None, ask("Released on", "date", hint="2026-03-14", audience="everybody")] = None


RESULT = Kind("release", "result", "How the job ended", Result, log=False)


class FollowedUp(Form, frozen=True):
    """Asked after it: what one entry holds."""

    asked_on: Annotated[str | None, ask("Asked on", "date", required=True, default="today", hint="such as 14 May, or 2026-05-14")] = None
    said: Annotated[str | None, ask("What the owner said", "long text", hint="such as: it writes every day")] = None
    again_on: Annotated[str | None, ask("Ask again on", "date", hint="2026-11-14; empty: that was all", audience="bench")] = None


FOLLOWED_UP = Kind("release", "followed up", "Asked after it", FollowedUp)


# fmt: on
