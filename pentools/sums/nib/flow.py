"""The flow sum: the pen's mass before and after a stated length of line in, ink on a metre out."""

from __future__ import annotations

import math

from pentools.calc.base.findings import Finding
from pentools.calc.base.uncertainty import COVERAGE
from pentools.calc.nib.flow import WRITING_M_MIN, Flow, Span, Weighed, ink_flow, weighed
from pentools.calc.weighing.balance import Balance
from pentools.fields import Field
from pentools.numbers import plain
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.weighing.fields import BALANCE_FIELDS
from pentools.sums.weighing.inputs import balance_of
from pentools.tables.nib import figure

__all__ = ["FLOW", "flow_answer", "known_span"]

LENGTH_SHARE = 0.01  # strokes counted and multiplied by their ruled length (judged)
FIELDS = (
    Field("before", "Pen before the line", "quantities", unit="g", low=0, high=200, required=True, hint="capped, one or several weighings, such as 23.512 g; 23.511 g"),
    Field("after", "Pen after the line", "quantities", unit="g", low=0, high=200, required=True, hint="capped, such as 23.423 g; weigh the pen and not the paper, which dries"),
    Field("length", "Length of line", "quantity", unit="m", low=0.1, high=2000, required=True, hint="strokes counted times their ruled length, such as 18 m; known to 1 % unless typed with ±"),
    *(field for field in BALANCE_FIELDS if field.name in ("readability", "repeatability")),
    Field("idle", "Lost by an idle twin", "quantity", unit="mg", low=0, high=200, hint="the same pen open, nib up, for the same minutes, such as 0.3 mg; estimated if left empty"),
    Field("minutes", "Time it was open", "quantity", unit="min", low=0, high=1000, hint="such as 5 min; reckoned at 4.5 m of line a minute if left empty"),
    Field("density", "Density of the ink", "quantity", unit="g/ml", low=0.9, high=1.3, default="1.005 g/ml", hint="a mass is no volume; such as 1.01 g/ml"),
    Field("width", "Width of the line", "quantity", unit="mm", low=0.05, high=6, hint="to see whether so much ink can be true, such as 0.52 mm"),
)  # fmt: skip


def known_span() -> Span:
    """What pens are known to lay down, from the table of figures."""
    span, ceiling = figure("flow-span"), figure("flow-ceiling")
    # mg/cm² times 10 is mg/m for each millimetre of width
    return Span(span.low or 0.0, span.typical or 0.0, span.high or 0.0, 10 * (ceiling.high or 0.0))


def flow_answer(given: Inputs) -> SumAnswer:
    """Ink on a metre of line.

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
        If the pen gained, or a value is out of its range.
    """
    balance, digits = balance_of(given, ("before", "after"))
    length = given.needed("length")
    reading = given.reading("length")
    spread = reading.standard_uncertainty if reading else None
    before, after = (
        weighed(given.numbers(name), balance.rounding_g, balance.repeatability_g) for name in ("before", "after")
    )
    flow = ink_flow(
        before, after, length, LENGTH_SHARE if spread is None else spread / length, known_span(),
        density_g_ml=given.number("density", 1.005), dried=_dried(given, length, balance), width_mm=given.number("width"),
    )  # fmt: skip
    findings = (*flow.findings, *digits, *_about_drying(given, flow))
    sentence = findings[0].text
    told = flow.verdict != "bound"
    data = {
        "sentence": sentence,
        "verdict": flow.verdict,
        "mg_per_m": flow.mg_per_m if told else None,
        "standard_uncertainty_mg_per_m": flow.uncertainty_mg_per_m,
        "expanded_uncertainty_mg_per_m": flow.expanded_mg_per_m,
        "coverage_factor": COVERAGE,
        "less_than_mg_per_m": flow.bound_mg_per_m,
        "m_per_ml": flow.m_per_ml,
        "m_per_ml_low": flow.m_per_ml_low,
        "m_per_ml_high": flow.m_per_ml_high,
        "ul_per_m": 1000 / flow.m_per_ml if flow.m_per_ml else None,
        "lost_mg": flow.lost_mg,
        "dried_mg": flow.dried_mg,
        "length_m": length,
        "needed_m": flow.needed_m,
        "readability_g": balance.readability_g,
        "findings": [f.as_json() for f in findings],
    }
    return SumAnswer(sentence, data, findings, _table(flow), flow)


def _dried(given: Inputs, length_m: float, balance: Balance) -> Weighed:
    """What the open pen lost without writing: as the twin was weighed, else an estimate known to its own size."""
    twin = given.reading("idle")
    if twin is not None:
        u = twin.standard_uncertainty
        once = math.hypot(balance.rounding_g, balance.repeatability_g)
        return Weighed(twin.value / 1000, math.sqrt(2) * once if u is None else u / 1000)
    minutes = given.number("minutes", length_m / WRITING_M_MIN)
    lost_g = (figure("idle-loss").typical or 0.0) * minutes / 1000
    return Weighed(lost_g, lost_g / math.sqrt(3))


def _about_drying(given: Inputs, flow: Flow) -> tuple[Finding, ...]:
    """An estimate is named where it is more than a tenth of the doubt."""
    told = not given.given("idle") and flow.dried_mg > 0.1 * flow.lost_uncertainty_mg
    return (Finding("note", "nib.flow-dried", dried=flow.dried_mg),) if told else ()


def _table(flow: Flow) -> tuple[tuple[str, ...], ...]:
    def metres(value: float | None) -> str:
        return "no end" if value is None else f"{plain(value, 3)} m"

    ends = f"{metres(flow.m_per_ml_low)} to {metres(flow.m_per_ml_high)}"
    return (
        ("quantity", "value"),
        ("ink that left the pen", f"{plain(flow.lost_mg)} mg ± {plain(COVERAGE * flow.lost_uncertainty_mg, 2)}"),
        ("taken off for drying", f"{plain(flow.dried_mg, 2)} mg"),
        ("length of line", f"{plain(flow.length_m)} m"),
        ("on a metre", f"{plain(flow.mg_per_m)} mg ± {plain(flow.expanded_mg_per_m, 2)}" if flow.m_per_ml else f"less than {plain(flow.bound_mg_per_m, 2)} mg"),
        ("from a millilitre", f"{metres(flow.m_per_ml)} ({ends})" if flow.m_per_ml else "cannot be told"),
        ("length that makes it a number on this balance", f"{plain(flow.needed_m, 2)} m"),
    )  # fmt: skip


FLOW = Sum(
    "flow",
    "Ink on a metre of line",
    "Milligrams of ink on a metre, and metres from a millilitre: the pen weighed before and after a line of known length.",
    FIELDS,
    flow_answer,
    'pentools sums flow --before "23.512 g" --after "23.422 g" --length "18 m" --readability "0.001 g"',
)
