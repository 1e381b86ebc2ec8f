"""nbformat without the seconds that a check nobody here asks for takes to load."""

from __future__ import annotations

import contextlib
import sys
from collections.abc import Iterator
from types import ModuleType

__all__ = ["GRAMMARS", "notebook_format", "without_grammars"]

GRAMMARS = "rfc3987_syntax"
"""jsonschema builds 38 grammars of addresses as it is imported, where this module is installed: 3 s of the processor;
without it, it leaves those checks out, and no notebook asks for them."""


@contextlib.contextmanager
def without_grammars() -> Iterator[None]:
    """For the imports within, as though `GRAMMARS` were not installed; afterwards it can be imported as ever."""
    hidden = GRAMMARS not in sys.modules
    if hidden:
        sys.modules[GRAMMARS] = None  # type: ignore[assignment]
    try:
        yield
    finally:
        if hidden:
            del sys.modules[GRAMMARS]


def notebook_format() -> ModuleType:
    """The nbformat package, with `nbformat.v4` and `nbformat.sign`."""
    with without_grammars():
        import nbformat
        import nbformat.sign
        import nbformat.v4
    module: ModuleType = nbformat
    return module
