"""What is asked at the agreement: the survey's conclusion, the proposal part by part, the estimate and the answers."""

from __future__ import annotations

from pentools import tables
from pentools.fields import Field
from pentools.record.kinds import Kind
from pentools.record.stages.common import PARTS, yes_no

__all__ = ["ACTIONS", "ANSWER", "ESTIMATE", "GRADES", "MENDABLE", "NOT_APPLICABLE", "PROPOSAL", "SURVEY"]

ACTIONS: tuple[tuple[str, str], ...] = (
    ("heat", "heat"),
    ("soak", "soaking"),
    ("polish", "polishing"),
    ("sealant", "sealant or glue"),
    ("replace part", "replacing a part"),
    ("nib work", "work on the nib"),
    ("publish", "publishing the story"),
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

SURVEY = Kind(
    "survey",
    "What the survey came to",
    (
        Field("conclusion", "In one sentence", "long text", required=True, public=True, hint="such as: sound, but the sac is gone; it can be mended in an evening"),
        Field("grade", "Condition in one word", "choice", choices=GRADES, public=True, hint="as museums' forms ask"),
        Field("methods", "How it was examined", "long text", public=True, hint="such as loupe 10×, raking light, water test, 0.1 mm feeler"),
        Field("not_examined", "What was not examined, and why", "long text", public=True, hint="such as the inside of the barrel: it was not opened"),
    ),
    log=False,
    help="What was seen stands under Condition, part by part; here stands what follows from it.",
)  # fmt: skip
PROPOSAL = Kind(
    "proposal",
    "Proposal for a part",
    (
        Field("part", "Part", "choice", choices=PARTS, required=True, public=True, hint="which part of the pen"),
        Field("mendable", "Can it be mended", "choice", choices=MENDABLE, public=True, hint="as far as it can be told now"),
        Field("proposed", "What is proposed, step by step", "long text", required=True, public=True, hint="such as: turn a new cork, wax it, dry fit, then close"),
        Field("materials", "With which materials", public=True, hint="such as cork, micro-crystalline wax"),
        Field("alternative", "Another way", "long text", public=True, hint="such as: an O-ring in place of the cork"),
        Field("leave_it", "If it is left as it is", "long text", public=True, hint="what happens then; leaving it is always one of the ways"),
        Field("risk", "Risk", "long text", public=True, hint="what can go wrong, and how likely"),
        yes_no("reversible", "Can it be undone?", public=True),
        Field("permanent", "What cannot be undone", "long text", public=True, hint="such as: polishing takes substance off for good"),
        yes_no("permanent_told", "Was the owner told so?", "yes, once it was said in so many words"),
    ),
    help="One entry for each part. Three ways are weighed: what is proposed, another way, and leaving it.",
)  # fmt: skip
ESTIMATE = Kind(
    "estimate",
    "Hours, price and ceiling",
    (
        Field("hours_low", "Hours, at least", "quantity", unit="h", low=0, high=500, hint="such as 2 h or 90 min"),
        Field("hours_likely", "Hours, most likely", "quantity", unit="h", low=0, high=500, hint="such as 3.5 h"),
        Field("hours_high", "Hours, at most", "quantity", unit="h", low=0, high=500, hint="such as 6 h"),
        Field("parts_cost", "Parts and materials", hint="such as 8 EUR"),
        Field("price_low", "Price, from", hint="such as 80 EUR"),
        Field("price_high", "Price, to", hint="such as 130 EUR"),
        Field("ceiling", "Ceiling", hint="never more than this without a new yes, such as 150 EUR; empty: the limit named at intake"),
    ),
    log=False,
    public=False,
)  # fmt: skip
ANSWER = Kind(
    "answer",
    "The owner's answer",
    (
        Field("action", "To what", "choice", choices=ACTIONS, required=True, hint="one kind of action an entry"),
        yes_no("agreed", "Yes or no", required=True),
        Field("answered_on", "On", "date", required=True, hint="2026-03-14"),
        Field("channel", "How", required=True, hint="letter, e-mail, by word of mouth"),
        Field("by", "By whom", hint="the owner, or who speaks for the owner"),
        yes_no("authority", "May this person decide?", "a yes from someone who may not decide does not count"),
        Field("terms", "In their words", "long text", hint="conditions and wishes, as they were given"),
    ),
    public=False,
    help="The newest answer to a kind of action counts; the older ones stay in the record.",
)
NOT_APPLICABLE = Kind(
    "not applicable",
    "Asked for, but does not apply",
    (
        Field(
            "asked",
            "What guidance asks for",
            "choice",
            choices=tuple((row["key"], row["field"]) for row in tables.rows("report_fields")),
            required=True,
            hint="conservation guidance asks for it of every record",
        ),
        Field("why", "Why it does not apply", required=True, hint="a few words; they stay in the record"),
    ),
    public=False,
)
