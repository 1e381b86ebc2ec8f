"""The parts of a pen, in trade words, in the order in which they come off the bench tray."""

from __future__ import annotations

from pentools.errors import InputError
from pentools.systems.declaration import CAP_PARTS
from pentools.systems.registry import SYSTEMS, system_named

__all__ = ["CAP_PARTS", "PART_NAMES", "drawn_part", "part_name", "parts_of"]

PART_NAMES: dict[str, str] = {
    "cap": "cap", "clip": "clip", "cap-band": "cap band", "inner-cap": "inner cap", "cap-seat": "cap seat",
    "nib": "nib", "feed": "feed", "section": "section", "section-joint": "section joint", "nipple": "nipple",
    "barrel": "barrel", "cap-threads": "cap threads", "ink-space": "ink", "sac": "sac", "lever": "lever",
    "lever-pin": "lever pin", "pressure-bar": "pressure bar", "button": "button", "blind-cap": "blind cap",
    "crescent": "crescent", "lock-ring": "lock ring", "slot": "slot", "sac-sleeve": "sleeve",
    "press-bar": "press bar", "breather-tube": "breather tube", "bulb": "bulb", "diaphragm": "diaphragm",
    "pellet": "pellet", "pump-body": "pump body", "cone": "cone", "plunger": "plunger", "spring": "spring",
    "flare": "flare", "rod": "rod", "washer": "washer", "backing-washer": "backing washer", "packing": "packing",
    "packing-unit": "packing unit", "piston-head": "piston head", "head-seal": "head seal", "spindle": "spindle",
    "screw-sleeve": "screw sleeve", "knob": "turning knob", "gland": "gland", "end-cap": "end cap",
    "pneumatic-tube": "pneumatic tube", "tube-ring": "tube O-ring", "port": "port", "sac-protector": "sac protector",
    "filling-tube": "filling tube", "front-gasket": "front gasket", "bellows": "bellows sac",
    "nib-carrier": "nib carrier", "carrier-pin": "carrier pin", "helix": "helix", "capillary-cell": "capillary cell",
    "vent": "vent", "converter": "converter or cartridge",
}  # fmt: skip
"""Part key -> what the trade calls it."""


def parts_of(system: str, *, cap: bool = True) -> tuple[str, ...]:
    """The parts of a pen of one filling system, front to back, the cap's first.

    Parameters
    ----------
    system : str
        Filling system key.
    cap : bool
        Whether the parts of the cap are wanted too.

    Returns
    -------
    tuple of str
        Part keys.

    Raises
    ------
    InputError
        When the key is unknown.

    Examples
    --------
    >>> parts_of("capillary", cap=False)
    ('nib', 'feed', 'section', 'barrel', 'cap-threads', 'capillary-cell', 'vent')
    """
    own = system_named(system).parts
    return (*CAP_PARTS, *own) if cap else own


def drawn_part(system: str, part: str) -> str:
    """The part of the drawing that a part named in general words is shown at.

    Parameters
    ----------
    system : str
        Filling system key.
    part : str
        Part key, or one of "bands", "threads", "seals", "filler", "imprint", "whole"; "blind-cap" stands for whatever
        closes the end.

    Returns
    -------
    str
        Part key of this filling system.

    Raises
    ------
    InputError
        When this pen has nothing of the kind.

    Examples
    --------
    >>> drawn_part("piston", "seals"), drawn_part("lever-sac", "seals"), drawn_part("piston", "blind-cap")
    ('head-seal', 'sac', 'knob')
    """
    found = system_named(system)
    own = (*CAP_PARTS, *found.parts)
    general = {
        "bands": "cap-band", "threads": "cap-threads", "imprint": "barrel", "whole": "barrel",
        "blind-cap": found.end_part, "section": found.section_at, "seals": found.seals_at, "filler": found.works_at,
    }  # fmt: skip
    for candidate in (part, general.get(part)):
        if candidate in own:
            return candidate
    raise InputError("part", f"a part of this pen, a {found.label} ({', '.join(own)})", part)


def part_name(part: str) -> str:
    """A part in trade words.

    Parameters
    ----------
    part : str
        Part key.

    Returns
    -------
    str
        For example "pressure bar".

    Raises
    ------
    InputError
        When the key is unknown.
    """
    if part in PART_NAMES:
        return PART_NAMES[part]
    for system in SYSTEMS.values():
        if part in system.part_names:
            return system.part_names[part]
    raise InputError("part", "one of " + ", ".join(PART_NAMES), part)
