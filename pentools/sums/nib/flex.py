"""The flex sum: loads on a kitchen scale and the widths they make in, N/mm and the load for half a millimetre out."""

from __future__ import annotations

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.nib.flex import Ceiling, Flex, flex_stiffness, printed_stiffness
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import percent, plain
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.tables.nib import figure

__all__ = ["FLEX", "MAXIMUM", "ceiling_for", "flex_answer"]

METALS = (("gold", "gold"), ("steel", "steel"), ("other", "another metal"))
MAXIMUM = "A flexible nib is never driven to its limit: an old one is sprung by it, and nothing is learnt that half a millimetre does not tell."
"""Why a test at the limit is refused."""
FIELDS = (
    Field("loads", "Readings of the scale", "quantities", unit="gf", low=0, high=500, required=True, hint="a pad of paper on a kitchen scale, tared; such as 15 g; 60 g (a gram there is a gram-force)"),
    Field("widths", "Widths of those lines", "quantities", unit="mm", low=0.02, high=8, required=True, hint="in the same order, such as 0.50 mm; 1.00 mm"),
    Field("metal", "Metal of the nib", "choice", choices=METALS, hint="not said: gold, the stricter"),
    Field("extra", "Extra width", "quantity", unit="mm", low=0.05, high=1.5, default="0.5 mm", hint="what nibs are compared at: half a millimetre, far from any limit"),
    Field("wobble", "How far the load wanders", "quantity", unit="1", low=0, high=0.5, default="8 %", hint="a hand: 8 %; a weighted arm with the paper drawn away under it: 1 %"),
    Field("width_doubt", "Widths are known to", "quantity", unit="mm", low=0, high=0.5, default="0.025 mm", hint="a loupe's scale: 0.025 mm; a scan: 0.005 mm"),
    Field("angle", "Angle of pen to paper", "quantity", unit="deg", low=10, high=90, hint="such as 45 deg: it decides how far a load bends the nib"),
    Field("maximum", "Was it driven to its limit?", "yes-no", hint="yes is refused"),
    Field("printed", "Stiffness printed elsewhere", "number", low=0.001, high=100, hint="for the same readings, in N/mm, such as 1.28: is it right?"),
)  # fmt: skip


def ceiling_for(metal: str | None) -> Ceiling:
    """How far a nib of a metal may be loaded; one that is not said is gold."""
    gold = None if metal is None else metal == "gold"
    return Ceiling(figure("flex-most").typical or 0.0, figure("flex-warn").typical or 0.0, gold)


def flex_answer(given: Inputs) -> SumAnswer:
    """How stiff a nib is.

    Parameters
    ----------
    given : Inputs
        Values of the fields; missing ones None.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If loads and widths are not as many, do not widen, or the nib was driven to its limit.
    """
    if given.flag("maximum"):
        raise InputError("test at the limit", "none", "yes", MAXIMUM)
    flex = flex_stiffness(
        given.numbers("loads"), given.numbers("widths"), ceiling_for(given.text("metal")),
        load_share=given.number("wobble", 0.08), width_u_mm=given.number("width_doubt", 0.025), extra_mm=given.number("extra", 0.5),
    )  # fmt: skip
    angle, printed = given.number("angle"), given.number("printed")
    found = [*flex.findings]
    found += [] if printed is None else [printed_stiffness(flex, printed)]
    found += [] if angle is not None else [Finding("note", "nib.flex-angle")]
    findings = gravest_first(found)
    sentence = flex.findings[0].text
    data = {
        "sentence": sentence,
        "n_per_mm": flex.n_per_mm,
        "standard_uncertainty_n_per_mm": flex.uncertainty_n_per_mm,
        "expanded_uncertainty_n_per_mm": flex.expanded_n_per_mm,
        "width_at_rest_mm": flex.width_at_rest_mm,
        "extra_mm": flex.extra_mm,
        "extra_gf": flex.extra_gf,
        "expanded_uncertainty_extra_gf": flex.extra_expanded_gf,
        "straight_share": flex.straight_share,
        "straight": flex.straight,
        "readings": flex.readings,
        "angle_deg": angle,
        "findings": [f.as_json() for f in findings],
    }
    return SumAnswer(sentence, data, findings, _table(flex, angle), flex)


def _table(flex: Flex, angle: float | None) -> tuple[tuple[str, ...], ...]:
    off = "two readings say nothing of it" if flex.straight_share is None else percent(flex.straight_share, 1)
    return (
        ("quantity", "value"),
        ("stiffness", f"{plain(flex.n_per_mm, 4)} N/mm ± {plain(flex.expanded_n_per_mm, 2)}"),
        (f"load for {plain(flex.extra_mm)} mm more", f"{plain(flex.extra_gf)} gf ± {plain(flex.extra_expanded_gf, 2)}"),
        ("line without a load", f"{plain(flex.width_at_rest_mm, 2)} mm, by the fit"),
        ("furthest reading from the line, of the largest load", off),
        ("angle", "not said" if angle is None else f"{plain(angle)}°"),
    )


FLEX = Sum(
    "flex",
    "How stiff a nib is",
    "The load that widens a line by half a millimetre, on a kitchen scale, and its stiffness in N/mm; never to the nib's limit.",
    FIELDS,
    flex_answer,
    'pentools sums flex --loads "15 g; 60 g" --widths "0.50 mm; 1.00 mm" --angle "45 deg"',
)
