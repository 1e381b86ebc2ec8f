"""The heat sum: body and joint sealant in; window, limit and a sentence out, with the heatings so far if given."""

from __future__ import annotations

from pentools import tables
from pentools.calc.base.findings import gravest_first
from pentools.calc.treatment.heat_log import HeatPass, read_heat_log
from pentools.calc.treatment.heat_window import HeatLimitRow, HeatWindow, SealantRow, heat_window
from pentools.fields import Field
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.tables.source_words import source_words

__all__ = ["HEAT", "heat_answer"]

FIELDS = (
    Field("body", "Body", hint="such as celluloid, hard rubber, casein, acrylic, bare metal; unknown if it is not named", required=True),
    Field("sealant", "Joint sealant", default="unknown", hint="such as shellac, rosin and castor oil, beeswax, epoxy, none; unknown is taken as what softens last"),
    Field("passes", "Heatings so far", "quantities", unit="degC", low=15, high=150, hint="surface temperature of each, such as 48 °C; 55 °C"),
)  # fmt: skip


def heat_answer(given: Inputs) -> SumAnswer:
    """The heat window of a joint.

    Parameters
    ----------
    given : Inputs
        Values of the fields.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If a temperature is out of its range.
    """
    rows = tables.read(HeatLimitRow, "heat_limits")
    sealants = tables.read(SealantRow, "joint_sealants")
    window = heat_window(given.text("body", ""), given.text("sealant", ""), rows, sealants)
    findings = window.findings
    readings = [HeatPass(warmth) for warmth in given.numbers("passes")]
    stop = None
    if readings:
        rules = {row.rule: row.value for row in rows if row.material == "any" and row.value is not None}
        log = read_heat_log(
            readings,
            window.body_limit_c,
            stop_after=int(rules["heatings"]),
            largest_step_c=rules["step"],
            nitrate="celluloid" in window.body,
        )
        findings, stop = gravest_first((*log.findings, *findings)), log.stop
    sources = source_words(window.sources, "heat_limits", "joint_sealants")
    data = {
        "sentence": window.verdict,
        "body": window.body,
        "sealant": window.sealant,
        "taken_as": window.taken_as,
        "lets_go": window.lets_go,
        "window_first_c": window.window_first_c,
        "window_full_c": window.window_full_c,
        "kind": window.kind,
        "verdict": window.verdict,
        "body_limit_c": window.body_limit_c,
        "sealant_first_c": window.sealant_first_c,
        "sealant_full_c": window.sealant_full_c,
        "heatings": len(readings),
        "stop": stop,
        "certainty": window.certainty,
        "sources": list(sources),
        "findings": [f.as_json() for f in findings],
    }
    return SumAnswer(window.verdict, data, findings, _table(window, sources), window)


def _table(window: HeatWindow, sources: tuple[str, ...]) -> tuple[tuple[str, ...], ...]:
    def shown(value: float | None) -> str:
        none = "never warmed" if window.body_limit_c is None else "none: heat does not soften it"
        return none if value is None else f"{value:g} °C"

    return (
        ("quantity", "value"),
        ("limit of the body's surface", shown(window.body_limit_c)),
        ("sealant softens", _span(window)),
        ("window to first softening", shown(window.window_first_c)),
        ("window to full softening", shown(window.window_full_c)),
        ("how sure", window.certainty),
        *(("source", text) for text in sources),
    )


def _span(window: HeatWindow) -> str:
    if window.sealant_first_c is None or window.sealant_full_c is None:
        return "heat does not soften it"
    taken = f", taken as {window.taken_as}" if window.taken_as != window.sealant else ""
    return f"{window.sealant_first_c:g} to {window.sealant_full_c:g} °C{taken}"


HEAT = Sum(
    "heat",
    "Heat window of a joint",
    "How much room there is between the sealant softening and the body giving way, and what to do about it.",
    FIELDS,
    work=heat_answer,
    example="pentools sums heat --body celluloid --sealant shellac",
)
