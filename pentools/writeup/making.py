"""Sections made one by one, so that one spoilt entry spoils one section only; what several forms show is made once."""

from __future__ import annotations

import functools
import importlib
from collections.abc import Callable
from typing import TYPE_CHECKING

from pentools.record.registry import find_stage
from pentools.record.view import SPOILT, once_a_state, why_not
from pentools.writeup.blocks import Audience, Notice, Section

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["Maker", "made", "safely", "section_of"]

Maker = Callable[["Job", Audience], Section]


@once_a_state
def section_of(job: Job, key: str, audience: Audience) -> Section:
    """One stage's section; in words where its entries cannot be shown.

    Parameters
    ----------
    key : str
        The stage; it must be known.
    audience : {"owner", "everybody"}
        Who will see the page.

    Returns
    -------
    Section
        Its blocks; none where there is nothing to show.
    """
    stage = find_stage(key)
    module, name = stage.section.split(":")

    def make() -> Section:
        found = getattr(importlib.import_module(module), name)(job, stage, audience)
        assert isinstance(found, Section)
        return found

    return safely(make, Section(key, stage.title), audience)


def made(job: Job, audience: Audience, parts: tuple[tuple[str, str, Maker], ...]) -> list[Section]:
    """Sections that are no stage's, each by its maker.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page.
    parts : tuple of (str, str, Maker)
        Key, title and maker of each.

    Returns
    -------
    list of Section
        In that order.
    """
    return [safely(functools.partial(make, job, audience), Section(key, title), audience) for key, title, make in parts]


def safely(make: Callable[[], Section], empty: Section, audience: Audience) -> Section:
    """A section, or one that says in words that it cannot be shown.

    Parameters
    ----------
    empty : Section
        Key and title of what is said instead.
    audience : {"owner", "everybody"}
        Only the owner is told why.
    """
    try:
        return make()
    except SPOILT as error:
        why = f": {why_not(error).rstrip('.')}" if audience == "owner" else ""
        return Section(empty.key, empty.title, (Notice(f"These entries cannot be shown{why}.", "To be settled"),))
