"""Joint sealant against body: how much room there is between the one letting go and the other giving way."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from pentools.calc.base.findings import Finding, Level
from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.calc.treatment.materials import UNKNOWN, material_name, sealant_name

__all__ = ["HeatWindow", "WindowKind", "heat_window"]

WindowKind = Literal["open", "narrow", "none", "no heat"]
OPEN_FROM_C = 20.0
LOOSENING_DOWN_TO_C = -10.0
_NITRATE = ("celluloid", "degrading celluloid")
_LEVELS: dict[WindowKind, Level] = {"open": "note", "narrow": "warning", "none": "warning", "no heat": "stop"}


@dataclass(frozen=True, slots=True)
class HeatWindow:
    """The room between a sealant's softening and a body's limit.

    Parameters
    ----------
    body, sealant : str
        As the tables name them.
    body_limit_c : float or None
        Highest temperature at the body's surface [°C]; None where it is never warmed.
    sealant_first_c, sealant_full_c : float
        Where the sealant first softens and where it is fully soft [°C].
    window_first_c, window_full_c : float or None
        Body limit less those two [°C]; negative where the body gives way first; None where it is never warmed.
    kind : {"open", "narrow", "none", "no heat"}
        The window in a word.
    verdict : str
        One sentence on what to do.
    sources : tuple of str
        Keys of the tables' sources for the body's limit and for the sealant.
    certainty : str
        The weaker of the two certainties is named with the stronger: "body: …; sealant: …".
    findings : tuple of Finding
        The verdict as advice, and what to mind.
    """

    body: str
    sealant: str
    body_limit_c: float | None
    sealant_first_c: float
    sealant_full_c: float
    window_first_c: float | None
    window_full_c: float | None
    kind: WindowKind
    verdict: str
    sources: tuple[str, ...]
    certainty: str
    findings: tuple[Finding, ...]


def heat_window(
    body: str,
    sealant: str,
    limit_rows: Iterable[Mapping[str, str]],
    sealant_rows: Iterable[Mapping[str, str]],
) -> HeatWindow:
    """The heat window of a joint.

    Parameters
    ----------
    body : str
        What the body is made of, in everyday words; one not in the table counts as unknown.
    sealant : str
        What the joint was sealed with, in everyday words.
    limit_rows : iterable of mapping
        Rows with material, rule, value, text, source, certainty (the table ``heat_limits``).
    sealant_rows : iterable of mapping
        Rows with sealant, property, low, high, source, certainty (the table ``joint_sealants``).

    Returns
    -------
    HeatWindow
        Windows to first and to full softening [°C], a word and a sentence.

    Raises
    ------
    InputError
        If the sealant is not in the table, or the table has no softening for it.

    Notes
    -----
    Window = body limit - softening of the sealant. Open: at least 20 °C to first softening and full softening
    still below the limit; narrow: above zero; none: zero or less. The bounds are judged. Good for the temperature
    of the part's surface, not of the air; no limit in the table is sharper than about 5 °C, old stock varies, and
    one trade figure for shellac (39 °C) contradicts all others and is not used.
    """
    limits = {row["material"]: row for row in limit_rows if row["rule"] in ("working limit", "no heat")}
    limits.pop("any", None)
    softening = {row["sealant"]: row for row in sealant_rows if row["property"] == "softens"}
    name, unnamed = material_name(body, limits)
    joint = sealant_name(sealant, softening)
    limit, soft = limits[name], softening[joint]
    first, full = float(soft["low"]), float(soft["high"])
    top = float(limit["value"]) if limit["value"] else None
    window_first = None if top is None else top - first
    window_full = None if top is None else top - full
    kind: WindowKind = "no heat" if name == UNKNOWN else _kind(window_first, window_full)
    why = "it is not named; nothing above hand-warm" if name == UNKNOWN else limit["text"]
    margin = f"no heat, because {why}" if top is None or window_first is None else _advice(kind, top, window_first)
    verdict = _verdict(name, joint, kind, margin, why)
    advice = [Finding(_LEVELS[kind], verdict, "window")]
    if name == UNKNOWN:
        text = unnamed or "The body is not named: no heat before it is. Rub, smell, tap; no flame, no hot needle."
        advice.append(Finding("stop", text, "not-named"))
    if name in _NITRATE:
        text = f"Cellulose nitrate: no flame, no hot plate, nothing left alone; measure at the surface. {CLOSING_LINE}"
        advice.append(Finding("warning", text, "nitrate"))
    certainty = f"body: {limit['certainty']}; sealant: {soft['certainty']}"
    sources = tuple(dict.fromkeys(part.strip() for row in (limit, soft) for part in row["source"].split(";")))
    return HeatWindow(
        name, joint, top, first, full, window_first, window_full, kind, verdict, sources, certainty, tuple(advice)
    )


def _kind(first: float | None, full: float | None) -> WindowKind:
    if first is None or full is None:
        return "no heat"
    if first <= 0:
        return "none"
    return "open" if first >= OPEN_FROM_C and full > 0 else "narrow"


def _verdict(body: str, sealant: str, kind: WindowKind, margin: str, why: str) -> str:
    head = f"{body} with {sealant}: "
    if kind == "no heat":
        return f"{head}no heat, because {why}."
    if body == "casein":
        return f"{head}{margin}; for casein only short and dry, for drying crazes it; never water."
    return f"{head}{margin}{'; each heating costs plasticiser' if body in _NITRATE else ''}."


def _advice(kind: WindowKind, top_c: float, first_c: float) -> str:
    if kind == "open":
        return f"{first_c:g} °C of margin; still warm, test, rest, and no more than {top_c:g} °C at the surface"
    if kind == "narrow":
        return f"{first_c:g} °C of margin to first softening, no more; many short heatings to at most {top_c:g} °C, tested by hand"
    if first_c > LOOSENING_DOWN_TO_C:
        return f"no margin; warm to at most {top_c:g} °C, test, rest, repeat, never force it"
    return f"no margin, {-first_c:g} °C short of softening; heat will not free it safely: leave it, or find another way that the body allows"
