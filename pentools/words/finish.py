"""What is said of abrasives and polish."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from pentools.numbers import capital, in_words, plain
from pentools.words import Said, Template

__all__ = ["WORDS"]


def _size(um: float) -> str:
    return f"{plain(um, 3)} µm"


def _slow_start(*, grade: str, minutes: float, depth: float, faster: Sequence[str], why: str, limit: float) -> str:
    text = f"{grade} needs about {plain(minutes, 2)} min for {plain(depth, 2)} µm."
    if why == "allowed":
        return f"{text} {faster[0]} is at hand and allowed, and faster."
    if why == "too coarse":
        are = "is" if len(faster) == 1 else "are"
        return f"{text} {in_words(faster)} would be faster, but {are} too coarse here ({plain(limit, 2)} µm at most)."
    return f"{text} Nothing faster is at hand."


def _bridge(name: str, um: float, at_hand: bool) -> str:
    return f"{name} ({_size(um)}, {'which is' if at_hand else 'not'} at hand)"


def _missing(*, name: str, um: float, at_hand: bool, before: str, after: str) -> str:
    return f"{_bridge(name, um, at_hand)} would lie well between {before} and {after}."


def _finish(*, last: str, leaves: float, wanted: float, name: str | None, um: float | None, at_hand: bool) -> str:
    text = (
        f"{last}, the last that this ladder can use, leaves a finish like {_size(leaves)}; {_size(wanted)} was wanted."
    )
    return text if name is None or um is None else f"{text} {_bridge(name, um, at_hand)} could follow it."


def _unmask(*, grade: str, rest: int) -> str:
    through = f"the last {rest}" if rest > 1 else "this last step"
    return f"Unmask solid trim at {grade} and take it through {through}. Plated or unknown trim stays masked."


def _takes(*, typical: float, low: float, high: float, **_rest: Said) -> str:
    return f"about {plain(typical, 2)} µm a side ({plain(low, 2)} to {plain(high, 2)})"


def _spares(*, zone: str, least: float, most: float, spent: float, **_rest: Said) -> str:
    amount = plain(most, 2) if least in (0, most) else f"{plain(least, 2)} to {plain(most, 2)}"
    return f"“{zone}” can spare {amount} µm" + (f" after the {plain(spent, 2)} µm already taken" if spent else "")


def _sure(*, wall: float | None, certainty: str, **_rest: Said) -> str:
    return f"Budgets are {certainty}, no source; measure the wall." if wall is None else "A tenth of the wall at most."


def _over(**total: Any) -> str:
    return f"Over budget: the plan takes {_takes(**total)}, {_spares(**total)}. Reduce the defect, do not remove it."


def _close(**total: Any) -> str:
    return (
        f"The plan may go over budget: it takes {_takes(**total)}, {_spares(**total)}, and the upper figure is past it. "
        f"Reduce the defect, or measure after every step. {_sure(**total)}"
    )


def _upper(**total: Any) -> str:
    return f"The plan takes {_takes(**total)}; {_spares(**total)}: the upper part of it. {_sure(**total)}"


def _within(**total: Any) -> str:
    return f"The plan takes {_takes(**total)}; {_spares(**total)}. {_sure(**total)}"


def _coarser(*, before: str, after: str, by: str, why: str, **sizes: float) -> str:
    first, second = sizes["first"], sizes["second"]
    word = "does not go finer" if first == second else "goes coarser"
    text = f"{before} to {after} {word} by {by}: {_size(first)} to {_size(second)}."
    finer = f" By the scratch it leaves it is finer, {_size(sizes['finish_before'])} to {_size(sizes['finish_after'])},"
    if why == "off the cloth":
        return (
            f"{text}{finer} if the cloth's finish figure holds; on a hard backing the same grain cuts deeper, so try it where "
            "it does not show."
        )
    if why == "onto the cloth":
        return (
            f"{text}{finer} because a soft backing lets the grain sink in. The trade steps from plain paper to such cloth all "
            "the same and works it until the paper's lines are gone; a single grain pressed hard can still cut deeper than "
            "the paper did. Start the cloth at a grade with the smaller grain, or judge this ladder by finish if your cloth "
            "has proved it."
        )
    if why == "grain finer":
        grain = f"{_size(sizes['grain_before'])} to {_size(sizes['grain_after'])}"
        return f"{text} The grain is finer, {grain}, but the scratch left is not."
    return f"{text} It puts scratches back that the step before took out."


def _both(by_diameter: float, by_mass: float) -> str:
    return f"{plain(by_diameter, 2)} µm a side by diameter, {plain(by_mass, 2)} µm by mass"


def _agrees(*, by_diameter: float, by_mass: float) -> str:
    return f"The two measurements agree: {_both(by_diameter, by_mass)}."


def _more(*, by_diameter: float, by_mass: float) -> str:
    return (
        f"Mass says more than diameter: {_both(by_diameter, by_mass)}. Was more than the measured station polished, or was the "
        "part wet or dirty when first weighed?"
    )


def _less(*, by_diameter: float, by_mass: float) -> str:
    return (
        f"Mass says less than diameter: {_both(by_diameter, by_mass)}. Was the part still damp when weighed, or the diameter "
        "taken at another place?"
    )


def _leave_zone(*, zone: str, why: str) -> str:
    return f"Leave the zone “{zone}” alone: its budget is 0 µm. {capital(why)}."


def _two_figures(*, grain: float, finish: float, low: float, high: float, number: str) -> str:
    return (
        f"Two figures: the grain is {_size(grain)} and cuts like it, the finish is like {_size(finish)} ({plain(low, 2)} to "
        f"{plain(high, 2)}) because the backing is soft. A number on a cloth is its maker's own: these are read off a curve drawn "
        "through what is said of such cloths. Put your own figures in if you have them, like cushioned cloth "
        f"{number} = 9 um, finish 7 um."
    )


def _plan_differs(*, way: str, taken: str, low: float, high: float) -> str:
    least, most = plain(low, 2), plain(high, 2)
    planned = most if least == most else f"{least} to {most}"
    return f"By {way} {taken} µm a side are gone, the steps were planned to take {planned} µm: believe the measurement."


def _not_counted(*, steps: int) -> str:
    are, have, they = ("is", "has", "it") if steps == 1 else ("are", "have", "they")
    return f"{steps} of the steps {are} not in the plan and {have} no minutes: what {they} took is not counted."


def _too_small(*, stages: int, material: str) -> str:
    took = "1 measured stage" if stages == 1 else f"{stages} measured stages"
    says = "says" if stages == 1 else "say"
    return f"{took} on {material} took less than the instrument can tell, and {says} nothing about a rate."


WORDS: Mapping[str, Template] = {
    "slow-start": _slow_start,
    "missing-grade": _missing,
    "finish-not-reached": _finish,
    "finish-passed": (
        "{last}, the last that this ladder can use, leaves a finish like {leaves:.3g} µm: shinier than the {wanted:.3g} µm that "
        "was asked. Nothing at hand that may be used leaves that finish."
    ),
    "film-assumed": "{sizes:and} without a word for what carries the grain: read as lapping film.",
    "never": "No paper, film or cloth on {material}: {why}. Paste by hand only, and seldom.",
    "never:in-ladder": "{grade} never on {material}: {why}.",
    "sanding": "{said}",
    "wet-or-dry": "{said}",
    "wheel": "{said}",
    "caution": "{said}",
    "zone-not-said": (
        "Where on the pen is not said, so it is taken as the strictest: an imprint, threads and seats can spare nothing. "
        "Name the zone before anything is taken off."
    ),
    "trim-not-said": (
        "Trim is not said, so it is taken as plated and stays masked to the end. Say solid, or none, if you know it."
    ),
    "trim-masked:plated": "Plated trim stays masked to the end; a soft cloth at most.",
    "trim-masked:coarse": "No step is fine enough for trim ({limit:.2g} µm or finer): it stays masked to the end.",
    "trim-unmask": _unmask,
    "calibrated": "Times are from this bench's own log.",
    "calibrated:line": (
        "Calibrated for {material} from {stages} measured stages: rate goes with size to the power {exponent:.1f}."
    ),
    "not-calibrated": (
        "Times are not calibrated: a rule of thumb, good to a factor of 3. Three measured stages make them your own."
    ),
    "not-calibrated:few": (
        "Not calibrated: {stages} of {needed} measured stages on {material} so far. Weigh or measure before and after."
    ),
    "over-budget": _over,
    "budget-close": _close,
    "budget-upper": _upper,
    "within-budget": _within,
    "reduce": "{said}",
    "coarser-start": "{said}",
    "finer-start": "{said}",
    "goes-coarser": _coarser,
    "step-too-large": (
        "{before} to {after} is a step of {ratio:.2g} times; {medium} is trusted to {limit:.2g}. The old scratches take long to "
        "go and are easily left: put a grade between, or work it much longer."
    ),
    "step-small": (
        "{before} to {after} is a step of only {ratio:.3g} times: it does little that the next grade would not do."
    ),
    "too-coarse": ("{grade} ({um:.3g} µm) is coarser than {material} in the zone “{zone}” allows ({limit:.2g} µm)."),
    "leave-alone:zone": _leave_zone,
    "leave-alone:unnamed": "No abrasive on a material that is not named: {why}. A soft dry cloth at most.",
    "leave-alone:material": "No abrasive on {material}: {why}. A soft dry cloth at most.",
    "leave-alone:bound": (
        "No paper, film or cloth on {material}: {why}. A paste of {limit:.2g} µm or finer by hand at most, and seldom."
    ),
    "leave-alone:coarse": (
        "Nothing owned is fine enough: {material} in the zone “{zone}” takes {limit:.2g} µm at most, the finest owned is {grade} "
        "with {um:.3g} µm."
    ),
    "material-not-named": "{said} No abrasive until it is named: it could be anything.",
    "materials-known": "Materials known here: {names:and}.",
    "removal-agrees": _agrees,
    "removal-differs:more": _more,
    "removal-differs:less": _less,
    "two-figures": _two_figures,
    "same-number": "The number {number} alone also means {um:.3g} µm ({grade}): always write the scale.",
    "certainty": "The size of {grade} is {certainty}.",
    "note": "{grade}: {said}.",
    "budget-spent:measured": "Stop: {taken:.2g} µm a side are gone by {way}; “{zone}” can spare {budget:.3g} µm.",
    "budget-spent:estimated": (
        "Measure before going on: about {taken:.2g} µm a side are gone by estimate; “{zone}” can spare {budget:.3g} µm."
    ),
    "plan-differs": _plan_differs,
    "not-resolved": "The change by {way}, {taken:.2g} µm, is within what the instrument can tell (± {limit:.2g} µm).",
    "not-counted": _not_counted,
    "plan-unreadable": "The plan cannot be worked out: {why}",
    "plan-incomplete": "The plan is not complete: it needs a defect and at least one grade.",
    "not-masked": "{zone} is not masked.",
    "forbidden-zone": "{grade} was used on the zone “{zone}”, which can spare nothing: {why}.",
    "unknown-grade": "“{typed}” names no grade that is known: correct that entry.",
    "went-coarser": (
        "{after} ({second:.3g} µm) after {before} ({first:.3g} µm) went back to a coarser finish: all that follows has to be "
        "done again."
    ),
    "material-differs": "The plan is for {planned}, the pen is entered as {named:and}.",
    "too-small": _too_small,
}
"""Topic, or topic:variant, to template."""
