"""What a finding says of the pen, without what it tells the bench to do: a reader of a page has no bench."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import TYPE_CHECKING

from pentools.writeup.blocks import Block, Paragraph

if TYPE_CHECKING:
    from pentools.calc.base.findings import Finding

__all__ = ["told", "without_orders"]

# verbs that begin an order in our own words; a colon or a semicolon may stand before one
_VERBS = [
    "add",
    "align",
    "ask",
    "bring",
    "build",
    "carry",
    "check",
    "choose",
    "clean",
    "close",
    "come",
    "compare",
    "consider",
    "correct",
    "cut",
    "dip",
    "do",
    "draw",
    "dry",
    "enter",
    "fill",
    "find",
    "fit",
    "follow",
    "give",
    "go",
    "hold",
    "keep",
    "lay",
    "leave",
    "let",
    "lid",
    "look",
    "make",
    "mark",
    "mask",
    "measure",
    "mix",
    "name",
    "note",
    "open",
    "prefer",
    "put",
    "raise",
    "read",
    "reduce",
    "release",
    "rinse",
    "rub",
    "say",
    "scrape",
    "seal",
    "see",
    "set",
    "show",
    "soak",
    "soften",
    "start",
    "stop",
    "take",
    "tare",
    "test",
    "thin",
    "trim",
    "try",
    "turn",
    "type",
    "unmask",
    "use",
    "wait",
    "warm",
    "watch",
    "wear",
    "weigh",
    "withdraw",
    "work",
    "write",
]
_ORDER = re.compile(rf"(?:next test|before anything else|first|then|always|never|{'|'.join(_VERBS)})\b", re.IGNORECASE)
# "Dip 3", "Trim is", "Work log" name a thing
_NAMES = re.compile(r"\w+ (?:\d|is\b|are\b|was\b|were\b|has\b|have\b|log\b|hours?\b|of\b)")
_PURPOSE = re.compile(r"To [^,.]+, ")
_SENTENCES = re.compile(r"(?<=[.!?])\s+(?=[A-Z“\"0-9])")
_CLAUSES = re.compile(r"(?<=[:;,])\s+")


def told(findings: Iterable[Finding]) -> list[Block]:
    """Findings as one paragraph of statements.

    Parameters
    ----------
    findings : iterable of Finding
        Any number of findings.

    Returns
    -------
    list of Block
        One `Paragraph`, or nothing where they are orders alone.
    """
    said = dict.fromkeys(text for finding in findings if (text := without_orders(finding.text)))
    return [Paragraph(" ".join(said))] if said else []


def without_orders(text: str) -> str:
    """A text of the kit's own without the sentences, and the ends of sentences, that tell the bench what to do.

    Parameters
    ----------
    text : str
        Words of a finding or an answer; never a person's own words, which stand as they are.

    Returns
    -------
    str
        What is left; empty where every sentence is an order.

    Examples
    --------
    >>> without_orders("Heating 2 went above the limit of 70 °C. Stop, let it cool, look for change of colour.")
    'Heating 2 went above the limit of 70 °C.'
    >>> without_orders("It still rises by 0.1 mL a filling: fill again until it settles.")
    'It still rises by 0.1 mL a filling.'
    """
    kept = []
    for sentence in _SENTENCES.split(text.strip()):
        if _is_order(sentence) or sentence.endswith("?"):
            continue
        parts = _CLAUSES.split(sentence)
        for i in range(1, len(parts)):
            if parts[i - 1][-1] in ":;" and _is_order(parts[i]):
                sentence = " ".join(parts[:i]).rstrip(":;, ") + "."  # noqa: PLW2901 - the end is an order
                break
        kept.append(sentence)
    return " ".join(kept)


def _is_order(words: str) -> bool:
    purpose = _PURPOSE.match(words)
    begins = words[purpose.end() :] if purpose else words
    return _ORDER.match(begins) is not None and _NAMES.match(begins) is None
