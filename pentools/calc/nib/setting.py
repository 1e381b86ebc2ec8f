"""Heat-setting of a feed: between where it softens and where the first of its neighbours gives way."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["FeedWindow", "Neighbour", "feed_window"]


@dataclass(frozen=True, slots=True)
class Neighbour:
    """What is warmed with the feed.

    Parameters
    ----------
    part, material : str
        The part, and what it is of, in words.
    limit_c : float or None
        Highest temperature at its surface [°C]; None where it is never warmed.
    """

    part: str
    material: str
    limit_c: float | None


@dataclass(frozen=True, slots=True)
class FeedWindow:
    """Between what temperatures a feed may be set.

    Parameters
    ----------
    feed : str
        What the feed is of.
    kind : {"open", "none", "never"}
        There is a window; a neighbour gives way before the feed does; the feed itself is not set by heat.
    low_c, high_c : float or None
        Ends of the window [°C]; None where the feed is not set by heat, `high_c` too where a neighbour is never warmed.
    strictest : Neighbour or None
        The neighbour that sets the upper end; None where it is the water itself.
    findings : tuple of Finding
        What to do.
    """

    feed: str
    kind: str
    low_c: float | None
    high_c: float | None
    strictest: Neighbour | None
    findings: tuple[Finding, ...]

    def too_hot(self, surface_c: float) -> bool:
        """Whether a temperature [°C] is past what feed and neighbours bear; any is, where there is no window."""
        return self.kind != "open" or self.high_c is None or surface_c > self.high_c


def feed_window(
    feed: str, softens_c: tuple[float, float] | None, water_c: float, neighbours: Iterable[Neighbour]
) -> FeedWindow:
    """The heat window of a feed and what is warmed with it.

    Parameters
    ----------
    feed : str
        What the feed is of, as the tables name it.
    softens_c : tuple of float or None
        Where hard rubber begins to soften and where it is soft [°C]; None for a feed of anything else, or not named.
    water_c : float
        The hottest water that is used [°C].
    neighbours : iterable of Neighbour
        Section, nipple and what is on it: none where nib and feed are out of the section.

    Returns
    -------
    FeedWindow
        The strictest of all wins.

    Raises
    ------
    InputError
        If the softening runs backwards, or begins above the water.

    Notes
    -----
    A feed of hard rubber softens at 70 to 80 °C and keeps a bend made in nearly boiling water. One of plastic, and one
    that nobody named, is not set by heat. A window of no width is none.
    """
    if softens_c is None:
        return FeedWindow(feed, "never", None, None, None, (Finding("stop", "nib.setting:never", feed=feed),))
    low, soft = softens_c
    if not low <= soft <= water_c:
        raise InputError("softening of the feed", f"two temperatures, rising, up to {water_c:g} °C", f"{low:g} to {soft:g} °C")  # fmt: skip
    beside = list(neighbours)
    first = min(beside, key=lambda one: -1.0 if one.limit_c is None else one.limit_c, default=None)
    if first is not None and (first.limit_c is None or first.limit_c <= low):
        found = Finding(
            "stop",
            "nib.setting:none-never" if first.limit_c is None else "nib.setting:none",
            part=first.part,
            material=first.material,
            limit=first.limit_c,
            low=low,
        )
        return FeedWindow(feed, "none", low, first.limit_c, first, (found,))
    strict = first if first is not None and first.limit_c is not None and first.limit_c < water_c else None
    high = strict.limit_c if strict is not None and strict.limit_c is not None else water_c
    part = "" if strict is None else f"{strict.part} ({strict.material})"
    found = Finding(
        "note", "nib.setting:open-part" if part else "nib.setting:open", low=low, high=high, soft=soft, part=part
    )
    return FeedWindow(feed, "open", low, high, strict, (found,))
