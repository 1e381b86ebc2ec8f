"""The formulas for what a pen holds: one family of filling systems, one formula."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from pentools.calc.weighing.volumes import area_mm2, plunger_volume_ml, pumped_volume_ml, sac_volume_ml

__all__ = [
    "BREATHER",
    "CARTRIDGE",
    "CELL",
    "PISTON",
    "PLUNGER",
    "PNEUMATIC_SAC",
    "PUMPED_SAC",
    "RESERVOIR",
    "SAC",
    "Family",
]


@dataclass(frozen=True, slots=True)
class Family:
    """Filling systems that share a formula.

    Parameters
    ----------
    key : str
        Its name.
    needs : tuple of str
        Dimensions without which there is no answer.
    takes : tuple of (str, float, float)
        Further dimensions with the value and the standard uncertainty taken where they are not measured.
    holds : str
        What the volume is, for a sentence ("what the stroke sweeps").
    volume_ml : callable
        Dimensions to volume [mL].
    """

    key: str
    needs: tuple[str, ...]
    takes: tuple[tuple[str, float, float], ...]
    holds: str
    volume_ml: Callable[[Mapping[str, float]], float]


def _piston(d: Mapping[str, float]) -> float:
    return area_mm2(d["bore"], d["rod"]) * d["stroke"] / 1000


def _plunger(d: Mapping[str, float]) -> float:
    return plunger_volume_ml(
        _piston(d),
        d["dead_behind"],
        d["dead_ahead"],
        head_mm=d["head"],
        ambient_kpa=d["ambient_kpa"],
        vapour_kpa=d["vapour_kpa"],
    )


def _sac(d: Mapping[str, float]) -> float:
    return d["pressed_share"] * sac_volume_ml(d["outside"], d["wall"], d["length"])


def _breather(d: Mapping[str, float]) -> float:
    level = area_mm2(d["bore"], d["tube"]) * d["reach"] / 1000
    if d["strokes"] and d["stroke_volume"]:
        return pumped_volume_ml(d["strokes"], d["stroke_volume"], d["tube_volume"], level)
    return level


def _reservoir(d: Mapping[str, float]) -> float:
    return (area_mm2(d["bore"]) * d["depth"] - area_mm2(d["nipple"]) * d["nipple_length"]) / 1000


def _cell(d: Mapping[str, float]) -> float:
    return d["void_share"] * area_mm2(d["bore"]) * d["depth"] / 1000


def _tube(d: Mapping[str, float]) -> float:
    return area_mm2(d["bore"]) * d["length"] / 1000


_WALL = ("wall", 0.5, 0.08)
_DEAD = (("dead_behind", 0.0, 0.0), ("dead_ahead", 0.0, 0.0), ("head", 60.0, 10.0))
_PUMP = (("tube", 2.0, 0.3), ("strokes", 0.0, 0.0), ("stroke_volume", 0.0, 0.0), ("tube_volume", 0.03, 0.01))
_TAIL = (("nipple", 0.0, 0.0), ("nipple_length", 0.0, 0.0))
_SAC_NEEDS = ("outside", "length")

# values taken where nothing was measured are from memory or judged; they carry a wide uncertainty for it
PISTON = Family("piston", ("bore", "stroke"), (("rod", 0.0, 0.0),), "what the stroke sweeps", _piston)
PLUNGER = Family("plunger", ("bore", "rod", "stroke"), _DEAD, "what the stroke sweeps beside its rod", _plunger)
SAC = Family("sac", _SAC_NEEDS, (_WALL, ("pressed_share", 0.75, 0.08)), "what the pressed sac draws back", _sac)
PNEUMATIC_SAC = Family(
    "pneumatic sac",
    _SAC_NEEDS,
    (_WALL, ("pressed_share", 0.85, 0.08)),
    "what the sac draws back once the air has pressed it flat",
    _sac,
)
PUMPED_SAC = Family(
    "pumped sac", _SAC_NEEDS, (_WALL, ("pressed_share", 0.9, 0.06)), "what the sac holds after several strokes", _sac
)
BREATHER = Family(
    "breather", ("bore", "reach"), _PUMP, "what the barrel holds up to the breather tube's end", _breather
)
RESERVOIR = Family("reservoir", ("bore", "depth"), _TAIL, "what the barrel holds", _reservoir)
CELL = Family("cell", ("bore", "depth"), (("void_share", 0.6, 0.1),), "what the cell soaks up", _cell)
CARTRIDGE = Family("cartridge", ("bore", "length"), (), "what the cartridge or converter holds", _tube)
