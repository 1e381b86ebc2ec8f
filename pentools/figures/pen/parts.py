"""The parts of a pen by filling system, in trade words, in the order in which they come off the bench tray."""

from __future__ import annotations

from pentools.errors import InputError

__all__ = [
    "CAP_PARTS",
    "PART_NAMES",
    "SYSTEM_KEYS",
    "SYSTEM_NAMES",
    "drawn_part",
    "part_name",
    "parts_of",
    "system_name",
]

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

CAP_PARTS: tuple[str, ...] = ("cap", "clip", "cap-band", "inner-cap")
"""The parts that are only drawn with the cap on."""

_FRONT = ("nib", "feed", "section")
_SYSTEMS: dict[str, tuple[str, tuple[str, ...]]] = {
    "eyedropper": ("eyedropper", (*_FRONT, "section-joint", "barrel", "cap-threads", "ink-space")),
    "lever-sac": (
        "lever sac filler",
        (*_FRONT, "nipple", "barrel", "cap-threads", "sac", "pressure-bar", "lever", "lever-pin"),
    ),
    "button-sac": (
        "button sac filler",
        (*_FRONT, "nipple", "barrel", "cap-threads", "sac", "pressure-bar", "button", "blind-cap"),
    ),
    "crescent-sac": (
        "crescent sac filler",
        (*_FRONT, "nipple", "barrel", "cap-threads", "sac", "pressure-bar", "crescent", "lock-ring"),
    ),
    "slot-sac": (
        "sac filler with a slot or hole (match, coin, blow, sleeve)",
        (*_FRONT, "nipple", "barrel", "cap-threads", "sac", "pressure-bar", "slot"),
    ),
    "sleeve-squeeze": (
        "squeeze filler in a metal sleeve",
        (*_FRONT, "nipple", "barrel", "cap-threads", "sac", "sac-sleeve", "press-bar", "breather-tube"),
    ),
    "bulb": (
        "bulb filler",
        (*_FRONT, "section-joint", "barrel", "cap-threads", "ink-space", "breather-tube", "bulb", "blind-cap"),
    ),
    "diaphragm-pump": (
        "diaphragm pump filler",
        (
            *_FRONT, "section-joint", "barrel", "cap-threads", "ink-space", "breather-tube", "diaphragm", "pellet",
            "cone", "pump-body", "spring", "plunger", "blind-cap",
        ),
    ),
    "plunger-vacuum": (
        "plunger vacuum filler",
        (
            *_FRONT, "section-joint", "barrel", "cap-threads", "flare", "backing-washer", "washer", "rod", "packing",
            "packing-unit", "blind-cap",
        ),
    ),
    "piston": (
        "piston filler",
        (
            *_FRONT, "section-joint", "barrel", "cap-threads", "ink-space", "piston-head", "head-seal", "rod",
            "spindle", "screw-sleeve", "knob",
        ),
    ),
    "syringe": (
        "syringe filler",
        (
            *_FRONT, "section-joint", "barrel", "cap-threads", "ink-space", "piston-head", "head-seal", "rod",
            "packing", "gland", "end-cap",
        ),
    ),
    "pneumatic-down-stroke": (
        "down-stroke pneumatic filler",
        (
            *_FRONT, "nipple", "barrel", "cap-threads", "sac", "sac-protector", "pneumatic-tube", "port", "tube-ring",
            "blind-cap",
        ),
    ),
    "pneumatic-extending-tube": (
        "pneumatic filler with an extending tube",
        (
            *_FRONT, "barrel", "cap-threads", "filling-tube", "front-gasket", "spring", "sac", "sac-protector",
            "pneumatic-tube", "port", "tube-ring", "blind-cap",
        ),
    ),
    "bellows": (
        "bellows sac filler",
        (*_FRONT, "nipple", "barrel", "cap-threads", "bellows", "breather-tube", "plunger", "blind-cap"),
    ),
    "safety": (
        "retracting-nib safety pen",
        (
            "nib", "feed", "cap-seat", "barrel", "cap-threads", "ink-space", "nib-carrier", "carrier-pin", "helix",
            "spindle", "packing", "knob",
        ),
    ),
    "capillary": ("capillary filler", (*_FRONT, "barrel", "cap-threads", "capillary-cell", "vent")),
    "cartridge-converter": (
        "cartridge or converter",
        (*_FRONT, "nipple", "barrel", "cap-threads", "converter", "head-seal", "rod", "knob"),
    ),
}  # fmt: skip

_GENERAL: dict[str, tuple[str, ...]] = {
    "bands": ("cap-band",),
    "threads": ("cap-threads",),
    "imprint": ("barrel",),
    "whole": ("barrel",),
    "blind-cap": ("knob", "end-cap", "barrel"),
    "section": ("nib-carrier",),
    "seals": ("head-seal", "washer", "diaphragm", "packing", "tube-ring", "sac", "bellows", "bulb", "section-joint", "nipple", "barrel"),
    "filler": (
        "lever", "button", "crescent", "slot", "press-bar", "bulb", "plunger", "rod", "spindle", "pneumatic-tube",
        "capillary-cell", "converter", "section-joint",
    ),
}  # fmt: skip

SYSTEM_KEYS: tuple[str, ...] = tuple(_SYSTEMS)
"""Filling system keys, in the order the other tables use."""
SYSTEM_NAMES: dict[str, str] = {key: words for key, (words, _) in _SYSTEMS.items()}
"""Filling system key -> its name in words."""


def system_name(system: str) -> str:
    """A filling system in words.

    Parameters
    ----------
    system : str
        Filling system key.

    Returns
    -------
    str
        For example "diaphragm pump filler".

    Raises
    ------
    InputError
        When the key is unknown.

    Examples
    --------
    >>> system_name("piston")
    'piston filler'
    """
    return _system(system)[0]


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
    own = _system(system)[1]
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
    own = parts_of(system)
    for candidate in (part, *_GENERAL.get(part, ())):
        if candidate in own:
            return candidate
    raise InputError("part", f"a part of this pen, a {system_name(system)} ({', '.join(own)})", part)


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
    if part not in PART_NAMES:
        raise InputError("part", "one of " + ", ".join(PART_NAMES), part)
    return PART_NAMES[part]


def _system(system: str) -> tuple[str, tuple[str, ...]]:
    if system not in _SYSTEMS:
        raise InputError("filling system", "one of " + ", ".join(_SYSTEMS), system)
    return _SYSTEMS[system]
