"""A section for a reader who has no bench: orders and cautions to the bench taken out, no heading said twice."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

from pentools.writeup.blocks import Block, Details, Facts, Findings, Notice, Section, Table
from pentools.writeup.orders import told

if TYPE_CHECKING:
    from collections.abc import Sequence

__all__ = ["for_reader"]

UNSETTLED = "Some of these entries contradict each other, so no result is drawn from them."


def for_reader(section: Section) -> Section:
    """The same section with what is meant for the bench alone left out.

    Parameters
    ----------
    section : Section
        As it was made for the owner.

    Returns
    -------
    Section
        Findings as statements; without cautions; a lone table without a caption under its section's heading.
    """
    return replace(section, blocks=_lone(tuple(_said(section.blocks))))


def _said(blocks: Sequence[Block]) -> Iterator[Block]:
    for block in blocks:
        if isinstance(block, Findings):
            yield from told(block.findings)
        elif isinstance(block, Notice) and block.word == "Caution":
            continue
        elif isinstance(block, Notice) and block.word == "To be settled":
            yield Notice(UNSETTLED, block.word)
        elif isinstance(block, Details):
            inner = _lone(tuple(_said(block.blocks)))
            if inner:
                yield replace(block, blocks=inner)
        elif isinstance(block, Table):
            yield _without_empty_columns(block)
        else:
            yield block


def _without_empty_columns(table: Table) -> Table:
    """The table without a column that no row fills."""
    kept = [i for i in range(len(table.head)) if any(row[i].strip() not in ("", "–") for row in table.rows)]
    return replace(
        table,
        head=tuple(table.head[i] for i in kept),
        rows=tuple(tuple(row[i] for i in kept) for row in table.rows),
        numeric=tuple(kept.index(i) for i in table.numeric if i in kept),
    )


def _lone(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """One table alone needs no caption: the heading over it says what it is."""
    if len(blocks) == 1 and isinstance(blocks[0], Table | Facts):
        return (replace(blocks[0], caption=""),)
    return blocks
