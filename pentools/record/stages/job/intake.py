"""Intake: whose pen it is, what arrived, what is asked, and what may be shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.fields import Field
from pentools.record.kinds import Kind, Stage, StageState
from pentools.record.stages.common import length, mass, system_choices, yes_no

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["INTAKE", "may_publish"]

OWNER = Kind(
    "owner",
    "Whose pen it is",
    (
        Field("owner", "Owner", hint="name; never on the page for publication", required=True),
        Field("address", "Address", "long text", hint="where it goes back to"),
        Field("contact", "Contact", hint="how to reach the owner"),
        yes_no("may_decide", "May this person decide about the pen?"),
        Field("declared_value", "Declared value", hint="for custody and post, such as 180 EUR"),
        Field("value_basis", "Basis of the value", hint="who said so, and when"),
        Field("private_note", "Private note", "long text", hint="for your eyes and the owner's"),
    ),
    log=False,
    public=False,
)

ARRIVAL = Kind(
    "arrival",
    "What arrived",
    (
        Field(
            "pen",
            "The pen in a few words",
            hint="such as green marbled piston filler, 1930s",
            required=True,
            public=True,
        ),
        Field("system", "Filling system", "choice", choices=system_choices(), hint="how it fills", public=True),
        Field("material", "Material of barrel and cap", hint="such as celluloid, or unknown", public=True),
        Field("arrived_on", "Arrived on", "date", hint="2026-03-14", public=True),
        Field("pieces", "Pieces", "items", hint="cap; barrel; loose nib; box", public=True),
        mass("mass_g", "Mass as it arrived", "such as 16.42 g"),
        length("capped_mm", "Length capped", "such as 128.5 mm or 5 1/16 in", 60, 220),
        length("cap_mm", "Length of the cap", "such as 62.0 mm", 20, 120),
        length("cap_outside_mm", "Cap, outside diameter", "at its widest, such as 14.1 mm", 6, 30),
        length("barrel_mm", "Length of the barrel", "without section and end knob, such as 70.0 mm", 20, 160),
        length("barrel_outside_mm", "Barrel, outside diameter", "at its widest, such as 12.6 mm", 5, 30),
        length("section_mm", "Length of the section", "such as 16.0 mm", 5, 50),
        length("section_outside_mm", "Section, outside diameter", "at its middle, such as 9.8 mm", 4, 25),
        length("nib_mm", "Nib, length that shows", "from section to tip, such as 22.0 mm", 3, 45),
        length("end_mm", "Blind cap or end knob, length", "such as 12.0 mm", 2, 60),
    ),
    log=False,
)

REQUEST = Kind(
    "request",
    "What is asked",
    (
        Field("asked", "What the owner asks for", "long text", hint="in the owner's words", required=True, public=True),
        Field(
            "meant_for",
            "What the pen is for",
            "choice",
            choices=(
                ("use", "to write with"),
                ("collection", "for a collection"),
                ("keepsake", "a keepsake"),
                ("unknown", "not said"),
            ),
            hint="it changes which treatments are right",
            public=True,
        ),
        Field(
            "expectations",
            "What the owner expects",
            "long text",
            hint="how it should look and work afterwards",
            public=True,
        ),
        Field("must_not", "What must not be done", "long text", hint="in the owner's words", public=True),
        Field("price_limit", "Price limit", hint="agreed ceiling, such as 150 EUR"),
    ),
    log=False,
)

CONSENT = Kind(
    "consent",
    "Consent to publish",
    (
        yes_no("publish", "May the story be published?", required=True),
        yes_no("pictures", "May pictures be shown?"),
        Field("consent_on", "Given on", "date", hint="2026-03-14"),
        Field("channel", "How it was given", hint="letter, e-mail, by word of mouth"),
    ),
    log=False,
    public=False,
)


def may_publish(job: Job) -> bool:
    """Whether the owner agreed that the story may be published; the newest word counts, here or at the agreement."""
    from pentools.record.stages.job.agree import consents

    return consents(job).get("publish") is True


def _missing(job: Job) -> list[str]:
    return [
        kind.title.lower()
        for kind in (OWNER, ARRIVAL, REQUEST, CONSENT)
        if job.record.latest("intake", kind.key) is None
    ]


def _state(job: Job) -> StageState:
    missing = _missing(job)
    if len(missing) == 4:
        return StageState("not begun")
    return StageState("open", "still to ask: " + ", ".join(missing)) if missing else StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    found = [
        Finding("warning", f"Intake: “{title}” has not been filled in.", "intake-missing") for title in _missing(job)
    ]
    arrival = job.values("intake", "arrival")
    if job.record.latest("intake", "arrival") is not None:
        if arrival["mass_g"] is None:
            found.append(
                Finding(
                    "note",
                    "Intake: the pen was not weighed as it arrived, so gains and losses of parts cannot be told later.",
                    "arrival-mass",
                )
            )
        if arrival["system"] is None:
            found.append(Finding("warning", "Intake: the filling system is not named.", "system-missing"))
    return tuple(found)


INTAKE = Stage(
    "intake",
    "Intake",
    "Whose pen this is, what came in the parcel, what is asked, and what may be shown of it.",
    (OWNER, ARRIVAL, REQUEST, CONSENT),
    panel="pentools.panels.stages.job.intake:IntakePanel",
    section="pentools.writeup.sections.job.intake:section",
    state=_state,
    checks=_checks,
)
