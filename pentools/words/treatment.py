"""What is said of what materials can take, heat and mixes."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]

WORDS: Mapping[str, Template] = {}
