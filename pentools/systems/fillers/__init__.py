"""The filling systems, one module each: what it is called, what it is made of, how it is drawn."""

from __future__ import annotations
