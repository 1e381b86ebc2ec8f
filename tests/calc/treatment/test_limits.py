"""Limits of treatments, names of materials, no-harm tests."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

import pentools.calc.treatment.limits as module
from pentools import tables
from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.calc.treatment.limits import (
    VERDICTS,
    CompatibilityRow,
    MaterialRow,
    Overrule,
    identification_tests,
    strictest,
    treatment_limits,
)
from pentools.errors import InputError

ROWS = tables.read(CompatibilityRow, "compatibility")
MATERIALS = list(dict.fromkeys(row.material for row in ROWS))
TREATMENTS = list(dict.fromkeys(row.treatment for row in ROWS))


def topics(result):
    return {finding.topic: finding for finding in result.findings}


LEVELS = {"ok": "ok", "limited": "note", "never": "stop"}


def as_in_the_table(row):
    found = treatment_limits(row["material"], row["treatment"], ROWS)
    texts = (found.verdict, found.limit, found.reason, found.source, found.certainty)
    numbers = tuple("" if number is None else f"{number:g}" for number in (found.max_minutes, found.max_c))
    return (
        texts == tuple(row[name] for name in ("verdict", "limit", "reason", "source", "certainty"))
        and numbers == tuple(row[name] and f"{float(row[name]):g}" for name in ("max_minutes", "max_c"))
        and topics(found)["verdict"].level == LEVELS[row["verdict"]]
    )


def test_every_cell_comes_back_whole():
    assert [
        f"{row['material']}, {row['treatment']}" for row in tables.rows("compatibility") if not as_in_the_table(row)
    ] == []


@pytest.mark.parametrize("treatment", TREATMENTS)
@pytest.mark.parametrize("name", ["unknown", "", "some resin nobody knows"])
def test_unknown_is_as_strict_as_the_strictest(name, treatment):
    found = treatment_limits(name, treatment, ROWS)
    worst = max((treatment_limits(m, treatment, ROWS).verdict for m in MATERIALS), key=VERDICTS.index)
    assert found.verdict == worst
    assert topics(found)["not-named"].level == "warning"
    assert found.max_minutes == 0
    assert found.max_c is None


@given(st.lists(st.sampled_from(MATERIALS), min_size=1, max_size=5), st.sampled_from(TREATMENTS))
def test_several_parts_are_never_milder_than_one(materials, treatment):
    each = [treatment_limits(m, treatment, ROWS) for m in materials]
    joint = strictest(each)
    for one in each:
        assert VERDICTS.index(joint.verdict) >= VERDICTS.index(one.verdict)
        if one.max_minutes is not None:
            assert joint.max_minutes <= one.max_minutes
        if one.max_c is not None and joint.verdict != "never":
            assert joint.max_c <= one.max_c
    assert joint.reason in {one.reason for one in each}
    assert set(joint.decided_by) <= set(materials)


def test_brass_decides_for_a_section_with_a_brass_band():
    found = strictest([treatment_limits(m, "flush mix", ROWS) for m in ("hard rubber", "brass")])
    assert found.verdict == "never"
    assert found.decided_by == ("brass",)
    assert found.material == "hard rubber with brass"


def test_strictest_refuses_nothing_and_a_mixture():
    with pytest.raises(InputError):
        strictest([])
    with pytest.raises(InputError, match="one treatment"):
        strictest([treatment_limits("casein", "soak", ROWS), treatment_limits("casein", "heat", ROWS)])


def test_the_bench_overrules_with_a_reason_that_stays():
    own = Overrule("limited", "this barrel was soaked before and held", "ten minutes", 10)
    found = treatment_limits("casein", "soak", ROWS, overrule=own)
    assert (found.verdict, found.max_minutes, found.source) == ("limited", 10, "the bench")
    assert found.reason == own.reason
    assert found.overruled.verdict == "never"
    warned = topics(found)["overruled"]
    assert warned.level == "warning"
    assert found.overruled.reason in warned.text
    assert warned.text.endswith(CLOSING_LINE)


def test_overruling_to_the_stricter_side_is_only_noted():
    found = treatment_limits("hard rubber", "soak", ROWS, overrule=Overrule("never", "it looks dull"))
    assert topics(found)["overruled"].level == "note"


@pytest.mark.parametrize("own", [Overrule("ok", "  "), Overrule("perhaps", "because")])
def test_an_overrule_without_reason_or_verdict_is_refused(own):
    with pytest.raises(InputError):
        treatment_limits("casein", "soak", ROWS, overrule=own)


def test_weak_certainty_is_said():
    weak = treatment_limits("celluloid", "alcohol", ROWS)
    assert weak.certainty == "from memory"
    assert "from memory" in topics(weak)["certainty"].text
    assert "certainty" not in topics(treatment_limits("casein", "soak", ROWS))


def test_an_unknown_treatment_is_refused_with_a_hint():
    with pytest.raises(InputError, match="Did you mean ultrasonic"):
        treatment_limits("casein", "ultrasonc", ROWS)


def test_a_bad_verdict_in_a_row_and_a_missing_row_are_refused():
    row = replace(ROWS[0], verdict="maybe")
    with pytest.raises(InputError, match="ok, limited or never"):
        treatment_limits(row.material, row.treatment, [row])
    with pytest.raises(InputError, match="a row for"):
        treatment_limits("casein", "soak", [ROWS[0], replace(ROWS[1], material="casein")])


def test_no_harm_tests_do_no_harm():
    tests = identification_tests(tables.read(MaterialRow, "materials"))
    assert {test.material for test in tests} >= {"celluloid", "hard rubber", "casein", "acrylic", "polystyrene"}
    for test in tests:
        assert test.sign
        assert test.source
        assert not any(word in test.sign for word in ("flame", "needle", "acid", "solvent", "burn", "cut"))


def test_a_mild_merge_would_be_found(monkeypatch):
    # planted: taking the mildest instead of the strictest
    monkeypatch.setattr(module, "_strictness", lambda limit: (VERDICTS.index(limit.verdict), 0, 0))
    assert treatment_limits("unknown", "cold water soak", ROWS).verdict == "ok"


@pytest.mark.parametrize(("treatment", "topic"), [("solvent weld", "consent"), ("heat-set feed", "consent"), ("flush mix soak", "bleach"), ("bleach", "bleach")])  # fmt: skip
def test_what_goes_with_a_treatment_is_said(treatment, topic):
    material = {"solvent weld": "celluloid"}.get(treatment, "hard rubber")
    assert topics(treatment_limits(material, treatment, ROWS))[topic].level == "warning"
    assert topic not in topics(treatment_limits(material, "alcohol", ROWS))
    if topic == "consent":  # where it is never done there is nothing to agree to
        assert topic not in topics(treatment_limits("casein", treatment, ROWS))


def test_the_two_that_break_a_rule_on_purpose_do_not_move_the_rule():
    assert treatment_limits("celluloid", "acetone", ROWS).verdict == "never"
    assert treatment_limits("celluloid", "solvent weld", ROWS).verdict == "limited"
    assert treatment_limits("hard rubber", "dry heat", ROWS).max_c == 70
    assert treatment_limits("hard rubber", "heat-set feed", ROWS).max_c > 70
    assert treatment_limits("hard rubber", "hot water", ROWS).verdict == "never"
    assert {treatment_limits(m, "bleach", ROWS).verdict for m in MATERIALS} == {"never"}


def test_rows_that_were_wrong_stay_mended():
    found = {
        (material, treatment): treatment_limits(material, treatment, ROWS).verdict
        for material, treatment in (
            ("casein", "flush mix soak"), ("latex", "flush mix soak"), ("gold nib", "flush mix soak"), ("silicone", "flush mix soak"),
            ("celluloid", "cyanoacrylate"), ("cork", "cold water soak"), ("hard rubber", "cold water soak"), ("silicone", "shellac in alcohol"),
        )
    }  # fmt: skip
    assert list(found.values()) == ["never", "never", "limited", "never", "never", "limited", "limited", "never"]
    assert "off the pen" in treatment_limits("cork", "cold water soak", ROWS).limit
    assert treatment_limits("silicone", "shellac in alcohol", ROWS).limit == ""


def test_the_gravest_comes_first_whatever_is_said():
    for material in ("celluloid", "unknown", "latex"):
        for treatment in TREATMENTS:
            found = treatment_limits(material, treatment, ROWS).findings
            assert [f.level for f in found] == sorted((f.level for f in found), key=["stop", "warning", "note", "ok"].index)  # fmt: skip
