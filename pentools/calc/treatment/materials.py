"""Everyday names of materials, treatments and sealants, and the names the tables use for them."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

from pentools.errors import InputError

__all__ = ["UNKNOWN", "material_name", "sealant_name", "treatment_name"]

UNKNOWN = "unknown"

_MATERIALS: dict[str, str] = {
    "cellulose nitrate": "celluloid", "nitrate": "celluloid", "sound celluloid": "celluloid", "pyroxylin": "celluloid",
    "crazed celluloid": "degrading celluloid", "degraded celluloid": "degrading celluloid",
    "decaying celluloid": "degrading celluloid", "degrading nitrate": "degrading celluloid",
    "ebonite": "hard rubber", "black hard rubber": "hard rubber", "vulcanite": "hard rubber", "bhr": "hard rubber",
    "vulcanised rubber": "hard rubber", "faded ebonite": "faded hard rubber", "brown hard rubber": "faded hard rubber",
    "oxidised hard rubber": "faded hard rubber", "olive hard rubber": "faded hard rubber",
    "red hard rubber": "coloured hard rubber", "rhr": "coloured hard rubber", "mottled hard rubber": "coloured hard rubber",
    "woodgrain hard rubber": "coloured hard rubber", "colored hard rubber": "coloured hard rubber",
    "casein formaldehyde": "casein", "casein plastic": "casein", "acetate": "cellulose acetate",
    "pmma": "acrylic", "pmma acrylic": "acrylic", "acrylic resin": "acrylic", "ps": "polystyrene", "styrene": "polystyrene",
    "phenolic resin": "phenolic", "phenol formaldehyde": "phenolic", "nylon 6,6": "nylon", "polyamide": "nylon",
    "gold": "gold nib", "solid gold": "gold nib", "solid gold nib": "gold nib", "14 ct gold": "gold nib",
    "gold filled": "gold-filled", "rolled gold": "gold-filled", "plated brass": "gold-filled",
    "gold-plated brass": "gold-filled", "gold plated brass": "gold-filled", "plated steel": "gold-plated steel",
    "gold plated steel": "gold-plated steel", "steel": "stainless steel", "copper": "brass", "bronze": "brass",
    "sterling": "silver", "sterling silver": "silver", "silver overlay": "silver", "cork seal": "cork",
    "latex sac": "latex", "rubber sac": "latex", "sac": "latex", "natural rubber": "latex", "rubber": "latex",
    "silicone sac": "silicone", "pvc": "plasticised PVC", "pvc sac": "plasticised PVC", "vinyl": "plasticised PVC",
    "plasticized pvc": "plasticised PVC", "metal": "bare metal", "not known": UNKNOWN, "not named": UNKNOWN, "?": UNKNOWN,
}  # fmt: skip

_TREATMENTS: dict[str, str] = {
    "soak": "cold water soak", "water": "cold water soak", "water soak": "cold water soak", "cold soak": "cold water soak",
    "flush mix": "flush mix soak", "flush": "flush mix soak", "ammonia": "flush mix soak", "ammonia flush": "flush mix soak",
    "pen flush": "flush mix soak", "ultrasonic bath": "ultrasonic", "ultrasound": "ultrasonic", "heat": "dry heat",
    "hot air": "dry heat", "isopropyl alcohol": "alcohol", "isopropanol": "alcohol", "ipa": "alcohol",
    "ethanol": "alcohol", "lighter fluid": "naphtha", "grease": "silicone grease", "sanding": "wet sanding",
    "buffing": "buffing wheel", "wheel": "buffing wheel", "polishing wheel": "buffing wheel",
    "wax": "microcrystalline wax", "hydrogen peroxide": "peroxide", "peroxide 3 %": "peroxide",
    "hydrogen peroxide 3 %": "peroxide", "thread sealant": "naphtha-based sealant", "shellac": "shellac in alcohol",
    "superglue": "cyanoacrylate", "super glue": "cyanoacrylate", "instant glue": "cyanoacrylate",
}  # fmt: skip

_SEALANTS: dict[str, str] = {
    "rosin sealant": "rosin and castor oil", "rosin-based sealant": "rosin and castor oil",
    "thread sealant": "rosin and castor oil", "rosin + castor oil": "rosin and castor oil",
    "section sealant": "rosin and castor oil", "neat rosin": "rosin", "colophony": "rosin", "paraffin wax": "paraffin",
    "wax": "beeswax", "superglue": "cyanoacrylate", "super glue": "cyanoacrylate", "epoxy resin": "epoxy",
}  # fmt: skip


def material_name(text: str, known: Iterable[str]) -> tuple[str, str]:
    """The table's name of a material, and what to say where it is not in the table.

    Parameters
    ----------
    text : str
        A material in everyday words; empty for one that was not named.
    known : iterable of str
        The names the table uses.

    Returns
    -------
    tuple of str
        The name, "unknown" where it is not in the table, and a sentence saying so; the sentence is empty where
        the name was understood.

    Notes
    -----
    A name that is not in the table is read as "unknown", which is the strictest: a guess would be kinder and
    worse.

    Examples
    --------
    >>> material_name("Ebonite", ["hard rubber", "casein"])
    ('hard rubber', '')
    """
    names = [*known, UNKNOWN]
    word = _plain(text)
    found = _MATERIALS.get(word, word)
    for name in names:
        if found.casefold() == name.casefold():
            return name, ""
    if not word:
        return UNKNOWN, ""
    close = difflib.get_close_matches(word, [*names, *_MATERIALS], n=1)
    meant = f" Did you mean {close[0]}?" if close else ""
    return UNKNOWN, f"“{text.strip()}” is not in the table, so the strictest limits are used.{meant}"


def treatment_name(text: str, known: Iterable[str]) -> str:
    """The table's name of a treatment.

    Parameters
    ----------
    text : str
        A treatment in everyday words.
    known : iterable of str
        The names the table uses.

    Returns
    -------
    str
        The name.

    Raises
    ------
    InputError
        If there is no such treatment.

    Examples
    --------
    >>> treatment_name("Heat", ["dry heat"])
    'dry heat'
    """
    return _of(text, _TREATMENTS, known, "treatment")


def sealant_name(text: str, known: Iterable[str]) -> str:
    """The table's name of a joint sealant.

    Parameters
    ----------
    text : str
        A sealant in everyday words.
    known : iterable of str
        The names the table uses.

    Returns
    -------
    str
        The name.

    Raises
    ------
    InputError
        If there is no such sealant.

    Examples
    --------
    >>> sealant_name("thread sealant", ["shellac", "rosin and castor oil"])
    'rosin and castor oil'
    """
    return _of(text, _SEALANTS, known, "sealant")


def _plain(text: str) -> str:
    return " ".join(text.split()).casefold()


def _of(text: str, words: dict[str, str], known: Iterable[str], what: str) -> str:
    names = list(known)
    word = _plain(text)
    found = words.get(word, word)
    for name in names:
        if found.casefold() == name.casefold():
            return name
    close = difflib.get_close_matches(word, [*names, *words], n=1)
    raise InputError(what, "one of " + ", ".join(names), text, f"Did you mean {close[0]}?" if close else "")
