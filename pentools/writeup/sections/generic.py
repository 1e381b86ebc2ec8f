"""Any stage as tables, straight from its declaration: what a stage without a section module of its own shows."""

from __future__ import annotations

from collections.abc import Iterable, Sequence, Set
from typing import TYPE_CHECKING

from pentools.fields import Field
from pentools.numbers import capital
from pentools.record.entries import RELEASE
from pentools.record.forms import F, Logged
from pentools.record.holds import released_step
from pentools.writeup.blocks import Audience, Block, Facts, Notice, Section, Table
from pentools.writeup.words import date_in_words, sentence

if TYPE_CHECKING:
    from pentools.fields import Value
    from pentools.record.job import Job
    from pentools.record.kinds import Kind, Stage

__all__ = ["facts_of", "kind_facts", "kind_table", "log_rows", "may_show", "releases_of", "section", "shown"]

# more columns than this do not fit a page; then each entry is set as a list of facts
WIDEST = 6
_NUMERIC = ("quantity", "quantities", "number", "count")


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """A stage's entries as tables, one a kind.

    Parameters
    ----------
    stage : Stage
        Which stage.
    audience : {"owner", "everybody"}
        Who will see the page; for "everybody" only fields that are for everybody, never those for the bench alone.

    Returns
    -------
    Section
        Its blocks; none where nothing was entered or nothing may be shown.
    """
    blocks: list[Block] = []
    for kind in stage.kinds:
        blocks += kind_table(job, kind, audience) if kind.log else kind_facts(job, kind, audience)
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, stage.title, tuple(blocks))


def may_show(field: Field, audience: Audience) -> bool:
    """Whether a page may show a field: what is for the bench alone stands on none, what is for the owner on the owner's."""
    return field.audience == "everybody" or (field.audience == "owner" and audience == "owner")


def shown(field: Field, value: Value) -> str:
    """A value as the page shows it; dates in words, a missing one as a dash with no claim in it."""
    if value is None:
        return "–"
    if field.kind == "date":
        return date_in_words(str(value))
    return field.shown(value)


def kind_facts(
    job: Job,
    kind: Kind[F],
    audience: Audience,
    *,
    without: Iterable[str] = (),
    caption: str | None = None,
) -> list[Block]:
    """The newest entry of a kind as facts, without what was not given.

    Parameters
    ----------
    job, kind
        What to show.
    audience : {"owner", "everybody"}
        Who will see the page.
    without : iterable of str
        Names of fields that are shown elsewhere.
    caption : str or None
        The caption; the kind's title by default.

    Returns
    -------
    list of Block
        One `Facts`, or nothing.
    """
    found = job.log(kind)
    rows = facts_of(kind, found[-1].values, audience, without=set(without)) if found else ()
    return [Facts(kind.title if caption is None else caption, rows)] if rows else []


def kind_table(
    job: Job,
    kind: Kind[F],
    audience: Audience,
    *,
    without: Iterable[str] = (),
    caption: str | None = None,
) -> list[Block]:
    """Every live entry of a kind as a table; a kind too wide for a page as facts, entry by entry.

    Parameters
    ----------
    job, kind
        What to show.
    audience : {"owner", "everybody"}
        Who will see the page; the date of an entry is for the owner only.
    without : iterable of str
        Names of fields that are shown elsewhere.
    caption : str or None
        The caption; the kind's title by default.

    Returns
    -------
    list of Block
        A `Table`, several `Facts`, or nothing.
    """
    entries, skipped = job.log(kind), set(without)
    fields = [
        field
        for field in kind.fields
        if field.name not in skipped
        and may_show(field, audience)
        and any(getattr(logged.values, field.name) is not None for logged in entries)
    ]
    if not fields:
        return []
    title = kind.title if caption is None else caption
    if len(fields) <= WIDEST:
        return [_as_table(title, fields, entries, audience)]
    cards: list[Block] = []
    for number, logged in enumerate(entries, 1):
        rows = facts_of(kind, logged.values, audience, without=skipped)
        if audience == "owner":
            rows = (("Entered", date_in_words(logged.entry.time)), *rows)
        cards.append(Facts(f"{title}, {number} of {len(entries)}", rows))
    return cards


def _as_table(title: str, fields: Sequence[Field], entries: Sequence[Logged[F]], audience: Audience) -> Table:
    owners = audience == "owner"
    head = (*(["Date"] if owners else []), *(field.label for field in fields))
    rows = tuple(
        (
            *([date_in_words(logged.entry.time)] if owners else []),
            *(shown(field, getattr(logged.values, field.name)) for field in fields),
        )
        for logged in entries
    )
    shift = 1 if owners else 0
    numeric = tuple(i + shift for i, field in enumerate(fields) if field.kind in _NUMERIC)
    return Table(title, head, rows, numeric)


def facts_of(
    kind: Kind[F], values: F, audience: Audience, *, without: Set[str] = frozenset()
) -> tuple[tuple[str, str], ...]:
    """What an audience may see of an entry, as label and value, without what was not given."""
    return tuple(
        (field.label, shown(field, value))
        for field in kind.fields
        if field.name not in without
        and (value := getattr(values, field.name)) is not None
        and may_show(field, audience)
    )


def releases_of(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """The hold points of a stage that were released, with the reason; for the owner only."""
    if audience != "owner":
        return []
    found: list[Block] = []
    for entry in job.record.live(stage.key, RELEASE):
        reason = sentence(str(entry.data.get("reason", "")))
        found.append(
            Notice(
                f"The hold on {released_step(entry)} was released on {date_in_words(entry.time)}, for this reason: {reason}",
                "Hold released",
            )
        )
    return found


def log_rows(kind: Kind[F], values: F) -> str:
    """What the owner may see of an entry, in one text: for the full log."""
    seen = ((field, getattr(values, field.name)) for field in kind.fields_for("owner"))
    return "; ".join(_labelled(field, value) for field, value in seen if value is not None)


def _labelled(field: Field, value: Value) -> str:
    label = capital(field.label)
    return f"{label}{'' if label.endswith('?') else ':'} {shown(field, value).rstrip('. ')}"
