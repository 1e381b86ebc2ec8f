"""A restoration notebook kit for vintage fountain pens."""

from __future__ import annotations

import importlib
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from pentools.answers.asking import Answer
    from pentools.answers.books import learned, review
    from pentools.answers.closing import care, order
    from pentools.answers.dating import date_range, price_today
    from pentools.answers.finish import abrasive_grade, grit_progression
    from pentools.answers.nib import feed_setting, ink_flow, measure_lines, nib_flex, nib_smoothing, scanner_check
    from pentools.answers.seal import knockout_tool, sac_fit, seal_fit, thread_match, washer_fit
    from pentools.answers.treatment import dilution, flush_mix, heat_window, shellac_cut, treatment_limits
    from pentools.answers.weighing import capacity_from_weight, leak_from_weight
    from pentools.books.learning.quote import quote
    from pentools.books.queue.wanted import parts_wanted
    from pentools.books.queue.words import queue
    from pentools.books.tables.ledger import ledger
    from pentools.door import open_door
    from pentools.errors import InputError, RecordError
    from pentools.figures.nib.sheet import write_sheet
    from pentools.panels.bench import open_bench
    from pentools.panels.sums import open_sums

__version__ = "0.1.0"

__all__ = [
    "Answer",
    "InputError",
    "RecordError",
    "__version__",
    "abrasive_grade",
    "capacity_from_weight",
    "care",
    "date_range",
    "dilution",
    "feed_setting",
    "flush_mix",
    "grit_progression",
    "heat_window",
    "ink_flow",
    "knockout_tool",
    "leak_from_weight",
    "learned",
    "ledger",
    "measure_lines",
    "nib_flex",
    "nib_smoothing",
    "open_bench",
    "open_door",
    "open_sums",
    "order",
    "parts_wanted",
    "price_today",
    "queue",
    "quote",
    "review",
    "sac_fit",
    "scanner_check",
    "seal_fit",
    "shellac_cut",
    "thread_match",
    "treatment_limits",
    "washer_fit",
    "write_sheet",
]

# module -> public names that it holds; nothing is imported before it is used, so that the package opens at once
_WHERE = {
    "pentools.answers.asking": ("Answer",),
    "pentools.answers.books": ("learned", "review"),
    "pentools.answers.closing": ("care", "order"),
    "pentools.answers.dating": ("date_range", "price_today"),
    "pentools.answers.finish": ("abrasive_grade", "grit_progression"),
    "pentools.answers.nib": ("feed_setting", "ink_flow", "measure_lines", "nib_flex", "nib_smoothing", "scanner_check"),
    "pentools.answers.seal": ("knockout_tool", "sac_fit", "seal_fit", "thread_match", "washer_fit"),
    "pentools.answers.treatment": ("dilution", "flush_mix", "heat_window", "shellac_cut", "treatment_limits"),
    "pentools.answers.weighing": ("capacity_from_weight", "leak_from_weight"),
    "pentools.books.tables.ledger": ("ledger",),
    "pentools.books.queue.words": ("queue",),
    "pentools.books.queue.wanted": ("parts_wanted",),
    "pentools.books.learning.quote": ("quote",),
    "pentools.door": ("open_door",),
    "pentools.errors": ("InputError", "RecordError"),
    "pentools.figures.nib.sheet": ("write_sheet",),
    "pentools.panels.bench": ("open_bench",),
    "pentools.panels.sums": ("open_sums",),
}


def __getattr__(name: str) -> Any:
    for module, held in _WHERE.items():
        if name in held:
            return getattr(importlib.import_module(module), name)
    raise AttributeError(f"module 'pentools' has no attribute {name!r}")


def __dir__() -> list[str]:
    return list(__all__)
