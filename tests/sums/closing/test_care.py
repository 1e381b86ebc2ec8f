"""The care sum: lines by system, material and what was put in; never against the table; inks as findings."""

import re

import pytest
from sums.treatment.asking import ask

from pentools import order, tables
from pentools.calc.treatment.limits import CompatibilityRow, treatment_limits
from pentools.errors import InputError
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.job.care import care_of, inks_of, never_on
from pentools.record.stages.seal.kinds import SEALANTS
from pentools.sums.closing.care import CARE, care_rows, fitted_here, ink_rows, rubber_of
from pentools.systems.registry import SYSTEMS

MATERIALS = sorted({row["material"] for row in tables.rows("compatibility")} | {"unknown"})
GRID = tables.read(CompatibilityRow, "compatibility")
ORDERS = {
    "cold water soak": r"\bsoak it\b|leave it in water|stand in water|a little water in it|^Flush it",
    "flush mix soak": r"with ammonia|window cleaner",
    "hot water": r"with hot water",
    "alcohol": r"with alcohol",
    "bleach": r"with bleach",
    "buffing wheel": r"\bpolish it\b",
}
"""What a line would say that told an owner to do it."""
FORBIDS = r"\b(not|never|no|away|against|renewed|rarely)\b"


@pytest.mark.parametrize("system", SYSTEMS)
def test_no_line_tells_to_do_what_the_table_forbids(system):
    """Over every material: care and treatment never contradict each other (they did for hard rubber)."""
    for material in MATERIALS:
        answer = ask(CARE, system=system, material=material)
        lines, never = answer.data["lines"], answer.data["never"]
        for treatment, tells in ORDERS.items():
            verdict = treatment_limits(material, treatment, GRID).verdict
            for line in lines:
                if re.search(tells, line) and not re.search(FORBIDS, line, re.IGNORECASE):
                    assert verdict == "ok", (material, treatment, line)
        assert lines[-1] == f"Never: {', '.join(never)}."
        assert len(lines) == len(set(lines))
        assert answer.sentence.endswith(".")


def test_what_the_issue_of_care_names():
    casein = ask(CARE, system="lever-sac", material="casein", fitted="latex sac").data
    assert "ammonia (it is in window cleaner)" in casein["never"]
    assert "soaking" in casein["never"]
    assert any("count to ten" in line for line in casein["lines"])
    rubber = ask(CARE, system="lever-sac", material="hard rubber", fitted="silicone sac; silicone adhesive").data
    assert any("do not soak it" in line for line in rubber["lines"])
    assert any("vinegar" in line for line in rubber["lines"])
    assert any("do not leave ink in it for weeks" in line for line in rubber["lines"])
    assert not any("ages the rubber" in line for line in rubber["lines"])
    plated = ask(CARE, system="piston", material="acrylic; gold-filled").data
    assert "ammonia (it is in window cleaner)" in plated["never"]
    assert any("warm up uncapped before a flight" in line for line in plated["lines"])


def test_inks_are_findings_that_say_how_sure_they_are():
    found = ask(CARE, system="lever-sac", material="acrylic", nib="steel").findings
    inks = {f.values["ink"]: f for f in found if f.topic == "ink"}
    assert inks["Pigment ink"].text.endswith("(common practice).")
    assert inks["Shimmer ink"].text.endswith("(common practice).")
    assert inks["Iron-gall ink"].level == "warning"  # the nib's reason is graver than the sac's
    assert "steel" in inks["Iron-gall ink"].text
    assert ask(CARE, system="lever-sac", material="acrylic", nib="gold nib").data["findings"] != [f.as_json() for f in found]  # fmt: skip


def test_what_was_put_in_is_understood_or_refused():
    assert fitted_here(["latex sac", "shellac joint", "O-ring", "glued crack", "silicone-set sac", "cork seal"]) == (
        ("latex", "cork"), ("shellac", "silicone"), ("rubber ring", "glued crack"),
    )  # fmt: skip
    with pytest.raises(InputError, match="What was put in"):
        ask(CARE, system="piston", fitted="chewing gum")
    with pytest.raises(InputError, match="Nib"):
        ask(CARE, system="piston", nib="bamboo")
    parts = {row.key for row in care_rows() if row.applies_to == "part"}
    for words in ("rubber ring", "glued crack", "welded crack", "wax", "ink window", "inner cap"):
        assert fitted_here([words])[2] == (words,)
        assert words in parts


def test_every_sealant_of_the_seal_stage_is_understood_by_its_name():
    for key, words in SEALANTS:
        if key != "none":
            assert fitted_here([words])[1] == (key,), words
    assert fitted_here(["thread sealant"])[1] == ("rosin",)


@pytest.mark.parametrize(
    "words", ["brass ring", "trim ring", "steel nib", "gold nib", "celluloid", "talc", "size 18 sac", "sac"]
)
def test_what_is_no_seal_is_refused_and_drives_no_seal_out(words):
    with pytest.raises(InputError, match="What was put in"):
        fitted_here([words])
    with pytest.raises(
        InputError, match="Sac, ring or cork must be latex, silicone, plasticised PVC or cork, or a rubber ring"
    ):
        order("lever-sac", fitted=words)


@pytest.mark.parametrize(
    ("words", "seals", "parts"),
    [
        ("cork piston", ("cork",), ()), ("necked latex sac, size 18", ("latex",), ()), ("EPDM ring", (), ("rubber ring",)),
        ("new rubber washer", (), ("rubber ring",)), ("silicone ring", ("silicone",), ()), ("PVC sac", ("plasticised PVC",), ()),
    ],
)  # fmt: skip
def test_a_seal_is_known_by_what_it_is_made_of(words, seals, parts):
    assert fitted_here([words]) == (seals, (), parts)
    assert order("piston", material="acrylic", fitted=words).data["materials"] == ["acrylic", *seals]


def test_shellac_on_a_silicone_sac_is_warned_of_and_a_body_not_named_is_said():
    topics = [f.topic for f in ask(CARE, system="lever-sac", fitted="silicone sac; shellac").findings]
    assert {"shellac-silicone", "not-named"} <= set(topics)
    assert "not-named" not in [f.topic for f in ask(CARE, system="lever-sac", material="acrylic").findings]


def test_a_sac_nobody_named_is_latex_and_a_piston_has_none():
    assert rubber_of("lever-sac") == rubber_of("diaphragm-pump") == ("latex",)
    assert rubber_of("piston") == rubber_of("steam") == ()


def test_the_job_s_card_says_what_the_sum_says(tmp_path):
    """One set of lines: what the record's card tells is what the sum tells of the same pen."""
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "one")
    for system, material in (("lever-sac", "hard rubber"), ("piston", "celluloid"), ("eyedropper", "casein")):
        job.add("intake", "arrival", {"pen": "a pen", "system": system, "material": material})
        data = ask(CARE, system=system, material=material).data
        assert [row["line"] for row in data["rows"]] == [line.line for line in care_of(job)]
        assert data["never"] == list(never_on(job))
        assert [f.text for f in inks_of(job)] == [f["text"] for f in data["findings"]]
    assert len(ink_rows()) > 10
