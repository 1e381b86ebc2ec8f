"""The shellac sum: a cut and a volume of alcohol in, flakes by weight out; or how to thin one cut to another."""

from __future__ import annotations

from pentools import tables
from pentools.calc.base.findings import Finding
from pentools.calc.treatment.mixtures import MixtureRow
from pentools.calc.treatment.shellac import check_chart, flakes_g, shellac_cut, thinning_parts
from pentools.fields import Field
from pentools.numbers import plain
from pentools.sums.base import Inputs, Sum, SumAnswer

__all__ = ["SHELLAC", "shellac_answer"]

FIELDS = (
    Field("cut", "Cut", "number", low=0.1, high=6, required=True, hint="pounds of flakes to a US gallon of alcohol, such as 3"),
    Field("alcohol", "Alcohol", "quantity", unit="ml", low=1, high=5000, default="30 ml", hint="such as 30 ml"),
    Field("thin_to", "Thin it to", "number", low=0.1, high=6, hint="the weaker cut wanted, such as 1"),
)  # fmt: skip


def shellac_answer(given: Inputs) -> SumAnswer:
    """Flakes for a cut of shellac, or alcohol to thin it.

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
        If the cut wanted is stronger than the one at hand.
    """
    pounds, alcohol, thin_to = given.needed("cut"), given.number("alcohol", 30.0), given.number("thin_to")
    cut = shellac_cut(pounds)
    flakes = flakes_g(pounds, alcohol)
    sentence = f"{flakes:.1f} g of flakes to {plain(alcohol, 6)} ml of alcohol make a {plain(pounds)} lb cut."
    findings = [Finding("warning", "treatment.fire:flakes")]
    parts = None
    if thin_to is not None:
        parts = thinning_parts(pounds, thin_to)
        sentence = (
            f"Add {parts:.2f} parts of alcohol to one part of the {plain(pounds)} lb cut for a {plain(thin_to)} lb cut."
        )
        for line in check_chart(tables.read(MixtureRow, "mixtures")):
            if (line.from_pounds, line.to_pounds) == (pounds, thin_to) and not line.agrees:
                way = "less" if line.off_share < 0 else "more"
                findings.append(Finding("note", "treatment.printed-chart", printed=line.printed_parts, off=abs(line.off_share), way=way))  # fmt: skip
    data = {
        "sentence": sentence,
        "flakes_g": flakes,
        "flakes_g_per_l_alcohol": cut.g_per_l_alcohol,
        "flakes_g_per_l_finished": cut.g_per_l_finished,
        "thinning_parts": parts,
        "findings": [f.as_json() for f in findings],
    }
    table = (
        ("quantity", "value"),
        ("flakes to a litre of alcohol", f"{cut.g_per_l_alcohol:.1f} g"),
        ("flakes in a litre of the finished solution", f"{cut.g_per_l_finished:.1f} g"),
        ("ounces to 8 US fl oz of alcohol", plain(cut.oz_per_8_fl_oz)),
    )
    return SumAnswer(sentence, data, tuple(findings), table, cut)


SHELLAC = Sum(
    "shellac",
    "Shellac cuts",
    "How many flakes make a cut of shellac, and how much alcohol thins one cut to another.",
    FIELDS,
    work=shellac_answer,
    example='pentools sums shellac --cut 3 --alcohol "30 ml" --thin-to 1',
)
