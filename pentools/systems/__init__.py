"""What a pen of each filling system is made of: its dimensions, its parts, its shape in millimetres."""

from __future__ import annotations
