"""The mix sum: household ammonia and parts of water in; strength, pH, the room's air and refusals out."""

from __future__ import annotations

from pentools import tables
from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.treatment.hazards import HazardRow
from pentools.calc.treatment.limits import CompatibilityRow, treatment_limits
from pentools.calc.treatment.materials import UNKNOWN, material_name
from pentools.calc.treatment.mixtures import MixtureRow, air_limits_from_rows, flush_mix
from pentools.fields import Field
from pentools.numbers import fixed, plain
from pentools.sums.base import Inputs, Sum, SumAnswer

__all__ = ["MIX", "mix_answer"]

TREATMENT_NAME = "flush mix soak"
FIELDS = (
    Field("ammonia", "Household ammonia", "quantity", unit="%", required=True, hint="strength by weight from the label, such as 7 %"),
    Field("parts_water", "Parts of water to one part", "number", low=1, high=200, default="9", hint="by volume, such as 9"),
    Field("jar", "How much is mixed", "quantity", unit="ml", low=1, high=5000, default="100 ml", hint="such as 100 ml"),
    Field("room", "Size of the room", "quantity", unit="m3", low=1, high=1000, default="30 m3", hint="such as 30 m3"),
    Field("beside", "What it would meet", "items", hint="materials, or anything that stands by, such as brass; casein; bleach"),
)  # fmt: skip


def mix_answer(given: Inputs) -> SumAnswer:
    """What a flush mix is.

    Parameters
    ----------
    given : Inputs
        Values of the fields.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object; whatever says stop leads the sentence.

    Raises
    ------
    InputError
        If a figure is out of its range.
    """
    ammonia, parts = given.needed("ammonia"), given.number("parts_water", 9.0)
    beside = given.texts("beside")
    refused, limited = _met(beside)
    mix = flush_mix(
        ammonia,
        parts,
        jar_ml=given.number("jar", 100.0),
        room_m3=given.number("room", 30.0),
        air_limits=air_limits_from_rows(tables.read(MixtureRow, "mixtures")),
        beside=beside,
        refused=refused,
        hazards=tables.read(HazardRow, "substance_hazards"),
    )
    findings = gravest_first((*mix.findings, *limited))
    stops = [f for f in findings if f.level == "stop"]
    lead = "".join(f"{f.text} " if f.topic == "refused" else f"Stop: {f.text} " for f in stops)
    sentence = f"{lead}One part of {plain(ammonia)}\u202f% ammonia and {plain(parts)} parts of water hold {plain(mix.ammonia_percent_w_w, 2)}\u202f% of ammonia by weight, pH about {mix.ph:.1f}."
    data = {
        "sentence": sentence,
        "ammonia_percent_w_w": mix.ammonia_percent_w_w,
        "ammonia_mol_l": mix.ammonia_mol_l,
        "ph": mix.ph,
        "room_ppm": mix.room_ppm,
        "refused": any(f.topic == "refused" for f in stops),
        "stop": bool(stops),
        "findings": [f.as_json() for f in findings],
    }
    table = (
        ("quantity", "value"),
        ("ammonia", f"{mix.ammonia_percent_w_w:.2f}\u202f% by weight, {mix.ammonia_mol_l:.2f} mol/l"),
        ("pH at 25 °C", f"about {mix.ph:.1f}"),
        ("worst air of the room", f"{fixed(mix.room_ppm, 0)} ppm"),
    )
    return SumAnswer(sentence, data, findings, table, mix)


def _met(beside: tuple[str, ...]) -> tuple[dict[str, str], list[Finding]]:
    """Why each of the things may not meet the mix, and what is to be minded with those that may."""
    rows = tables.read(CompatibilityRow, "compatibility")
    names = dict.fromkeys(row.material for row in rows)
    refused: dict[str, str] = {}
    limited: list[Finding] = []
    for thing in beside:
        name, unnamed = material_name(thing, names)
        if name == UNKNOWN and unnamed:
            refused[" ".join(thing.split()).casefold()] = "it is not named in the table, so nothing is known of it"
            continue
        limit = treatment_limits(name, TREATMENT_NAME, rows)
        if limit.verdict == "never":
            refused[" ".join(thing.split()).casefold()] = limit.reason
        else:
            limited.append(Finding("note", "treatment.verdict", sentence=limit.sentence))
    return refused, limited


MIX = Sum(
    "mix",
    "Flush mix",
    "How strong a mix of household ammonia and water is, its pH, what it puts into the air, and what it must not meet.",
    FIELDS,
    work=mix_answer,
    example='pentools sums mix --ammonia "7 %" --parts-water 9',
)
