"""What the declaration of a filling system says: one of these a system, in a file of its own."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from pentools.calc.weighing.families import Family
from pentools.systems.anatomy import Anatomy
from pentools.systems.front import Stations
from pentools.systems.proportions import Proportions

__all__ = ["CAP_PARTS", "FRONT_PARTS", "System", "Typical"]

CAP_PARTS: tuple[str, ...] = ("cap", "clip", "cap-band", "inner-cap")
"""The parts that are only drawn with the cap on."""
FRONT_PARTS: tuple[str, ...] = ("nib", "feed", "section")
"""The parts in front of the barrel that nearly every pen has."""


@dataclass(frozen=True, slots=True)
class Typical:
    """Proportions drawn where nothing was measured (judged, from memory).

    Parameters
    ----------
    end_mm : float
        Length of the end piece behind the barrel [mm]; 0 where the barrel is closed.
    barrel_mm : float
        Length of the barrel [mm].
    bore_share, head_share : float
        Bore over barrel diameter, head over bore [1].
    """

    end_mm: float = 0.0
    barrel_mm: float = 66.0
    bore_share: float = 0.74
    head_share: float = 0.94


@dataclass(frozen=True, slots=True, kw_only=True)
class System:
    """A filling system.

    Parameters
    ----------
    key : str
        Its name in the record, on the command line and in the tables; the module has the same name with underscores.
    label : str
        Its name in words.
    family : Family
        The formula for what it should hold, with the dimensions that it needs and takes.
    parts : tuple of str
        Its parts, front to back, without those of the cap.
    seals_at, works_at : str
        The part that stands for its seals, and the one that stands for its mechanism.
    draw : callable
        Builds section, barrel and mechanism in the pen's own millimetres.
    section_at : str
        The part that stands for its section.
    end_part : str
        The part that closes the barrel's end.
    outside : tuple of str
        Parts of the mechanism that are seen on the closed pen.
    length : str
        What "length" alone means for it (a key of `DIMENSIONS`).
    typical : Typical
        Proportions where nothing was measured.
    part_names : mapping of str to str
        Trade names of parts that no other system has.
    """

    key: str
    label: str
    family: Family
    parts: tuple[str, ...]
    seals_at: str
    works_at: str
    draw: Callable[[Anatomy, Proportions, Stations], None]
    section_at: str = "section"
    end_part: str = "barrel"
    outside: tuple[str, ...] = ()
    length: str = "sac_length"
    typical: Typical = Typical()
    part_names: Mapping[str, str] = field(default_factory=dict)

    @property
    def has_section(self) -> bool:
        """Whether a section is held in the hand; a safety pen has none."""
        return "section" in self.parts

    def dimensions(self) -> tuple[str, ...]:
        """What its volume is worked out from, in the order of measuring (keys of `ASKED`)."""
        return (*self.family.needs, *(name for name, _, _ in self.family.takes))
