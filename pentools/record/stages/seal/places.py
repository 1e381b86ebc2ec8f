"""The places of seals: what is measured at each, which sum answers for it, and which a filling system has."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pentools.systems.registry import SYSTEMS

__all__ = ["PLACES", "WAS", "Place", "asked_for", "place_words", "places_for"]

WAS = ("was", "was_outside", "was_length")
"""What was there before: asked at every place, for the next pen."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where a seal sits.

    Parameters
    ----------
    key, words : str
        Its name in the record, and in words.
    way : {"ring", "washer", "packing", "sac", "stretch", "press", "liner", ""}
        Which sum answers for it; empty where there is none.
    asks : tuple of str
        The measurements that belong to it, in the order they are taken.
    needs : tuple of str
        Those without which nothing can be worked out.
    """

    key: str
    words: str
    way: str
    asks: tuple[str, ...]
    needs: tuple[str, ...]


_BORE = ("bore", "bore_deep")
_CLEAN = ("cleaned", "bore_before")
PLACES: dict[str, Place] = {
    place.key: place
    for place in (
        Place("head", "O-ring on the head", "ring", (*_BORE, "groove", "width", "head", *_CLEAN, "duty"), ("bore", "groove")),
        Place("packing", "O-ring in the packing", "ring", ("rod", "housing", "width", "guide", "duty"), ("rod", "housing")),
        Place("washer", "washer on the head", "washer", (*_BORE, "rod", "head", "washer", *_CLEAN), ("bore", "rod")),
        Place("cork", "cork on the head", "washer", (*_BORE, "groove", "length", *_CLEAN), ("bore", "groove")),
        Place("stack", "felt or stacked packing", "packing", ("rod", "housing", "length", "thickness", "stack"), ("rod", "housing", "length")),
        Place("sac", "sac on its nipple", "sac", ("material", *_BORE, "nipple", "nipple_length", "depth", "bar", "sac", "wall", "mouth", *_CLEAN), ("bore",)),
        Place("diaphragm", "diaphragm on its seat", "", ("groove", "rubber", "rubber_length", "wall", "fold"), ()),
        Place("bulb", "bulb on the barrel’s end", "stretch", ("nipple", "nipple_length", "mouth", "rubber", "rubber_length", "wall"), ("nipple", "mouth")),
        Place("breather", "breather tube in its hole", "press", ("tube", "tube_hole", "reach", "depth"), ("tube", "tube_hole")),
        Place("tube-ring", "ring on the pneumatic tube", "ring", ("rod", "housing", "width", "guide", "duty"), ("rod", "housing")),
        Place("gasket", "gasket of the filling tube", "packing", ("rod", "housing", "length", "thickness", "stack"), ("rod", "housing", "length")),
        Place("valve", "valve or port", "", ("groove", "length", "rubber", "thickness"), ()),
        Place("collar", "collar of the converter", "stretch", ("nipple", "nipple_length", "mouth"), ("nipple", "mouth")),
        Place("cap-seat", "cap’s seat on the barrel", "", ("lip", "mouth", "lip_depth", "lip_reach"), ()),
        Place("section", "section joint", "", (), ()),
        Place("inner-cap", "inner cap or cap liner", "liner", ("lip", "mouth", "lip_depth", "lip_reach"), ("lip", "mouth")),
    )
}  # fmt: skip
"""Every place of a seal by its key."""

_AT: Mapping[str, tuple[str, ...]] = {
    "sac": ("sac",), "bellows": ("sac",), "bulb": ("bulb",), "diaphragm": ("diaphragm",), "breather-tube": ("breather",),
    "tube-ring": ("tube-ring",), "front-gasket": ("gasket",), "head-seal": ("head", "cork"), "washer": ("washer",),
    "gland": ("packing", "stack"), "packing": ("packing", "stack"), "packing-unit": ("packing", "stack"),
    "cap-seat": ("cap-seat",), "converter": ("collar",), "port": ("valve",), "pump-body": ("valve",), "flare": ("valve",),
}  # fmt: skip
"""Part of a pen -> the places of its seals."""
_EVERY = ("section", "inner-cap")


def places_for(system: str | None) -> tuple[str, ...]:
    """The places that a filling system has seals at.

    Parameters
    ----------
    system : str or None
        Filling system key; None, or one that is not known, has them all.

    Returns
    -------
    tuple of str
        Keys of `PLACES`, in their order. A rod that runs in a gland may be packed by a ring or by felt, a head bear a
        ring, a cork or a washer.
    """
    if system not in SYSTEMS:
        return tuple(PLACES)
    parts = SYSTEMS[system].parts
    found = {place for part in parts for place in _AT.get(part, ())}
    if found & {"head", "washer"}:  # which of them a pen has is seen once it is open
        found |= {"head", "cork", "washer"}
    return tuple(place for place in PLACES if place in found or place in _EVERY)


def place_words(key: str | None) -> str:
    """A place in words; its key as it stands where it is not known."""
    return PLACES[key].words if key in PLACES else key or "seal"


def asked_for(place: str) -> tuple[str, ...]:
    """The fields of a measurement at a place, beside the place itself."""
    return (*PLACES[place].asks, "altered", *WAS) if place in PLACES else ()
