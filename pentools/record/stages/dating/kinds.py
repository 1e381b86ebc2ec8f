"""What is asked at the stage that tells what the pen is: the forms for marks, evidence, a price then and the conclusion."""

from __future__ import annotations

from pentools.calc.dating.evidence import KINDS
from pentools.fields import Field
from pentools.record.kinds import Kind

__all__ = ["CERTAINTY_CHOICES", "COUNTRIES", "EVIDENCE", "IDENTITY", "MARK", "PART_STATES", "PRICE_THEN", "QUESTION"]

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

MARK = Kind(
    "mark",
    "Mark",
    (
        Field("where", "Where it stands", required=True, public=True, hint="such as barrel, lengthwise, second line"),
        Field(
            "text",
            "The mark, letter for letter",
            "long text",
            required=True,
            public=True,
            hint="with its own spelling and line breaks; … for what cannot be read",
        ),
        Field("read_with", "How it was read", public=True, hint="such as loupe 10×, raking light from the left"),
        Field("photo", "Photo", "photo", public=True, hint="a file in photos/, such as imprint-before.jpg"),
    ),
    help=(
        "As it stands on the pen, never corrected. A nib's number stays the number that is stamped on it: "
        "makers counted each in their own way, so it is not converted."
    ),
)
EVIDENCE = Kind(
    "evidence",
    "Dating evidence",
    (
        Field("feature", "Feature", required=True, public=True, hint="what is seen, such as clip with a stepped ball"),
        Field(
            "dates",
            "From and to",
            required=True,
            public=True,
            hint="such as 1936/1942, c. 1936 ± 3, before 1942 or 193X; how it was read is shown beside it",
        ),
        Field(
            "evidence_kind",
            "What kind of evidence",
            "choice",
            choices=tuple((key, f"{key}: {meaning}") for key, meaning in KINDS.items()),
            required=True,
            public=True,
            default="production",
            hint="a patent says “not before”, an advert limits neither end",
        ),
        Field(
            "certainty",
            "How sure are the dates",
            "choice",
            choices=CERTAINTY_CHOICES,
            required=True,
            public=True,
            default="likely",
            hint="judged; three doubtful ones weigh as much as a sure one",
        ),
        Field(
            "part_state",
            "Is the part original",
            "choice",
            choices=PART_STATES,
            required=True,
            public=True,
            default="original",
            hint="what was replaced says nothing of the pen's age; not known never narrows the range",
        ),
        Field(
            "source",
            "Where the dates are known from",
            public=True,
            hint="such as a catalogue of 1938; it may be published, so no private names",
        ),
    ),
    help="One entry for each feature. Nothing tighter is concluded than the evidence on original parts allows.",
)
QUESTION = Kind(
    "question",
    "Not looked at yet",
    (
        Field("feature", "Feature", required=True, public=True, hint="such as date code under the clip"),
        Field(
            "answers",
            "Dates of each form it may have",
            "items",
            required=True,
            public=True,
            hint="two or more, such as 1936/1939; 1940/1942",
        ),
    ),
    help="A feature that would tell more, with the dates of every answer it may give: the panel says which is worth it.",
)
PRICE_THEN = Kind(
    "price then",
    "Price then",
    (
        Field("price", "Price", required=True, public=True, hint="as it stands, such as 5.00 USD, $2.75 or 12/6"),
        Field(
            "year", "Year of the price", "count", low=1850, high=2100, required=True, public=True, hint="such as 1940"
        ),
        Field(
            "country",
            "Country",
            "choice",
            choices=COUNTRIES,
            required=True,
            public=True,
            default="US",
            hint="there is an index for the first two",
        ),
        Field("known_from", "Where it is known from", public=True, hint="such as the price band, an advert of 1940"),
    ),
    log=False,
)
IDENTITY = Kind(
    "identity",
    "What it is",
    (
        Field("maker", "Maker, as concluded", required=True, public=True, hint="a name, or unknown"),
        Field("origin", "Country or town of origin", public=True, hint="or unknown"),
        Field("object_type", "What kind of pen", required=True, public=True, hint="such as piston filler, middle size"),
        Field(
            "certainty",
            "How sure is that",
            "choice",
            choices=CERTAINTY_CHOICES,
            public=True,
            default="likely",
            hint="it is an opinion, and the page says so",
        ),
        Field(
            "conclusion",
            "Conclusion in words",
            "long text",
            public=True,
            hint="what the evidence comes to, and what was doubted and why",
        ),
    ),
    log=False,
    help="Say unknown where it is unknown.",
)
