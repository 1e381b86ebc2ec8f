"""The table of what materials bear, by the materials that it names."""

from __future__ import annotations

from pentools import tables
from pentools.calc.treatment.limits import CompatibilityRow

__all__ = ["material_names"]


def material_names() -> tuple[str, ...]:
    """The materials of the table ``compatibility``, each once, in its order."""
    return tuple(dict.fromkeys(row.material for row in tables.read(CompatibilityRow, "compatibility")))
