"""What is asked at the stage that tells what the pen is: the forms for marks, evidence, a price then and the conclusion."""

from __future__ import annotations

from typing import Annotated

from pentools.calc.dating.evidence import KINDS
from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.common import yes_no

__all__ = [
    "CERTAINTY_CHOICES",
    "COUNTRIES",
    "EVIDENCE",
    "IDENTITY",
    "MARK",
    "PART_STATES",
    "PRICE_THEN",
    "QUESTION",
    "Evidence",
    "Identity",
    "Mark",
    "PriceThen",
    "Question",
]

CERTAINTY_CHOICES: tuple[tuple[str, str], ...] = (("sure", "sure"), ("likely", "likely"), ("doubtful", "doubtful"))
PART_STATES: tuple[tuple[str, str], ...] = (
    ("original", "original to this pen"),
    ("replaced", "replaced"),
    ("unknown", "not known"),
)
COUNTRIES: tuple[tuple[str, str], ...] = (
    ("US", "United States"),
    ("UK", "United Kingdom"),
    ("other", "another country"),
)


# fmt: off
class Mark(Form, frozen=True):
    """Mark: what one entry holds."""

    where: Annotated[str | None, ask("Where it stands", required=True, hint="such as barrel, lengthwise, second line", audience="everybody")] = None
    text: Annotated[str | None, ask("The mark, letter for letter", "long text", required=True, hint="with its own spelling and line breaks; … for what cannot be read", audience="everybody")] = None
    read_with: Annotated[str | None, ask("How it was read", hint="such as loupe 10×, raking light from the left", audience="everybody")] = None
    engraved_name: Annotated[bool | None, yes_no("Is it the name or the dedication of somebody it belonged to?", "then it stands on a page for everybody only by consent")] = None
    photo: Annotated[str | None, ask("Photo", "photo", hint="a file in photos/, such as imprint-before.jpg", audience="everybody")] = None


MARK = Kind("identify", "mark", "Mark", Mark, help="As it stands on the pen, never corrected. A nib's number stays the number that is stamped on it: makers counted each in their own way, so it is not converted.")


class Evidence(Form, frozen=True):
    """Dating evidence: what one entry holds."""

    feature: Annotated[str | None, ask("Feature", required=True, hint="what is seen, such as clip with a stepped ball", audience="everybody")] = None
    dates: Annotated[str | None, ask("From and to", required=True, hint="such as 1936/1942, c. 1936 ± 3, before 1942 or 193X; how it was read is shown beside it", audience="everybody")] = None
    evidence_kind: Annotated[str | None, ask("What kind of evidence", "choice", choices=tuple(((key, f'{key}: {meaning}') for key, meaning in KINDS.items())), required=True, default="production", hint="a patent says “not before”, an advert limits neither end", audience="everybody")] = None
    certainty: Annotated[str | None, ask("How sure are the dates", "choice", choices=CERTAINTY_CHOICES, required=True, default="likely", hint="judged; three doubtful ones weigh as much as a sure one", audience="everybody")] = None
    part_state: Annotated[str | None, ask("Is the part original", "choice", choices=PART_STATES, required=True, default="original", hint="what was replaced says nothing of the pen's age; not known never narrows the range", audience="everybody")] = None
    source: Annotated[str | None, ask("Where the dates are known from", hint="such as a catalogue of 1938; it may be published, so no private names", audience="everybody")] = None


EVIDENCE = Kind("identify", "evidence", "Dating evidence", Evidence, help="One entry for each feature. Nothing tighter is concluded than the evidence on original parts allows.")


class Question(Form, frozen=True):
    """Not looked at yet: what one entry holds."""

    feature: Annotated[str | None, ask("Feature", required=True, hint="such as date code under the clip", audience="everybody")] = None
    answers: Annotated[tuple[str, ...] | None, ask("Dates of each form it may have", "items", required=True, hint="two or more, such as 1936/1939; 1940/1942", audience="everybody")] = None


QUESTION = Kind("identify", "question", "Not looked at yet", Question, help="A feature that would tell more, with the dates of every answer it may give: the panel says which is worth it.")


class PriceThen(Form, frozen=True):
    """Price then: what one entry holds."""

    price: Annotated[str | None, ask("Price", required=True, hint="as it stands, such as 5.00 USD, $2.75 or 12/6", audience="everybody")] = None
    year: Annotated[int | None, ask("Year of the price", "count", low=1850, high=2100, required=True, hint="such as 1940", audience="everybody")] = None
    country: Annotated[str | None, ask("Country", "choice", choices=COUNTRIES, required=True, default="US", hint="there is an index for the first two", audience="everybody")] = None
    known_from: Annotated[str | None, ask("Where it is known from", hint="such as the price band, an advert of 1940", audience="everybody")] = None


PRICE_THEN = Kind("identify", "price then", "Price then", PriceThen, log=False)


class Identity(Form, frozen=True):
    """What it is: what one entry holds."""

    maker: Annotated[str | None, ask("Maker, as concluded", required=True, hint="a name, or unknown", audience="everybody")] = None
    origin: Annotated[str | None, ask("Country or town of origin", hint="or unknown", audience="everybody")] = None
    object_type: Annotated[str | None, ask("What kind of pen", required=True, hint="such as piston filler, middle size", audience="everybody")] = None
    certainty: Annotated[str | None, ask("How sure is that", "choice", choices=CERTAINTY_CHOICES, default="likely", hint="it is an opinion, and the page says so", audience="everybody")] = None
    conclusion: Annotated[str | None, ask("Conclusion in words", "long text", hint="what the evidence comes to, and what was doubted and why", audience="everybody")] = None


IDENTITY = Kind("identify", "identity", "What it is", Identity, log=False, help="Say unknown where it is unknown.")


# fmt: on
