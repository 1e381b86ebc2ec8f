"""What is asked as a pen comes in: whose it is, what arrived, what is wanted, what may be shown, and its condition."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.common import PARTS, SEVERITIES, mass, measured, system_choices, yes_no
from pentools.record.stages.job.works import WORKS
from pentools.units import Reading

__all__ = [
    "ARRIVAL",
    "CONSENT",
    "OWNER",
    "PART_CONDITION",
    "PASSED",
    "REQUEST",
    "Arrival",
    "Consent",
    "Owner",
    "PartCondition",
    "Passed",
    "Request",
]


# fmt: off
class Owner(Form, frozen=True):
    """Whose pen it is: what one entry holds."""

    owner: Annotated[str | None, ask("Owner", hint="name; never on the page for publication", required=True)] = None
    contact: Annotated[str | None, ask("Contact", hint="how to reach the owner")] = None
    address: Annotated[str | None, ask("Address", "long text", hint="where it goes back to")] = None
    may_decide: Annotated[bool | None, yes_no("May this person decide about the pen?")] = None
    declared_value: Annotated[str | None, ask("Declared value", hint="for custody and post, such as 180 EUR")] = None
    value_basis: Annotated[str | None, ask("Basis of the value", hint="who said so, and when")] = None
    private_note: Annotated[str | None, ask("Private note", "long text", hint="for your eyes alone: it stands on no page", audience="bench")] = None


OWNER = Kind("intake", "owner", "Whose pen it is", Owner, log=False)


class Arrival(Form, frozen=True):
    """What arrived: what one entry holds."""

    pen: Annotated[str | None, ask("The pen in a few words", hint="such as green marbled piston filler, 1930s", required=True, audience="everybody")] = None
    system: Annotated[str | None, ask("Filling system", "choice", choices=system_choices(), by_words=True, hint="how it fills", audience="everybody")] = None
    material: Annotated[str | None, ask("Material of barrel and cap", hint="such as celluloid, or unknown", audience="everybody")] = None
    arrived_on: Annotated[str | None, ask("Arrived on", "date", hint="2026-03-14", audience="everybody")] = None
    pieces: Annotated[tuple[str, ...] | None, ask("Pieces", "items", hint="cap; barrel; loose nib; box", audience="everybody")] = None
    mass_g: Annotated[Reading | None, mass("Mass as it arrived", "such as 16.42 g")] = None
    capped_mm: Annotated[Reading | None, measured("capped_mm")] = None
    cap_mm: Annotated[Reading | None, measured("cap_mm")] = None
    cap_outside_mm: Annotated[Reading | None, measured("cap_outside_mm")] = None
    barrel_mm: Annotated[Reading | None, measured("barrel_mm")] = None
    barrel_outside_mm: Annotated[Reading | None, measured("barrel_outside_mm")] = None
    section_mm: Annotated[Reading | None, measured("section_mm")] = None
    section_outside_mm: Annotated[Reading | None, measured("section_outside_mm")] = None
    nib_mm: Annotated[Reading | None, measured("nib_mm")] = None
    end_mm: Annotated[Reading | None, measured("end_mm")] = None


ARRIVAL = Kind("intake", "arrival", "What arrived", Arrival, log=False)


class Request(Form, frozen=True):
    """What is asked: what one entry holds."""

    asked: Annotated[str | None, ask("What the owner asks for", "long text", hint="in the owner's words", required=True, audience="everybody")] = None
    work: Annotated[str | None, ask("Kind of work", "choice", choices=WORKS, hint="it decides what stands on the sheet at once; all the rest stays under “further”", audience="everybody")] = None
    meant_for: Annotated[str | None, ask("What the pen is for", "choice", choices=(("use", "to write with"), ("collection", "for a collection"), ("keepsake", "a keepsake"), ("unknown", "not said")), hint="it changes which treatments are right", audience="everybody")] = None
    expectations: Annotated[str | None, ask("What the owner expects", "long text", hint="how it should look and work afterwards")] = None
    must_not: Annotated[str | None, ask("What must not be done", "long text", hint="in the owner's words")] = None
    price_limit: Annotated[str | None, ask("Price limit", "money", hint="agreed ceiling, such as 150 EUR")] = None
    promised_by: Annotated[str | None, ask("Promised by", "date", hint="2026-04-30; empty where no day was promised")] = None


REQUEST = Kind("intake", "request", "What is asked", Request, log=False)


class Consent(Form, frozen=True):
    """Consent to publish: what one entry holds."""

    publish: Annotated[bool | None, yes_no("May the story be published?", required=True)] = None
    pictures: Annotated[bool | None, yes_no("May pictures be shown?")] = None
    engraving: Annotated[bool | None, yes_no("May a name engraved on the pen be shown?")] = None
    consent_on: Annotated[str | None, ask("Given on", "date", hint="2026-03-14")] = None
    channel: Annotated[str | None, ask("How it was given", hint="letter, e-mail, by word of mouth")] = None


CONSENT = Kind("intake", "consent", "Consent to publish", Consent, log=False)


class Passed(Form, frozen=True):
    """A word shown all the same: what one entry holds."""

    word: Annotated[str | None, ask("Word", required=True, hint="what may stand on a page for everybody although it is the owner's or the bench's, such as Green")] = None
    place: Annotated[str | None, ask("Where", hint="such as story cell 3; empty: wherever the word stands")] = None
    around: Annotated[str | None, ask("With the words around it", "long text", hint="empty: whatever stands around it")] = None
    reason: Annotated[str | None, ask("Reason", "long text", required=True, hint="such as: the owner wants her name shown; or: it is the pen's colour")] = None


PASSED = Kind("intake", "shown all the same", "Shown all the same", Passed, help="A page for everybody is held where something of the owner's or the bench's stands in its words. Take it out of the text; or say here why it may stand.")


class PartCondition(Form, frozen=True):
    """One part: what one entry holds."""

    part: Annotated[str | None, ask("Part", "choice", choices=PARTS, required=True, hint="which part of the pen", audience="everybody")] = None
    seen: Annotated[str | None, ask("What is seen", "long text", required=True, hint="only what the eye, the hand or the loupe tells", audience="everybody")] = None
    means: Annotated[str | None, ask("What it may mean", "long text", hint="your reading of it, kept apart from what is seen", audience="everybody")] = None
    severity: Annotated[str | None, ask("How serious", "choice", choices=SEVERITIES, required=True, hint="0 sound to 4 lost", audience="everybody")] = None
    earlier_repair: Annotated[bool | None, yes_no("Is it an earlier repair?", audience="everybody")] = None
    photo: Annotated[str | None, ask("Photo", "photo", hint="a file in photos/, such as section-before.jpg", audience="everybody")] = None


PART_CONDITION = Kind("condition", "part", "One part", PartCondition, help="One entry a part and fault. What is seen and what it may mean are kept apart.")


# fmt: on
