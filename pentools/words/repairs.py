"""What is said of parts that were mended."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]


def _away(part: str, sent: str | None, due: str | None) -> str:
    since = f" since {sent}" if sent else ""
    back = f", expected back on {due}" if due else ""
    return f"Parts mended: the {part} is at another workshop{since}{back}."


WORDS: Mapping[str, Template] = {
    "other-part": "Parts mended: “{method}” is no way of mending the {part}. Correct the entry.",
    "wanted": "Parts mended, {what}: it holds only for now, and what would replace it is not said.",
    "away": _away,
    "left-away": "Parts mended: the job has ended while {parts:and} is at another workshop.",
    "too-early": "Parts mended, {what}: an abrasive was used before it had stood its shortest time, until {until}.",
    "offered": "Parts mended offers ways for: {parts:and}.",
    "waits": "It waits: {reason}.",
    "limit": "{limit}",
    "undone:no": "It cannot be undone.",
    "undone:partly": "It can be undone only in part.",
}
