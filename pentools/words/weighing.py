"""What is said of weighing, filling and leaking."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.numbers import capital, fixed, percent, plain
from pentools.words import Template

__all__ = ["WORDS", "mg_rate"]


def mg_rate(mg_per_h: float) -> str:
    """A loss in the unit that gives a plain number: milligrams an hour from 1 up, else a day."""
    return f"{plain(mg_per_h, 2)} mg an hour" if mg_per_h >= 1 else f"{plain(24 * mg_per_h, 2)} mg a day"


def _usual(low: float, high: float, certainty: str) -> str:
    return f"sound ones draw {fixed(100 * low, 0)} to {percent(high)} of it ({certainty})"


def _not_told(*, gained_g: float, least_g: float, digit_g: float) -> str:
    seen = f"The gain of {plain(gained_g, 2)} g" if gained_g > 0 else "No gain is seen, and a small one"
    return (
        f"{seen} cannot be told from nothing: these weighings tell {plain(least_g, 2)} g and more. Next test: fill it as "
        f"full as it goes and weigh each state three times, or take a finer balance than one of {plain(digit_g)} g."
    )


def _drawn(share: float, points: float, holds: str) -> str:
    return f"{percent(share)} ± {plain(points, 2)} of {holds}"


def _short(*, share: float, points: float, holds: str, low: float, high: float, certainty: str, least: float) -> str:
    feed = f", and not below {percent(least)} even where the feed kept some" if least < low else ""
    return f"It draws {_drawn(share, points, holds)}; {_usual(low, high, certainty)}{feed}. That is short."


def _cannot_tell(
    *, share: float, points: float, holds: str, low: float, high: float, certainty: str, least: float, feed: bool
) -> str:
    text = (
        f"It draws {_drawn(share, points, holds)}; {_usual(low, high, certainty)}. Whether it is short cannot be told"
    )
    if feed:
        text += (
            ": it was not dry, and what its feed kept is not known (0.25 to 0.32 mL in three pens of one wiki). "
            "Next test: dry it, weigh it, fill it and weigh it again"
        )
    else:
        text += ". Next test: fill, empty and fill again, weigh each state three times, and measure the bore once more"
    return f"{text}; no part is suspected before that." if least <= low else f"{text}."


def _more(*, share: float, points: float, holds: str, start: str, **_: object) -> str:
    drawn = f"It draws {_drawn(share, points, holds)}"
    why = " and more than its feed takes beside" if start == "dry" else ""
    return f"{drawn}, more than that{why}: a dimension is wrong, or a part was on the pen the second time only."


def _vacuum_bound(*, at_most: float, vacuum: float) -> str:
    return (
        f"If all of the rest were lost vacuum, at most {fixed(at_most, 1)} kPa of air was left behind the washer "
        f"(a vacuum of at least {fixed(vacuum, 0)} kPa): more than that the weighing cannot tell."
    )


def _loses(loss: float, doubt: float) -> str:
    scale, unit = (1.0, "an hour") if loss >= 1 else (24.0, "a day")
    return f"It loses {plain(scale * loss, 2)} mg {unit}, give or take {plain(scale * doubt, 2)}"


def _found(limit: float) -> str:
    return f"A loss of {mg_rate(limit)} would have shown."


def _leak(*, loss: float, doubt: float, limit: float) -> str:
    return (
        f"{_loses(loss, doubt)}: milligrams an hour are a leak or an open nib (an estimate; the gap at the cap's seat "
        f"would say what evaporation takes). {_found(limit)}"
    )


def _leak_by_estimate(*, loss: float, doubt: float, limit: float, estimate: float) -> str:
    return (
        f"{_loses(loss, doubt)}: more than twice the {plain(estimate, 2)} mg a day that evaporation through that gap may "
        f"take (an estimate). It leaks. {_found(limit)}"
    )


def _evaporation(*, loss: float, doubt: float, limit: float, estimate: float) -> str:
    return (
        f"{_loses(loss, doubt)}: no more than evaporation through that gap may take, about {plain(estimate, 2)} mg a day "
        f"(an estimate). {_found(limit)}"
    )


def _which(*, loss: float, doubt: float, limit: float) -> str:
    return (
        f"{_loses(loss, doubt)}. Whether that is evaporation or a slow leak cannot be told. Next test: seal the cap's "
        f"seat with film and weigh again, or measure its gap, so that what evaporation takes can be estimated. "
        f"{_found(limit)}"
    )


def _which_by_estimate(*, loss: float, doubt: float, limit: float, estimate: float) -> str:
    return (
        f"{_loses(loss, doubt)}, beside about {plain(estimate, 2)} mg a day that evaporation may take (an estimate). "
        f"Whether a slow leak is in it cannot be told. Next test: seal the cap's seat with film and weigh again, or "
        f"weigh longer. {_found(limit)}"
    )


def _tight(*, loss: float, doubt: float, limit: float) -> str:
    return (
        f"No leak of {mg_rate(limit)} or more: {_change(loss)}, and weighing leaves {mg_rate(doubt)} open. A smaller one "
        "cannot be told."
    )


def _not_sensitive(*, loss: float, doubt: float, limit: float) -> str:
    return (
        f"No leak is seen, but one below {mg_rate(limit)} need not show: {_change(loss)}, and weighing leaves "
        f"{mg_rate(doubt)} open. Weigh longer or on a finer balance before it is called tight."
    )


def _change(loss: float) -> str:
    if round(abs(24 * loss), 3) == 0:
        return "its mass did not change"
    return f"it {'lost' if loss > 0 else 'gained'} {mg_rate(abs(loss))}"


def _gain(*, loss: float, doubt: float, **_: object) -> str:
    return (
        f"It gains {mg_rate(-loss)}, more than the {mg_rate(doubt)} that weighing leaves open: the balance drifts, or the "
        "pen takes up damp or ink from outside. Weigh a dry dummy each time and begin again."
    )


def _suspect(*, name: str, why: str, test: str) -> str:
    return f"{capital(name)}: {why}. Next test: {test}."


class _Words(dict[str, Template]):
    """The suspects stand in a table, each with its own key: all are told alike."""

    def __missing__(self, topic: str) -> Template:
        if topic.startswith("suspect-"):
            return self["suspect-any"]
        raise KeyError(topic)


_DIGITS = "Type every digit that the display shows, noughts at the end too."

WORDS: Mapping[str, Template] = _Words({
    "digits-typed": (
        "The masses are typed to {typed_g:g} g and the balance is said to read to {said_g:g} g: they are taken as read on "
        "a balance of {typed_g:g} g. " + _DIGITS
    ),
    "digits-typed:mixed": (
        "Some masses are typed to {finest_g:g} g and some to {typed_g:g} g only: the coarsest counts, as if all were read "
        "on a balance of {typed_g:g} g. " + _DIGITS
    ),
    "gain-not-told": _not_told,
    "coarse-balance": (
        "The gain of {gained_g:.3g} g is only {steps:.0f} steps of this balance. A finer balance would tell more."
    ),
    "too-much": (
        "A gain of {gained_g:.2f} g is more than pens hold. Was the pen weighed with other parts the second time?"
    ),
    "start-dry": (
        "It was filled from dry, so the reading includes what feed and section keep; a refill of a drained pen reads less "
        "by that."
    ),
    "start-drained": "It was filled from drained, so what the feed still held is not counted again.",
    "ink-density": (
        "The ink's density, {g_ml:.3f} g/mL, is assumed or known only roughly. To know it, weigh one syringe filled to one "
        "mark with ink and with water."
    ),
    "scatter-empty": (
        "The {state} weighings lie {apart_g:.3g} g apart, more than this balance scatters. Look for a draught, a drop, or a "
        "part left off, and weigh again; until then the scatter itself is in the ±."
    ),
    "scatter-filled": (
        "The {state} weighings lie {apart_g:.3g} g apart, more than this balance scatters. Look for a draught, a drop, or a "
        "part left off, and weigh again; until then the scatter itself is in the ±."
    ),
    "few-weighings": (
        "Three weighings of each state would show the balance's scatter; with fewer, its sheet is believed unless the "
        "readings scatter more than chance lets it."
    ),
    "short": _short,
    "suspect-any": _suspect,
    "more-than-full": _more,
    "share-cannot-tell": _cannot_tell,
    "full": lambda *, share, points, holds, low, high, certainty, **_: (
        f"It fills as is usual: {_drawn(share, points, holds)}; {_usual(low, high, certainty)}."
    ),
    "share-uncertain": lambda *, points, **_: (
        f"The share is known to ± {plain(points, 2)} points only: a loss smaller than that cannot be seen. Measure the "
        "dimensions better, or weigh on a finer balance."
    ),
    "vacuum-bound": _vacuum_bound,
    "vacuum": (
        "If all of the rest is lost vacuum, {pressure:.0f} kPa ± {doubt:.2g} of air was left behind the washer (outside it "
        "is {ambient:.0f} kPa). Short dwell, a blocked feed, a short stroke or a wrong bore look just the same."
    ),
    "assumed": "Not measured and taken as usual (from memory or judged): {names:and}.",
    "dimensions-missing": "What it should hold is not known: measure {names:and}.",
    "ink-unused": (
        "An ink's density was given, but the liquid is water: it was not used. Say that the liquid is ink if it is."
    ),
    "system-missing": (
        "Dimensions were given, but not the filling system: say which, and what it should hold can be worked out."
    ),
    "dimensions-unused": "Not used for this filling system: {names:and}.",
    "still-rising": (
        "Still rising by {slope:.2f} mL a filling: fill again until it settles. A growing fill means the pen stayed too "
        "short a time in the liquid, or a dry seal that is waking up."
    ),
    "falling": "Falling by {slope:.2f} mL a filling: a seal that slips more each time.",
    "steady": "{fills} fillings agree: no trend beyond what weighing can tell.",
    "two-only": "Two fillings show no trend; a third would.",
    "one-dip": "One dip was weighed. Dip and weigh again until a dip adds nothing: then it is full.",
    "dip-rising": (
        "Dip {dips} still added {added:.2f} mL, so it may take more: dip and weigh again until a dip adds nothing."
    ),
    "dip-fell": (
        "After dip {dip} it weighed less by {lost:.2f} mL than after the one before: it dripped, more was wiped off, or "
        "the tare was lost. Tare the empty pen and begin again."
    ),
    "dip-full": (
        "The last of {dips} dips added nothing that weighing can tell ({told:.2f} mL and more): it is full, filled this way."
    ),
    "low-slope": (
        "Each stroke brings {per_stroke:.2f} mL, where a sound one brings {sound:.2f} mL: the rubber is hard or torn, or "
        "air comes in at its seat."
    ),
    "no-gain": (
        "No stroke adds anything: the diaphragm is torn, its old rubber blocks it, or the breather tube is closed."
    ),
    "never-flat": (
        "After stroke {last} it still rises: go on until it stops. If it never stops, air comes in somewhere."
    ),
    "early-plateau": lambda *, stroke, plateau, share: (
        f"It stops rising after stroke {stroke} at {fixed(plateau, 2)} mL, {percent(share)} of what the barrel holds up to "
        "a whole breather tube's end. The liquid has reached the tube's end early: the tube is short, broken or cracked. "
        "Look at its end before anything else."
    ),
    "plateau": lambda *, stroke, plateau, share: (
        f"It stops rising after stroke {stroke} at {fixed(plateau, 2)} mL"
        + (f", {percent(share)} of what it should hold." if share is not None else ".")
    ),
    "leak": _leak,
    "leak:estimate": _leak_by_estimate,
    "evaporation:estimate": _evaporation,
    "cannot-tell-which": _which,
    "cannot-tell-which:estimate": _which_by_estimate,
    "evaporation-estimate": (
        "Through such a gap still air takes about {estimate:.2g} mg a day (an estimate, good to a factor of two)."
    ),
    "tight": _tight,
    "not-sensitive": _not_sensitive,
    "gain": _gain,
    "not-weighed": "The pen has not been weighed.",
    "no-pair": "There is no pair of an empty and a filled weighing yet.",
})  # fmt: skip
