"""The pattern that names a seal, in every filling system; by brute force, no pen is told of a part that it has not."""

import itertools

import pytest

from pentools import tables
from pentools.calc.seal.faults import SignRow, SuspectRow, WayRow, faults_from_rows, suspect_seal
from pentools.errors import InputError
from pentools.tables.seals import faults

TABLE = faults()
SYSTEMS = [row["key"] for row in tables.rows("filling_systems")]
PARTS = {
    # what leaks where, written down from the trade's own names of the parts; not read from the table under test
    "eyedropper": {"section", "inner cap", "barrel", "air"},
    "lever-sac": {"section", "inner cap", "sac"},
    "button-sac": {"section", "inner cap", "sac"},
    "crescent-sac": {"section", "inner cap", "sac"},
    "slot-sac": {"section", "inner cap", "sac"},
    "sleeve-squeeze": {"section", "inner cap", "sac"},
    "bulb": {"section", "inner cap", "bulb", "barrel", "air"},
    "diaphragm-pump": {"section", "inner cap", "diaphragm", "barrel", "air"},
    "plunger-vacuum": {"section", "inner cap", "head", "packing", "barrel", "air"},
    "piston": {"section", "inner cap", "head", "barrel", "air"},
    "syringe": {"section", "inner cap", "head", "packing", "barrel", "air"},
    "pneumatic-down-stroke": {"section", "inner cap", "sac", "tube ring"},
    "pneumatic-extending-tube": {"section", "inner cap", "sac", "tube ring", "gaskets"},
    "bellows": {"section", "inner cap", "sac"},
    "safety": {"packing", "cap seat", "barrel"},
    "capillary": {"section", "inner cap", "cell"},
    "cartridge-converter": {"section", "inner cap", "collar", "converter", "air"},
}
WORDS = {
    # a word of a way to test, and the systems that have the thing
    "plunger": {"plunger-vacuum", "syringe"},
    "head": {"plunger-vacuum", "piston", "syringe"},
    "rod": {"plunger-vacuum", "syringe"},
    "shaft": {"plunger-vacuum", "syringe"},
    "sac": {"lever-sac", "button-sac", "crescent-sac", "slot-sac", "sleeve-squeeze", "bellows"},
    "bulb": {"bulb"},
    "pump": {"diaphragm-pump"},
    "tube": {"pneumatic-down-stroke", "pneumatic-extending-tube"},
    "converter": {"cartridge-converter"},
    "nib in": {"safety"},
}


def told(results, system="plunger-vacuum"):
    return suspect_seal(results, system, TABLE)


def test_every_filling_system_of_the_table_is_served():
    assert set(PARTS) == set(SYSTEMS)
    assert {key: set(TABLE.mechanisms[key].suspects) for key in SYSTEMS} == PARTS
    assert set(TABLE.mechanisms) == {*SYSTEMS, "any"}


def test_every_suspect_can_be_named_by_some_test():
    missing = [
        (system, suspect)
        for system, mechanism in TABLE.mechanisms.items()
        for suspect in mechanism.suspects
        if not any(points.get(suspect, 0) >= 1 for results in mechanism.signs.values() for points in results.values())
    ]
    assert missing == []


@pytest.mark.parametrize("system", [*SYSTEMS, "any"])
def test_brute_force_over_all_answers(system):
    """Every chain of answers ends, asks no test twice, and names no part and no tool that the pen has not."""
    mechanism = TABLE.mechanisms[system]
    strange = {
        words for other in TABLE.mechanisms.values() for name, words in other.suspects.items()
        if name not in mechanism.suspects
    }  # fmt: skip
    ends = 0
    waiting = [{}]
    while waiting:
        results = waiting.pop()
        found = told(results, system)
        said = " ".join(f.text for f in found.findings)
        assert not [words for words in strange if words in said], said
        assert {s.suspect for s in found.suspicions} == set(mechanism.suspects)
        if not found.next_test:
            ends += 1
            assert found.named or found.clear or "No test is left" in said, (results, said)
            continue
        assert not found.named
        assert found.next_test not in results, "a circle"
        way = mechanism.ways[found.next_test]
        assert way in said
        assert not [
            word for word, has in WORDS.items() if f" {word}" in way and system not in has and system != "any"
        ], way
        answers = mechanism.signs[found.next_test]
        assert len(answers) > 1, found.next_test
        waiting += [{**results, found.next_test: answer} for answer in answers]
    assert ends > 1


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_symptom_has_a_next_test_or_a_name(system):
    for test, results in TABLE.mechanisms[system].signs.items():
        for result in results:
            found = told({test: result}, system)
            assert found.named == "", "one test alone names no seal"
            assert found.next_test in TABLE.mechanisms[system].ways
            assert not found.clear


@pytest.mark.parametrize("system", SYSTEMS)
def test_damp_is_never_cleared(system):
    """Whatever else is dry: a damp place, expected or not, keeps the pen from being cleared."""
    good = {
        t: r
        for t, results in TABLE.signs.items()
        for r, points in results.items()
        if all(v <= 0 for v in points.values())
    }
    for test, results in TABLE.signs.items():
        for result, points in results.items():
            if all(v <= 0 for v in points.values()):
                continue
            found = told({**{t: r for t, r in good.items() if t != test}, test: result}, system)
            assert not found.clear, (test, result)
            assert not [f for f in found.findings if f.level == "ok"]


