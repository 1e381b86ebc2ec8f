"""A restoration notebook kit for vintage fountain pens."""

from __future__ import annotations

import importlib
from typing import Any

__version__ = "0.1.0"

# public name -> module that holds it; nothing heavy is imported before it is used
_WHERE = {
    "open_bench": "pentools.panels.bench",
    "open_sums": "pentools.panels.sums",
    "capacity_from_weight": "pentools.calc.weighing.capacity",
    "ledger": "pentools.record.ledger",
    "date_range": "pentools.calc.dating.range",
    "seal_fit": "pentools.sums.seal.rings",
    "treatment_limits": "pentools.calc.treatment.limits",
    "grit_progression": "pentools.calc.finish.progression",
}

__all__ = ["__version__", *sorted(_WHERE)]  # noqa: PLE0604 - the table above holds text only


def __getattr__(name: str) -> Any:
    if name in _WHERE:
        return getattr(importlib.import_module(_WHERE[name]), name)
    raise AttributeError(f"module 'pentools' has no attribute {name!r}")


def __dir__() -> list[str]:
    return list(__all__)
