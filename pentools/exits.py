"""The exit codes of the command line."""

from __future__ import annotations

__all__ = ["EXIT_FINDINGS", "EXIT_HELD", "EXIT_INPUT", "EXIT_OK", "EXIT_RECORD"]

EXIT_OK, EXIT_FINDINGS, EXIT_INPUT, EXIT_RECORD, EXIT_HELD = 0, 1, 2, 3, 4
