"""What is asked at the agreement: the survey's conclusion, the proposal part by part, the estimate and the answers."""

from __future__ import annotations

from typing import Annotated

from pentools import tables
from pentools.calc.base.completeness import ReportRow
from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.common import PARTS, yes_no
from pentools.units import Reading

__all__ = [
    "ACTIONS",
    "ANSWER",
    "ESTIMATE",
    "GRADES",
    "MENDABLE",
    "NOT_APPLICABLE",
    "PROPOSAL",
    "SURVEY",
    "YES",
    "Answer",
    "Estimate",
    "NotApplicable",
    "Proposal",
    "Survey",
    "Yes",
]

ACTIONS: tuple[tuple[str, str], ...] = (
    ("heat", "heat"),
    ("soak", "soaking"),
    ("polish", "polishing"),
    ("sealant", "sealant or glue"),
    ("replace part", "replacing a part"),
    ("mend", "mending a crack or a part for good"),
    ("colour", "colouring what has faded"),
    ("send out", "sending a part to another workshop"),
    ("nib work", "work on the nib"),
    ("publish", "publishing the story"),
    ("pictures", "showing its pictures"),
    ("engraving", "showing a name engraved on the pen"),
    ("proposal", "the proposal as a whole"),
    ("departure", "a departure from the proposal"),
)
MENDABLE: tuple[tuple[str, str], ...] = (
    ("yes", "yes"),
    ("partly", "partly"),
    ("no", "no"),
    ("unknown", "not known before it is open"),
)
GRADES: tuple[tuple[str, str], ...] = (
    ("excellent", "excellent"),
    ("good", "good"),
    ("fair", "fair"),
    ("poor", "poor"),
)


# fmt: off
class Survey(Form, frozen=True):
    """What the survey came to: what one entry holds."""

    conclusion: Annotated[str | None, ask("In one sentence", "long text", required=True, hint="such as: sound, but the sac is gone; it can be mended in an evening", audience="everybody")] = None
    grade: Annotated[str | None, ask("Condition in one word", "choice", choices=GRADES, hint="as museums' forms ask", audience="everybody")] = None
    methods: Annotated[str | None, ask("How it was examined", "long text", hint="such as loupe 10×, raking light, water test, 0.1 mm feeler", audience="everybody")] = None
    not_examined: Annotated[str | None, ask("What was not examined, and why", "long text", hint="such as the inside of the barrel: it was not opened", audience="everybody")] = None


SURVEY = Kind("agree", "survey", "What the survey came to", Survey, log=False, help="What was seen stands under Condition, part by part; here stands what follows from it.")


class Proposal(Form, frozen=True):
    """Proposal for a part: what one entry holds."""

    part: Annotated[str | None, ask("Part", "choice", choices=PARTS, required=True, hint="which part of the pen", audience="everybody")] = None
    mendable: Annotated[str | None, ask("Can it be mended", "choice", choices=MENDABLE, hint="as far as it can be told now", audience="everybody")] = None
    proposed: Annotated[str | None, ask("What is proposed, step by step", "long text", required=True, hint="such as: turn a new cork, wax it, dry fit, then close", audience="everybody")] = None
    materials: Annotated[str | None, ask("With which materials", hint="such as cork, micro-crystalline wax", audience="everybody")] = None
    alternative: Annotated[str | None, ask("Another way", "long text", hint="such as: an O-ring in place of the cork", audience="everybody")] = None
    leave_it: Annotated[str | None, ask("If it is left as it is", "long text", hint="what happens then; leaving it is always one of the ways", audience="everybody")] = None
    risk: Annotated[str | None, ask("Risk", "long text", hint="what can go wrong, and how likely", audience="everybody")] = None
    reversible: Annotated[bool | None, yes_no("Can it be undone?", audience="everybody")] = None
    permanent: Annotated[str | None, ask("What cannot be undone", "long text", hint="such as: polishing takes substance off for good", audience="everybody")] = None
    permanent_told: Annotated[bool | None, yes_no("Was the owner told so?", "yes, once it was said in so many words")] = None


