"""The order sum: what it hands over, what it refuses, and where an order stands."""

import pytest
from sums.treatment.asking import ask

from pentools import care, order
from pentools.errors import InputError
from pentools.sums.closing.order import ORDER
from pentools.systems.registry import SYSTEMS

KEYS = {"step", "before", "test", "reversible", "caution"}


@pytest.mark.parametrize("way", ["open", "close"])
@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_answers_both_ways(system, way):
    data = ask(ORDER, system=system, way=way, material="celluloid").data
    assert data["way"] == way
    assert len(data["steps"]) >= 4
    for number, step in enumerate(data["steps"], 1):
        assert set(step) >= KEYS
        assert step["number"] == number
        assert isinstance(step["before"], list)
        assert step["reversible"] in ("yes", "partly", "no")
        assert step["step"].endswith(".")
        assert step["certainty"]


def test_what_stands_in_a_step():
    step = ask(ORDER, system="lever-sac", material="celluloid", fitted="silicone sac").data["steps"][5]
    assert (step["key"], step["closes"], step["reversible"], step["cure_h"]) == ("sac-on", True, "partly", 24)
    assert step["before"] == ["The cut sac clears bar and barrel.", "Seats are bare: no old rubber and no old sealant."]
    assert step["test"].startswith("After 24 h: close the nib end with a finger")
    assert "Silicone adhesive instead of shellac" in step["caution"]
    assert any("Silicone adhesive instead" in words for words in step["changes"])


def test_both_sources_on_shellac_for_sections_are_shown():
    steps = ask(ORDER, system="lever-sac").data["steps"]
    sealed = next(step for step in steps if step["key"] == "sealed")
    assert "some take it as usual" in sealed["caution"]
    assert "others advise against it" in sealed["caution"]
    assert len(sealed["sources"]) == 3


def test_an_order_that_is_begun_says_what_is_next():
    answer = ask(ORDER, system="button-sac", material="acrylic", done="1; 2; 3", tested="1; nib-set")
    assert answer.sentence == "Button sac filler: next is to test step 3 of 11, the section joint."
    assert answer.data["next"] == 3
    assert [step["state"] for step in answer.data["steps"][:4]] == ["done", "done", "untested", "early"]
    every = "; ".join(str(n) for n in range(1, 12))
    done = ask(ORDER, system="button-sac", material="acrylic", done=every, tested=every)
    assert done.data["next"] is None
    assert done.sentence == "Button sac filler: all 11 steps are done; it is together, and tested on the way."


def test_a_bar_that_goes_in_first_holds_nothing_but_is_told_and_a_closed_one_stops():
    out_of_order = ask(ORDER, system="button-sac", material="acrylic", done="bar-in; section-home", tested="bar-in; section-home")  # fmt: skip
    topics = [f.topic for f in out_of_order.findings]
    assert "skipped" in topics
    assert "shut" in topics
    assert out_of_order.findings[0].level == "stop"


def test_nothing_named_takes_the_strictest():
    assert ask(ORDER, system="lever-sac").data["materials"] == ["unknown"]
    assert ask(ORDER, system="lever-sac", material="plastic").data["materials"] == ["unknown"]
    assert any("not named" in f.text for f in ask(ORDER, system="lever-sac").findings)


def test_several_materials_are_each_told():
    found = ask(ORDER, system="lever-sac", material="celluloid; casein", fitted="latex sac").data
    assert found["materials"] == ["celluloid", "casein", "latex"]
    assert {f["text"].split(":")[0] for f in found["findings"] if f["topic"] == "material"} == {"celluloid", "casein", "latex"}  # fmt: skip


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ({"system": "steam"}, "Filling system"),
        ({"system": "piston", "done": "12"}, "Steps done"),
        ({"system": "piston", "done": "bar-in"}, "Steps done"),
        ({"system": "piston", "done": "1", "tested": "2"}, "Tests passed"),
        ({"system": "piston", "way": "open", "done": "1", "tested": "1"}, "Tests passed"),
        ({"system": "piston", "way": "open", "done": "pictured"}, "Steps done"),
        ({"system": "piston", "fitted": "bubble gum"}, "Sac, ring or cork"),
    ],
)
def test_what_cannot_be_is_refused_by_name(typed, name):
    with pytest.raises(InputError, match=name):
        ask(ORDER, **typed)


def test_the_sentence_says_how_many_and_what_does_not_come_back():
    assert ask(ORDER, system="lever-sac").sentence == (
        "Lever sac filler: put together in 11 steps, each tested before the next. Closing something in: 6, 8 and 10. Not to be taken back: 1 and 5."
    )
    assert ask(ORDER, system="piston", way="open").sentence == "Piston filler: taken apart in 6 steps."


def test_the_table_has_a_row_a_step_and_says_how_sure_it_is():
    table = ask(ORDER, system="safety").table
    assert len(table) == 1 + len(ask(ORDER, system="safety").data["steps"])
    assert {row[-1] for row in table[1:]} <= {"common practice", "from memory", "judged", "seen on a trade page"}


@pytest.mark.parametrize(
    ("said", "key"),
    [
        ("lever", "lever-sac"), ("lever filler", "lever-sac"), ("button filler", "button-sac"), ("crescent", "crescent-sac"),
        ("squeeze filler", "sleeve-squeeze"), ("pump", "diaphragm-pump"), ("diaphragm pump", "diaphragm-pump"),
        ("plunger", "plunger-vacuum"), ("safety pen", "safety"), ("converter", "cartridge-converter"), ("eye-dropper", "eyedropper"),
        ("down-stroke pneumatic", "pneumatic-down-stroke"),
    ],
)  # fmt: skip
def test_a_system_may_be_named_as_one_speaks_of_it(said, key):
    assert order(said).data["system"] == key


@pytest.mark.parametrize("said", ["pneumatic", "sac", "filler", "stylograph"])
def test_what_names_several_systems_or_none_is_refused_with_those_there_are(said):
    with pytest.raises(InputError, match="Filling system must be one of: eyedropper, lever-sac"):
        order(said)


@pytest.mark.parametrize("answered", [order, care])
def test_a_body_that_cannot_be_read_is_taken_as_not_named_and_that_is_said(answered):
    answer = answered("lever-sac", material="chocolate")
    [said] = [finding.text for finding in answer.findings if finding.topic == "not-read"]
    assert "chocolate" in said
    assert answer.data["materials"] == ["unknown"]
    assert any(finding["text"] == said for finding in answer.data["findings"])
    assert not [f for f in answered("lever-sac", material="ebonite").findings if f.topic == "not-read"]
    assert not [f for f in answered("lever-sac").findings if f.topic == "not-read"]


def test_a_sac_of_the_material_that_a_step_does_not_want_is_warned_of():
    found = [
        f.text for f in order("pneumatic-extending-tube", fitted="silicone sac").findings if f.topic == "other-fitted"
    ]
    assert found == ["Step 4, the sac, wants another material than the silicone that is to go in."]
    for system, fitted in (("pneumatic-extending-tube", "latex sac"), ("lever-sac", "silicone sac")):
        assert [f for f in order(system, fitted=fitted).findings if f.topic == "other-fitted"] == []
