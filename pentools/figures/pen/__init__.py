"""Line drawings of a fountain pen in section, to scale: one set of drawings for panels, pages and masks."""

from __future__ import annotations
