"""The sum mix: strength, refusals, and what it asks back."""

import pytest
from sums.treatment.asking import ask

from pentools.errors import InputError
from pentools.sums.treatment.mix import MIX


def test_mix():
    data = ask(MIX, ammonia="7 %", parts_water="9").data
    assert set(data) >= {"ammonia_percent_w_w", "ph", "findings"}
    assert 0.65 < data["ammonia_percent_w_w"] < 0.7  # close to a tenth of the bottle
    assert 11.35 < data["ph"] < 11.5  # between the mixes of 5 and 10 %
    assert data["refused"] is False
    assert any(f["topic"] == "bleach" for f in data["findings"])


@pytest.mark.parametrize(
    "thing", ["casein", "plated brass", "latex sac", "brass", "bleach", "faded hard rubber", "unknown", "vinegar"]
)
def test_mix_is_refused(thing):
    answer = ask(MIX, ammonia="5 %", beside=f"nylon; {thing}")
    assert answer.data["refused"] is True
    assert answer.sentence.startswith("Refused")


def test_the_gravest_refusal_comes_first():
    assert "chloramine" in ask(MIX, ammonia="5 %", beside="brass; bleach").sentence


def test_mix_beside_what_bears_it():
    answer = ask(MIX, ammonia="5 %", beside="stainless steel; celluloid")
    assert answer.data["refused"] is False
    assert any("inside the section only" in f.text for f in answer.findings)


@pytest.mark.parametrize(("typed", "said"), [("28 %", "laboratory"), ("7", "unit is missing"), ("0.07 %", "per cent")])
def test_mix_asks_back(typed, said):
    with pytest.raises(InputError, match=said):
        ask(MIX, ammonia=typed)


def test_every_figure_of_a_mix_by_hand():
    """7 % of 0.969 g/mL (a handbook's densities) with nine parts of 0.998: 0.0678/9.951; 6.78 g a litre; 0.678 g into 30 m³ of 0.6966 mg/m³ a ppm."""
    answer = ask(MIX, ammonia="7 %")
    assert answer.sentence == (
        "One part of 7\u202f% ammonia and 9 parts of water hold 0.68\u202f% of ammonia by weight, pH about 11.4."
    )
    data = answer.data
    assert (data["ammonia_percent_w_w"], data["ammonia_mol_l"]) == pytest.approx((0.6816, 0.3983), abs=1e-4)
    assert data["room_ppm"] == pytest.approx(678.3 / 30 / 0.6966, rel=1e-3)
    # √(Kb · c) = √(1.8e-5 · 0.398): pOH 2.57
    assert data["ph"] == pytest.approx(14 - 2.574, abs=0.002)
    assert (data["refused"], data["stop"]) == (False, False)
    assert answer.table == (
        ("quantity", "value"), ("ammonia", "0.68\u202f% by weight, 0.40 mol/l"), ("pH at 25 °C", "about 11.4"), ("worst air of the room", "32 ppm"),
    )  # fmt: skip


def test_jar_room_and_what_stands_by_are_handed_on():
    strong = {"ammonia": "10 %", "parts_water": "4"}
    small, large = ask(MIX, **strong, jar="50 ml", room="60 m3"), ask(MIX, **strong, jar="250 ml", room="12 m3")
    assert large.data["room_ppm"] == pytest.approx(25 * small.data["room_ppm"])
    assert (small.data["stop"], large.data["stop"], large.data["refused"]) == (False, True, False)
    assert large.sentence.startswith(
        "Stop: If all 250 ml evaporated in a closed room of 12 m³ its air would hold 572 ppm, above 25 ppm "
    )
    both = ask(MIX, **strong, jar="250 ml", room="12 m3", beside="stainless steel; casein")
    assert both.sentence.startswith("Refused on casein: water and alkali swell the protein. Stop: If all 250 ml")
    assert both.data["refused"] is True
    assert [f.level for f in both.findings if f.topic == "verdict"] == ["note"]
    strange = ask(MIX, ammonia="5 %", beside="Grandmother's   Glue")
    assert "grandmother's glue: it is not named in the table, so nothing is known of it" in strange.sentence
