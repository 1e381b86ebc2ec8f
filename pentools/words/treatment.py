"""What is said of what materials can take, heat and mixes."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.numbers import fixed, plain
from pentools.words import Template

__all__ = ["CLOSING_LINE", "WORDS"]

CLOSING_LINE = "Follow local codes; ask a licensed professional."
"""What every caution ends with."""

LOOSENING_DOWN_TO_C = -10.0
"""Above this margin [°C] warmth still loosens a joint, though the sealant does not soften (judged)."""


def _margin(kind: str, top: float, first: float, full: float) -> str:
    far = f"{full:g} °C to fully soft" if full > 0 else "none to fully soft" if full == 0 else f"{-full:g} °C short of fully soft"  # fmt: skip
    if kind == "open":
        return f"{first:g} °C of margin to first softening, {far}; still warm, test, rest, and no more than {top:g} °C at the surface"
    if kind == "narrow":
        return f"{first:g} °C of margin to first softening, {far}; many short heatings to at most {top:g} °C, tested by hand"
    if first > LOOSENING_DOWN_TO_C:
        return f"no margin; warm to at most {top:g} °C, {far}; test, rest, repeat, never force it"
    return f"no margin, {-first:g} °C short of softening, {far}; heat will not free it safely: leave it, or find another way that the body allows"


def _window(
    *, body: str, sealant: str, taken: str, kind: str, top: float | None, first: float | None, full: float | None, why: str
) -> str:  # fmt: skip
    if kind == "not needed":
        return _no_need(body=body, sealant=sealant, why="nothing seals it")
    head = f"{body} with {'an unknown sealant' if sealant == 'unknown' else sealant}: "
    if body == "unknown":
        return f"{head}no heat, because it is not named; nothing above hand-warm."
    if top is None or first is None or full is None:
        return f"{head}no heat, because {why}."
    said = _margin(kind, top, first, full)
    if sealant == "unknown":
        said = f"taken as {taken}, which softens last: {said}"
    return f"{head}{said}{_mind(body)}."


def _window_held(
    *, body: str, sealant: str, kind: str, top: float | None, first: float | None, full: float | None, why: str
) -> str:  # fmt: skip
    if kind == "not needed":
        return _no_need(body=body, sealant=sealant, why=why)
    if top is None or first is None or full is None:
        return f"{body} with {sealant}: no heat, because {why}."
    return (
        f"{body} with {sealant}: {why}, so heat alone will not free it; {_margin(kind, top, first, full)}{_mind(body)}."
    )


def _no_need(*, body: str, sealant: str, why: str) -> str:
    joined = "no sealant" if sealant == "none" else sealant
    return f"{body} with {joined}: {why}, so it needs no heat; by hand, with rubber for grip."


def _mind(body: str) -> str:
    if body == "casein":
        return "; for casein only short and dry, for drying crazes it; never water"
    return "; each heating costs plasticiser" if "celluloid" in body else ""


def _body_not_named(*, said: str) -> str:
    return said or "The body is not named: no heat before it is. Rub, smell, tap; no flame, no hot needle."


def _not_named(*, said: str) -> str:
    return said or "The material is not named: the strictest row holds until it is."


def _air(*, ppm: float, jar_ml: float, room_m3: float, passed: list[str], lowest: str) -> str:
    head = f"If all {jar_ml:g} ml evaporated in a closed room of {room_m3:g} m³ its air would hold {fixed(ppm, 0)} ppm"
    if passed:
        return f"{head}, above {', '.join(passed)}. Mix less of it, lid on, window open. {CLOSING_LINE}"
    return f"{head}, below {lowest}. Lid on, window open."


def _soak(*, part: str, phase: str, elapsed: float, left: float | None, limit: float | None) -> str:
    if left is None or limit is None:
        return f"{part}: {elapsed:.0f} min in. No limit is on record: set one yourself and look often."
    if phase == "not allowed":
        return f"{part}: it must not be soaked at all. Take it out and dry it now."
    if phase == "over":
        return f"{part}: {-left:.0f} min over its limit of {plain(limit, 6)} min. Take it out and dry it now."
    return f"{part}: {left:.{0 if phase == 'running' else 1}f} min left of {plain(limit, 6)}."


def _too_long(*, what: str, minutes: float, limit: float) -> str:
    return f"{what}: {minutes:.0f} min, {minutes - limit:.0f} more than the limit of {plain(limit, 6)} min. Look for change, and write down what you see."


def _plasticiser(*, count: int) -> str:
    return f"{count} heating{'s' if count > 1 else ''} so far; each costs celluloid some plasticiser."


def _out_of_order(*, number: int, part: str, missing: list[str]) -> str:
    return f"Step {number} ({part}) is done, but this is not on record: {' '.join(missing)}"


WORDS: Mapping[str, Template] = {
    "window": _window,
    "window:held": _window_held,
    "not-named": _not_named,
    "not-named:body": _body_not_named,
    "nitrate": f"Cellulose nitrate: no flame, no hot plate, nothing left alone; measure at the surface. {CLOSING_LINE}",
    "sealant-not-named": "The sealant is not named: look at the seam for crumbs, and expect it to let go late or not at all. Stop at the body’s limit.",
    # the heatings so far
    "no-heat": "This material is never warmed, and it was. Stop, and write down what changed.",
    "over-limit": "Heating {heatings} went above the limit of {limit:g} °C. Stop, let it cool, look for change of shape or colour.",
    "broke": "Something broke or changed: {broke}. Stop and tell the owner.",
    "free": "It came free at heating {heating}.",
    "count": "{count} heatings, and not free: stop here. Leave it, try another day or another way, or return it.",
    "near-limit": "Heating {heatings} came within {within:g} °C of the limit, which is what the thermometer may be off.",
    "not-measured": "Heating {heatings} has no temperature measured at the surface, so nothing can be said of it.",
    "step": "Heating {heatings} rose by more than {most:g} °C over the one before: go up in smaller steps.",
    "plasticiser": _plasticiser,
    # what a material can take
    "verdict": "{sentence}",
    "consent": f"A {{treatment}} breaks a rule on purpose and cannot be undone: only with the owner’s yes. {CLOSING_LINE}",
    "overruled:lighter": f"The bench overrules the table, which says {{verdict}}, because {{reason}}. {CLOSING_LINE}",
    "overruled:stricter": "The bench overrules the table, which says {verdict}, because {reason}.",
    "certainty": "No source was read for this: {certainty}. Try it out of sight.",
    "certainty:step": "The step for the {part} is from memory: look at the pen before you trust it.",
    "soak": _soak,
    # mixes
    "refused": "Refused on {thing}: {why}.",
    "refused:bleach": f"Refused: ammonia with {{thing}} gives chloramine gas, which injures lungs. {CLOSING_LINE}",
    "hazard:mix": f"The mix itself, at {{percent:.2g}}\u202f% by weight, is past a limit of the labelling rules ({{labelled}}): {{does}}. Add water, wear goggles and gloves. {CLOSING_LINE}",
    "hazard:bottle": f"The bottle’s {{percent:g}}\u202f%: {{does}} ({{labelled}}). Goggles and gloves, the stronger one into the water. {CLOSING_LINE}",
    "strength:usual": "The mix holds {percent:.2f}\u202f% of ammonia by weight; pH about {ph:.1f}.",
    "strength:strong": "The mix holds {percent:.2f}\u202f% of ammonia by weight, more than the usual half to one per cent: add water. pH about {ph:.1f}.",
    "label": "Household ammonia is usually 5 to 10\u202f%: read the label again.",
    "air": _air,
    "bleach": f"Never ammonia with bleach or a chlorine cleaner: it gives chloramine gas. {CLOSING_LINE}",
    "materials": "Not on casein, plated brass, a silicone seal or a latex sac; rinse well afterwards.",
    "fire:alcohol": f"Its vapour lights from about 12 °C up: no flame, no hot air, fresh air. Never with bleach. {CLOSING_LINE}",
    "fire:flakes": f"Alcohol vapour burns: a warm water bath at most, no flame. {CLOSING_LINE}",
    "peroxide": f"Never with vinegar or acetone, never on cellulose nitrate. {CLOSING_LINE}",
    "strong-peroxide": f"{{percent:g}}\u202f% is more than the {{usual:g}}\u202f% from a chemist’s shelf, which is enough for any pen. {CLOSING_LINE}",
    "printed-chart": "A printed chart says {printed:.2f} parts here, {off:.0%} {way}: that contradicts the room the flakes take up.",
    # what the record says of opening and cleaning
    "not-named:part": "The material of the {part} is not named: no heat and no soak for it, and the strictest limits.",
    "heat-held:joint": "Heatings are logged although it is not named what was warmed at the joint {joints:and}.",
    "tray": "Parts came off, and no parts tray is listed.",
    "soak-running": "A soak is still running. Take the part out, and save that.",
    "not-wetting": "Water does not spread on the {part} yet; rinse it again.",
    "never": "{what}: it was done although the table says never, because {why}.",
    "too-long": _too_long,
    "drying": "The {dry}: nothing is sealed, weighed or warmed before.",
    # the order of work
    "out of order": _out_of_order,
    "apart": "It is apart as far as the order of work goes.",
    "hold": "Before the {part}: {condition} {why}",
    "left-hand": "The {part} may have a left-hand thread. If it tightens when turned the usual way, stop and try the other way, gently.",
}