def test_a_bad_sign_that_no_part_explains_is_said():
    found = told({"overnight": "behind the head", "capped": "dry"}, "diaphragm-pump")
    assert found.findings[0].topic == "unexplained"
    assert "overnight: behind the head" in found.findings[0].text
    assert found.next_test


@pytest.mark.parametrize(
    ("results", "system", "named"),
    [
        ({"spring-back": "none", "shaft": "bubbles", "overnight": "at the rod's end"}, "plunger-vacuum", "packing"),
        ({"spring-back": "none", "shaft": "no bubbles"}, "plunger-vacuum", "head"),
        ({"spring-back": "part", "overnight": "behind the head", "shaft": "no bubbles"}, "plunger-vacuum", "head"),
        ({"spring-back": "returns", "vacuum": "decays", "overnight": "at the section"}, "plunger-vacuum", "section"),
        ({"press": "bubbles go on", "overnight": "in the barrel"}, "lever-sac", "sac"),
        ({"press": "bubbles at the joint", "overnight": "at the section"}, "button-sac", "section"),
        ({"overnight": "dry", "capped": "ink in the cap, pen dry when open", "vacuum": "holds"}, "piston", "inner cap"),
        ({"press": "bubbles stop", "overnight": "in the cap", "capped": "ink in the cap, pen dry when open"}, "slot-sac", "inner cap"),
        ({"overnight": "at the section", "powder": "at the joint"}, "eyedropper", "section"),
        ({"overnight": "on the barrel's wall", "powder": "on the wall"}, "eyedropper", "barrel"),
        ({"overnight": "from the nib", "tissue": "drops only when warm or half empty"}, "eyedropper", "air"),
        ({"overnight": "at the knob or blind end", "press": "bubbles go on"}, "diaphragm-pump", "diaphragm"),
        ({"overnight": "at the knob or blind end", "mouth": "it gives way"}, "bulb", "bulb"),
        ({"overnight": "at the barrel's mouth", "capped": "ink in the cap, pen dry when open"}, "safety", "cap seat"),
        ({"overnight": "in the barrel", "mouth": "it holds", "powder": "nowhere"}, "cartridge-converter", "collar"),
        ({"overnight": "from the nib", "tissue": "drops all the time"}, "capillary", "cell"),
        ({"mouth": "it gives way", "overnight": "dry"}, "pneumatic-down-stroke", "tube ring"),
    ],
)  # fmt: skip
def test_patterns_name_a_seal(results, system, named):
    found = told(results, system)
    assert found.named == named
    assert TABLE.mechanisms[system].suspects[named] in found.findings[0].text
    assert found.findings[0].level == "warning"
    assert found.suspicions[0].signs


def test_a_pattern_that_does_not_decide_asks_for_the_test_that_does():
    found = told({"spring-back": "none"})
    assert found.named == ""
    assert found.next_test == "shaft"
    assert "hold the rod's end under water" in found.findings[0].text
    assert found.findings[0].text.startswith("One test does not name a seal.")


def test_all_clear_needs_more_than_one_test():
    one = told({"spring-back": "returns"})
    assert (one.findings[0].level, one.clear) == ("note", False)
    assert one.next_test
    two = told({"spring-back": "returns", "overnight": "dry"})
    assert (two.findings[0].level, two.clear) == ("ok", True)
    assert two.findings[0].text == "Nothing wrong in 2 tests."
    assert told({}).findings[0].topic == "no-tests"
    assert told({}).next_test == "overnight"


def test_a_named_seal_always_has_a_sign_and_a_second_test():
    for (a, ra), (b, rb) in itertools.combinations([(t, r) for t, results in TABLE.signs.items() for r in results], 2):
        found = told({a: ra, b: rb}) if a != b else told({a: ra})
        if found.named:
            first = found.suspicions[0]
            cleared = {c for other in found.suspicions[1:] for c in other.clears}
            assert first.signs
            assert first.points > 0
            assert len(set(first.signs) | cleared) >= 2


def test_a_lead_of_one_point_names_nothing_while_another_has_signs():
    found = told(
        {"vacuum": "slow", "overnight": "at the section", "capped": "ink in the cap, section damp too"}, "lever-sac"
    )
    assert found.named == "section"
    close = told({"press": "bubbles go on", "overnight": "at the section"}, "lever-sac")
    # sac 2, section 1 + 2
    assert [(s.suspect, s.points) for s in close.suspicions[:2]] == [("section", 3), ("sac", 2)]
    assert close.named == ""
    assert "the section joint and the sac or its nipple stand too close" in close.findings[0].text


def test_what_is_not_known_is_refused():
    with pytest.raises(InputError, match="filling system"):
        told({}, "spoon")
    with pytest.raises(InputError, match="test must be"):
        told({"smell": "bad"})
    with pytest.raises(InputError, match="result of the shaft test"):
        told({"shaft": "dry"})


def test_rows_that_cannot_be_read_are_refused():
    suspects, ways = tables.read(SuspectRow, "seal_suspects"), tables.read(WayRow, "seal_tests")
    for wrong in ((), ("head two",), ("lid +1",), ("head +1", "")):
        with pytest.raises(InputError, match="points of a sign"):
            faults_from_rows(suspects, ways, [SignRow("shaft", "x", wrong)])
    with pytest.raises(InputError, match="test of a sign"):
        faults_from_rows(suspects, ways, [SignRow("smell", "x", ("head +1",))])
