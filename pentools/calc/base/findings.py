"""A finding is advice that comes with a result: never an exception, always with a level and a reason."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Literal

from pentools.words import KEY, LEVEL_WORDS, Said, phrase

__all__ = ["LEVELS", "Finding", "Level", "gravest_first", "worst_level"]

Level = Literal["ok", "note", "warning", "stop"]
LEVELS: tuple[Level, ...] = ("ok", "note", "warning", "stop")


@dataclass(frozen=True, slots=True, init=False, eq=False, repr=False)
class Finding:
    """One piece of advice: a level, a topic, and the values its words are filled with.

    Parameters
    ----------
    level : {"ok", "note", "warning", "stop"}
        How much it matters: fine / worth knowing / act on it / do not go on.
    key : str
        ``subject.topic`` or ``subject.topic:variant``; the words stand in ``pentools/words/<subject>.py``.
    **values : Said
        What the words ask for, by name.

    Examples
    --------
    >>> Finding("note", "base.example", share=0.25).text.split()
    ['An', 'example:', '25', '%', 'of', 'it.']
    """

    level: Level
    key: str
    prefix: str
    values: Mapping[str, Said]

    def __init__(self, level: Level, key: str, /, **values: Said) -> None:
        if not KEY.fullmatch(key):
            raise ValueError(f"a finding's key is subject.topic or subject.topic:variant, not {key!r}")
        self._set(level, key, "", {name: _kept(value) for name, value in values.items()})

    def _set(self, *values: object) -> None:
        for name, value in zip(self.__slots__, values, strict=True):
            object.__setattr__(self, name, value)

    @property
    def topic(self) -> str:
        """A short stable key, so that a caller can find one finding among many."""
        return self.key.partition(".")[2].partition(":")[0]

    @property
    def text(self) -> str:
        """One or two plain sentences with the reason in them."""
        text = phrase(self.key, self.values)
        return f"{self.prefix}: {text}" if self.prefix else text

    def under(self, heading: str = "", level: Level | None = None) -> Finding:
        """The same finding told under a heading, or at another level.

        Parameters
        ----------
        heading : str
            What stands before its words, such as ``Opening``; empty for nothing.
        level : Level or None
            Its level there; its own where None.

        Returns
        -------
        Finding
            A new one.
        """
        new = object.__new__(Finding)
        prefix = ": ".join(part for part in (heading, self.prefix) if part)
        new._set(level or self.level, self.key, prefix, self.values)
        return new

    def as_json(self) -> dict[str, Any]:
        """The finding as a JSON object with ``level``, ``text``, ``topic`` and ``values``."""
        values = {name: _plain(value) for name, value in self.values.items()}
        return {"level": self.level, "text": self.text, "topic": self.topic, "values": values}

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Finding):
            return NotImplemented
        return (self.level, self.topic, self.text) == (other.level, other.topic, other.text)

    def __hash__(self) -> int:
        return hash((self.level, self.topic, self.text))

    def __str__(self) -> str:
        return f"{LEVEL_WORDS[self.level]}: {self.text}"

    def __repr__(self) -> str:
        return f"Finding({self.level!r}, {self.key!r}, {self.text!r})"


def _kept(value: Said) -> Said:
    return value if isinstance(value, str) or not isinstance(value, Iterable) else tuple(value)


def _plain(value: Said) -> Any:
    """A value as JSON gives it back: a list, and null for what has no end."""
    if isinstance(value, float) and not math.isfinite(value):
        return None
    return list(value) if isinstance(value, tuple) else value


def worst_level(findings: Iterable[Finding]) -> Level:
    """The gravest level among some findings.

    Parameters
    ----------
    findings : iterable of Finding
        Any number of findings.

    Returns
    -------
    Level
        The gravest; "ok" where there are none.
    """
    return max((f.level for f in findings), key=LEVELS.index, default="ok")


def gravest_first(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings by level, the gravest first; those of one level keep their order, and none is said twice.

    Parameters
    ----------
    findings : iterable of Finding
        Any number of findings.

    Returns
    -------
    tuple of Finding
        In that order.
    """
    return tuple(sorted(dict.fromkeys(findings), key=lambda f: -LEVELS.index(f.level)))
