"""What every subject may have to say."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]

WORDS: Mapping[str, Template] = {
    "refused": "{sentence}",
    "from-bench": "Taken from this bench's own facts: {facts:and}.",
    "bench-file": "{problem}",
    "example": "An example: {share:.0%} of it.",
    "missing": "Not on record ({section}): {field}.",
    "complete": "All that conservation guidance asks is there, or is said not to apply.",
}
