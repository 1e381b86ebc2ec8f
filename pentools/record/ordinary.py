"""The words that the kit's own sentences use: found alone, they tell of nobody."""

from __future__ import annotations

import functools

from pentools import tables, words
from pentools.record.registry import all_stages
from pentools.record.wording import folded_words

__all__ = ["is_ordinary_word", "ordinary_words"]


def is_ordinary_word(word: str) -> bool:
    """Whether the kit's own sentences use a word."""
    return word in ordinary_words()


@functools.cache
def ordinary_words() -> frozenset[str]:
    """The words of the kit's own forms, findings, tables and months, as compared."""
    from importlib import resources

    texts = [*words.MONTHS]
    for stage in all_stages():
        texts += [stage.title, stage.purpose]
        for kind in stage.kinds:
            texts += [kind.title, kind.help]
            for field in kind.fields:
                texts += [field.label, field.hint, *(label for choice in field.choices for label in choice)]
    for subject in ("base", "weighing", "seal", "finish", "dating", "treatment", "job"):
        texts += [told for told in words.phrasebook(subject).values() if isinstance(told, str)]
    for table in resources.files(tables).iterdir():
        if table.name.endswith(".csv"):
            texts.append(table.read_text(encoding="utf-8"))
    return frozenset(folded_words("\n".join(texts)))
