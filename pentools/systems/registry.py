"""Every filling system that the table names, each from the module that declares it."""

from __future__ import annotations

import importlib

import msgspec

from pentools import tables
from pentools.errors import InputError, RecordError
from pentools.systems.declaration import System

__all__ = ["SYSTEMS", "system_choices", "system_named"]


class _Named(msgspec.Struct, frozen=True):
    key: str


def _declared(key: str) -> System:
    name = f"pentools.systems.fillers.{key.replace('-', '_')}"
    try:
        found = importlib.import_module(name).SYSTEM
    except ModuleNotFoundError as error:
        if error.name != name:
            raise
        raise RecordError(
            f"The table of filling systems names “{key}”, but {name} is missing. Declare the system there."
        ) from None
    if not isinstance(found, System) or found.key != key:
        raise RecordError(f"{name} does not declare a System with the key “{key}” of the table of filling systems.")
    return found


SYSTEMS: dict[str, System] = {row.key: _declared(row.key) for row in tables.read(_Named, "filling_systems")}
"""Filling system key -> its declaration, in the order of the table."""


def system_named(key: str) -> System:
    """A filling system.

    Parameters
    ----------
    key : str
        Filling system key.

    Returns
    -------
    System
        Its declaration.

    Raises
    ------
    InputError
        When there is none of that name.

    Examples
    --------
    >>> system_named("piston").label
    'piston filler'
    """
    if key not in SYSTEMS:
        advice = "Settle how the pen fills first; what is drawn and worked out follows from it."
        raise InputError("filling system", "one of " + ", ".join(SYSTEMS), key, advice)
    return SYSTEMS[key]


def system_choices() -> tuple[tuple[str, str], ...]:
    """The filling systems as choices (key, label), in the order of their table."""
    return tuple((key, system.label) for key, system in SYSTEMS.items())
