"""The mix sum: household ammonia and parts of water in; strength, pH, the room's air and refusals out."""

from __future__ import annotations

from collections.abc import Mapping

from pentools import tables
from pentools.calc.base.findings import Finding
from pentools.calc.treatment.limits import treatment_limits
from pentools.calc.treatment.materials import UNKNOWN, material_name
from pentools.calc.treatment.mixtures import air_limits_from_rows, flush_mix
from pentools.fields import Field, Value
from pentools.sums.base import Sum, SumAnswer
from pentools.units import Reading

__all__ = ["MIX", "mix_answer"]

TREATMENT_NAME = "flush mix soak"
FIELDS = (
    Field("ammonia", "Household ammonia", "quantity", unit="%", required=True, hint="strength by weight from the label, such as 7 %"),
    Field("parts_water", "Parts of water to one part", "number", low=1, high=200, default="9", hint="by volume, such as 9"),
    Field("jar", "How much is mixed", "quantity", unit="ml", low=1, high=5000, default="100 ml", hint="such as 100 ml"),
    Field("room", "Size of the room", "quantity", unit="m3", low=1, high=1000, default="30 m3", hint="such as 30 m3"),
    Field("beside", "What it would meet", "items", hint="materials, or anything that stands by, such as brass; casein; bleach"),
)  # fmt: skip


def mix_answer(values: Mapping[str, Value]) -> SumAnswer:
    """What a flush mix is.

    Parameters
    ----------
    values : mapping of str to Value
        Values of the fields; missing ones None.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If a figure is out of its range.
    """
    ammonia, jar, room = (values.get(name) for name in ("ammonia", "jar", "room"))
    assert isinstance(ammonia, Reading)
    parts = values.get("parts_water")
    parts_water = float(parts) if isinstance(parts, int | float) else 9.0
    things = values.get("beside")
    beside = [str(thing) for thing in things] if isinstance(things, tuple) else []
    refused, limited = _met(beside)
    mix = flush_mix(
        ammonia.value,
        parts_water,
        jar_ml=jar.value if isinstance(jar, Reading) else 100.0,
        room_m3=room.value if isinstance(room, Reading) else 30.0,
        air_limits=air_limits_from_rows(tables.rows("mixtures")),
        beside=beside,
        refused=refused,
    )
    findings = (*mix.findings, *limited)
    stops = [f.text for f in findings if f.topic == "refused"]
    sentence = f"One part of {ammonia.value:g} % ammonia and {parts_water:g} parts of water hold {mix.ammonia_percent_w_w:.2g} % of ammonia by weight, pH about {mix.ph:.1f}."
    sentence = f"{stops[0]} {sentence}" if stops else sentence
    data = {
        "sentence": sentence,
        "ammonia_percent_w_w": mix.ammonia_percent_w_w,
        "ammonia_mol_l": mix.ammonia_mol_l,
        "ph": mix.ph,
        "room_ppm": mix.room_ppm,
        "refused": bool(stops),
        "findings": [f.as_json() for f in findings],
    }
    table = (
        ("quantity", "value"),
        ("ammonia", f"{mix.ammonia_percent_w_w:.2f} % by weight, {mix.ammonia_mol_l:.2f} mol/l"),
        ("pH at 25 °C", f"about {mix.ph:.1f}"),
        ("worst air of the room", f"{mix.room_ppm:.0f} ppm"),
    )
    return SumAnswer(sentence, data, findings, table, mix)


def _met(beside: list[str]) -> tuple[dict[str, str], list[Finding]]:
    """Why each of the things may not meet the mix, and what is to be minded with those that may."""
    rows = tables.rows("compatibility")
    names = dict.fromkeys(row["material"] for row in rows)
    refused: dict[str, str] = {}
    limited: list[Finding] = []
    for thing in beside:
        name, unnamed = material_name(thing, names)
        if name == UNKNOWN and unnamed:
            refused[" ".join(thing.split()).casefold()] = "it is not in the table, so nothing is known of it"
            continue
        limit = treatment_limits(name, TREATMENT_NAME, rows)
        if limit.verdict == "never":
            refused[" ".join(thing.split()).casefold()] = limit.reason
        else:
            limited.append(Finding("note", limit.sentence, "verdict"))
    return refused, limited


MIX = Sum(
    "mix",
    "Flush mix",
    "How strong a mix of household ammonia and water is, its pH, what it puts into the air, and what it must not meet.",
    FIELDS,
    mix_answer,
    'pentools sums mix --ammonia "7 %" --parts-water 9',
)
