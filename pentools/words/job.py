"""What is said of the course of a job."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]

WORDS: Mapping[str, Template] = {}
