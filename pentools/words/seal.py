"""What is said of seals, sacs, threads and tools."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]

WORDS: Mapping[str, Template] = {}