PROPOSAL = Kind("agree", "proposal", "Proposal for a part", Proposal, help="One entry for each part. Three ways are weighed: what is proposed, another way, and leaving it.")


class Estimate(Form, frozen=True):
    """Hours, price and ceiling: what one entry holds."""

    hours_low: Annotated[Reading | None, ask("Hours, at least", "quantity", unit="h", low=0, high=500, hint="such as 2 h or 90 min")] = None
    hours_likely: Annotated[Reading | None, ask("Hours, most likely", "quantity", unit="h", low=0, high=500, hint="such as 3.5 h")] = None
    hours_high: Annotated[Reading | None, ask("Hours, at most", "quantity", unit="h", low=0, high=500, hint="such as 6 h")] = None
    parts_cost: Annotated[str | None, ask("Parts and materials", "money", hint="such as 8 EUR")] = None
    price_low: Annotated[str | None, ask("Price, from", "money", hint="such as 80 EUR")] = None
    price_high: Annotated[str | None, ask("Price, to", "money", hint="such as 130 EUR")] = None
    ceiling: Annotated[str | None, ask("Ceiling", "money", hint="never more than this without a new yes, such as 150 EUR; empty: the limit named at intake")] = None


ESTIMATE = Kind("agree", "estimate", "Hours, price and ceiling", Estimate, log=False)


class Answer(Form, frozen=True):
    """The owner's answer: what one entry holds."""

    action: Annotated[str | None, ask("To what", "choice", choices=ACTIONS, required=True, hint="one kind of action an entry")] = None
    agreed: Annotated[bool | None, yes_no("Yes or no", required=True)] = None
    answered_on: Annotated[str | None, ask("On", "date", required=True, hint="2026-03-14")] = None
    channel: Annotated[str | None, ask("How", required=True, hint="letter, e-mail, by word of mouth")] = None
    by: Annotated[str | None, ask("By whom", hint="the owner, or who speaks for the owner")] = None
    authority: Annotated[bool | None, yes_no("May this person decide?", "a yes from someone who may not decide does not count")] = None
    terms: Annotated[str | None, ask("In their words", "long text", hint="conditions and wishes, as they were given")] = None


class Yes(Form, frozen=True):
    """The owner's yes to several things at once: what one entry holds."""

    to: Annotated[tuple[str, ...] | None, ask("Yes to", "ticks", choices=ACTIONS, required=True, hint="everything that the owner said yes to")] = None
    at_most: Annotated[str | None, ask("For at most", "money", hint="the price agreed, such as 60 EUR")] = None
    answered_on: Annotated[str | None, ask("On", "date", required=True, default="today", hint="such as 14 March, or 2026-03-14")] = None
    channel: Annotated[str | None, ask("How", required=True, hint="letter, e-mail, by word of mouth")] = None
    not_to: Annotated[tuple[str, ...] | None, ask("No to", "ticks", choices=ACTIONS, hint="what the owner does not want")] = None
    by: Annotated[str | None, ask("By whom", hint="the owner, or who speaks for the owner")] = None
    authority: Annotated[bool | None, yes_no("May this person decide?", "a yes from someone who may not decide does not count")] = None
    terms: Annotated[str | None, ask("In their words", "long text", hint="conditions and wishes, as they were given")] = None


YES = Kind("agree", "yes", "The owner's yes", Yes, help="What was not ticked was not agreed. The newest word on each thing counts.")
ANSWER = Kind("agree", "answer", "One answer alone", Answer, help="The newest answer to a kind of action counts; the older ones stay in the record.")


class NotApplicable(Form, frozen=True):
    """Asked for, but does not apply: what one entry holds."""

    asked: Annotated[str | None, ask("What guidance asks for", "choice", choices=tuple((row.key, row.field) for row in tables.read(ReportRow, "report_fields")), required=True, hint="conservation guidance asks for it of every record")] = None
    why: Annotated[str | None, ask("Why it does not apply", required=True, hint="a few words; they stay in the record")] = None


NOT_APPLICABLE = Kind("agree", "not applicable", "Asked for, but does not apply", NotApplicable)


# fmt: on
