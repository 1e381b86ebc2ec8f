"""A finding is advice that comes with a result: never an exception, always with a level and a reason."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = ["LEVELS", "Finding", "Level", "worst_level"]

Level = Literal["ok", "note", "warning", "stop"]
LEVELS: tuple[Level, ...] = ("ok", "note", "warning", "stop")


@dataclass(frozen=True, slots=True)
class Finding:
    """One piece of advice.

    Parameters
    ----------
    level : {"ok", "note", "warning", "stop"}
        How much it matters: fine / worth knowing / act on it / do not go on.
    text : str
        One or two plain sentences with the reason in them.
    topic : str
        A short stable key, so that a caller can find one finding among many.
    """

    level: Level
    text: str
    topic: str = ""

    def as_json(self) -> dict[str, str]:
        """The finding as a JSON object with ``level``, ``text`` and ``topic``."""
        return {"level": self.level, "text": self.text, "topic": self.topic}


def worst_level(findings: tuple[Finding, ...] | list[Finding]) -> Level:
    """The gravest level among some findings.

    Parameters
    ----------
    findings : sequence of Finding
        Any number of findings.

    Returns
    -------
    Level
        The gravest; "ok" where there are none.
    """
    return max((f.level for f in findings), key=LEVELS.index, default="ok")
