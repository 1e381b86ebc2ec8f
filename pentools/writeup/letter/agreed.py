"""What was agreed and where the work departed from it: one small table."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeAlias

from pentools.numbers import capital, in_words
from pentools.record.stages.job.agree import answers_of, consents, departures_without_yes
from pentools.record.stages.job.agree_kinds import ACTIONS
from pentools.record.stages.job.work_kinds import DEPARTURE
from pentools.writeup.blocks import Table
from pentools.writeup.letter.row import up_to
from pentools.writeup.words import date_in_words

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["MOST_ROWS", "agreed_table"]

MOST_ROWS = 8
_NAMES = dict(ACTIONS)
# consent to publish is no work; a departure stands in the table itself
_ELSEWHERE = ("publish", "pictures", "departure")
_TERMS, _WHAT = 24, 40
_Row: TypeAlias = tuple[str, str, str]


def agreed_table(job: Job) -> Table | None:
    """The answers that count, then every departure with its reason.

    Returns
    -------
    Table or None
        At most `MOST_ROWS` rows and no empty column; None where nothing was answered and nothing departed from.
    """
    departures = _departures(job)[: MOST_ROWS - 2]
    answers = _same_words(_answers(job))
    if len(answers) + len(departures) > MOST_ROWS:
        answers = _gathered(answers, MOST_ROWS - len(departures))
    rows = (*answers, *departures)
    if not rows:
        return None
    head = ("What", "Agreed", "In a few words")
    shown = [i for i in range(len(head)) if any(row[i] for row in rows)]
    title = "What was agreed" + (", and where the work departed from it" if departures else "")
    return Table(title, tuple(head[i] for i in shown), tuple(tuple(row[i] or "–" for i in shown) for row in rows))


def _answers(job: Job) -> list[_Row]:
    newest = {logged.values.action: logged.values for logged in answers_of(job)}
    rows = []
    for action, agreed in consents(job).items():
        if action in _ELSEWHERE:
            continue
        answer = newest.get(action)
        # the yes or no may have been given elsewhere, as the consent to polish is
        counts = answer is not None and answer.agreed is agreed
        when = _when(answer.answered_on, answer.channel) if answer is not None and counts else ""
        terms = up_to(answer.terms, _TERMS)[0] if answer is not None and counts and answer.terms else ""
        word = "yes" if agreed else "no"
        rows.append((capital(_NAMES.get(action, action)), f"{word}{when}", f"“{terms}”" if terms else ""))
    order = list(_NAMES.values())
    return sorted(
        rows, key=lambda row: (row[0] != "The proposal as a whole", order.index(row[0][0].lower() + row[0][1:]))
    )


def _same_words(rows: list[_Row]) -> list[_Row]:
    """Rows of one answer, given on one day in the same words, taken together."""
    groups: dict[tuple[str, str], list[str]] = {}
    for what, agreed, words in rows:
        groups.setdefault((agreed, words), []).append(what)
    return [
        (_together(names) if len(names) > 1 else names[0], agreed, words) for (agreed, words), names in groups.items()
    ]


def _gathered(rows: list[_Row], room: int) -> list[_Row]:
    """Rows with the same answer taken together: those without words of their own first, then all of them."""
    found = rows
    for keep_words in (True, False):
        groups: dict[tuple[str, str], list[str]] = {}
        for what, agreed, words in rows:
            groups.setdefault((agreed, words if keep_words else ""), []).append(what)
        found = [(_together(names), agreed, words) for (agreed, words), names in groups.items()]
        if len(found) <= room:
            break
    return found[:room]


def _together(names: list[str]) -> str:
    return capital(in_words(name[0].lower() + name[1:] for name in names))


def _departures(job: Job) -> list[_Row]:
    waiting = dict(departures_without_yes(job))
    rows = []
    for logged in job.log(DEPARTURE):
        values = logged.values
        what = values.what or ""
        if what in waiting:
            agreed = "no" if waiting[what] else "not agreed yet"
        else:
            agreed = "yes" + _when(values.agreed_on, values.channel)
        why = up_to(values.why, _WHAT)[0] if values.why else ""
        rows.append((f"Otherwise than agreed: {up_to(what, _WHAT)[0]}", agreed, why))
    return rows


def _when(on: str | None, channel: str | None) -> str:
    parts = [part for part in (date_in_words(on) if on else "", (channel or "").replace("-", "\u2011")) if part]
    return f", {', '.join(parts)}" if parts else ""
