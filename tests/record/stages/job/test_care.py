"""Care follows from system, material and what was put in; what is not known gets the strictest line."""

import re
from pathlib import Path

import pytest

import pentools
from pentools import tables
from pentools.calc.repairs.fitness import RepairRow
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.job.care import TOPICS, care_lines, care_of, care_of_mends, never_on, suggested_care
from pentools.record.stages.seal.kinds import SEALANTS
from pentools.record.stages.treatment.facts import limit_for
from pentools.systems.registry import SYSTEMS


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "one")


def arrive(job, system, material):
    job.add("intake", "arrival", {"pen": "a pen", "system": system, "material": material})


def test_every_system_every_material_and_every_sealant_has_its_line():
    for key in SYSTEMS:
        assert care_lines("system", key), key
    for material in {row["material"] for row in tables.rows("compatibility")} | {"unknown"}:
        assert care_lines("material", material), material
    for key, _ in SEALANTS:
        assert bool(care_lines("fitted", key)) == (key != "none"), key
    materials = {row["material"] for row in tables.rows("compatibility")}
    known = {
        "pen": {"any", "cool", "bears water", "bears no water", "decaying", "not mended"},
        "system": set(SYSTEMS),
        "material": materials | {"unknown"},
        "fitted": {key for key, _ in SEALANTS},
        "resting": {*SYSTEMS, *materials},
        "part": {"rubber ring", "glued crack", "welded crack", "wax", "ink window", "inner cap"},
    }
    for row in tables.rows("care_lines"):
        assert row["key"] in known[row["applies_to"]], row
        assert row["topic"] in TOPICS, row
        assert row["line"].endswith("."), row
        assert len(row["line"]) <= 160, row
        assert row["why"], row


def test_no_line_says_other_than_the_table_of_compatibility():
    """Against the verdict of the very material, and for every pen's lines against all of them."""
    verdicts = {(row["material"], row["treatment"]): row["verdict"] for row in tables.rows("compatibility")}
    treatments = {treatment for _, treatment in verdicts}
    checked = 0
    for row in tables.rows("care_lines"):
        against, allows = ({t.strip() for t in row[name].split(";") if t.strip()} for name in ("against", "allows"))
        assert against | allows <= treatments, row
        if row["applies_to"] == "material" and row["key"] != "unknown":
            assert {verdicts[row["key"], treatment] for treatment in against} <= {"never", "limited"}, row
            assert {verdicts[row["key"], treatment] for treatment in allows} <= {"ok", "limited"}, row
            checked += len(against) + len(allows)
    assert checked > 40


WARNS = {
    "cold water soak": r"\bsoak\b|no water|leave it in water",
    "hot water": r"hot water|\bheat\b|radiator|warm",
    "flush mix soak": r"ammonia|window cleaner",
    "bleach": r"bleach",
    "alcohol": r"alcohol|solvent",
    "acetone": r"solvent",
    "buffing wheel": r"polish|dry cloth only|lightly",
}


@pytest.mark.parametrize("treatment", WARNS)
def test_what_a_line_warns_of_is_what_its_words_say(treatment):
    for row in tables.rows("care_lines"):
        named = treatment in [t.strip() for t in row["against"].split(";")]
        if named:
            assert re.search(WARNS[treatment], row["line"], re.IGNORECASE) or row["key"] == "decaying", row
        if row["applies_to"] == "material" and re.search(
            r"ammonia|do not soak|never soak|bleach", row["line"], re.IGNORECASE
        ):
            assert row["against"], row


def test_a_lever_filler_of_celluloid(job):
    arrive(job, "lever-sac", "celluloid")
    said = suggested_care(job)
    assert said.startswith(
        "Use water-based fountain pen ink only. When you change ink or put it away, rinse it through the nib end only"
    )
    assert "lever up, lever down, count to ten" in said
    assert "Lift the lever slowly" in said
    assert "do not soak it" in said
    assert "Do not flush it with ammonia: it ages the rubber." in said
    assert said.count("celluloid") == 0
    assert said.endswith("before a flight or after the cold.")


@pytest.mark.parametrize("system", ["bulb", "diaphragm-pump", "sleeve-squeeze", "bellows", "pneumatic-down-stroke"])
def test_rubber_that_nobody_named_is_taken_as_latex(job, system):
    arrive(job, system, "hard rubber")
    assert "ages the rubber" in suggested_care(job)


def test_a_silicone_sac_has_its_own_line(job):
    arrive(job, "lever-sac", "celluloid")
    job.add("open", "material", {"part": "seals", "material": "silicone", "told_by": "clear", "sure": "yes"})
    said = suggested_care(job)
    assert "ages the rubber" not in said
    assert "do not leave ink in it for weeks" in said


def test_a_piston_has_no_rubber_to_age(job):
    arrive(job, "piston", "acrylic")
    said = suggested_care(job)
    assert "ammonia" not in said
    assert "greased when it grows stiff" in said
    assert "window cleaner" in said


@pytest.mark.parametrize("material", ["", "perhaps celluloid", "blue stuff"])
def test_a_body_that_is_not_named_gets_the_strictest_line(job, material):
    arrive(job, "piston", material)
    said = suggested_care(job)
    assert "heat, flame, solvents and closed plastic boxes" in said
    assert "do not soak it" in said


def test_cap_and_barrel_of_two_materials_are_both_told(job):
    arrive(job, "piston", "celluloid")
    job.add("open", "material", {"part": "cap", "material": "silver", "told_by": "mark", "sure": "yes"})
    said = suggested_care(job)
    assert "Polish it rarely" in said
    assert "closed plastic boxes" in said


def test_what_was_put_in_is_told_once(job):
    arrive(job, "lever-sac", "hard rubber")
    assert "radiator" not in suggested_care(job)
    for place in ("sac", "section"):
        job.add("seal", "sealant", {"sealant": "shellac", "place": place})
    said = suggested_care(job)
    assert said.count("off the radiator") == 1
    assert "dissolves" not in said  # the reason stays at the bench


MATERIALS = sorted({row["material"] for row in tables.rows("compatibility")} | {"unknown"})
SOAKED = re.compile(r"\b(not|never|no) soak\b|do not soak, |no water|not leave it in water", re.IGNORECASE)


@pytest.mark.parametrize("system", ["piston", "lever-sac", "safety"])
@pytest.mark.parametrize("material", MATERIALS)
def test_care_never_allows_what_the_table_forbids_nor_forbids_what_it_allows(job, material, system):
    """Every material, as body and cap, against the table's own verdicts on what an owner may come to do."""
    arrive(job, system, material)
    said = suggested_care(job)
    verdict = {treatment: limit_for(job, "barrel", treatment).verdict for treatment in ("cold water soak", "hot water", "flush mix soak", "bleach")}  # fmt: skip
    assert ("Flush it" in said) == (verdict["cold water soak"] == "ok")
    if verdict["cold water soak"] == "never":
        assert SOAKED.search(said), said
    if verdict["cold water soak"] == "ok":
        assert not SOAKED.search(said), said
    assert ("a little water in it" in said) == (verdict["cold water soak"] == "ok" and system == "piston")
    assert "nothing else" in said or "Do not fill it" in said, "no ammonia, no bleach, no alcohol"
    assert not re.search(r"\b(flush|rinse|clean)\b[^.]*\bwith (ammonia|alcohol|bleach|hot water)", said.replace("Do not flush it with ammonia", ""))  # fmt: skip


def test_a_decaying_body_is_not_filled(job):
    arrive(job, "piston", "crazed celluloid")
    said = suggested_care(job)
    assert said.startswith("Do not fill it")
    assert "ink" not in said
    assert "rinse" not in said


def test_black_rubber_that_looks_sound_is_not_soaked_by_any_word(job):
    arrive(job, "eyedropper", "black hard rubber")
    limit = limit_for(job, "barrel", "cold water soak")
    assert (limit.verdict, limit.max_minutes) == ("limited", 30)
    assert "may still brown" in limit.reason
    assert "do not soak it" in suggested_care(job)
    for row in tables.rows("materials"):
        if row["material"] == "hard rubber" and "water" in row["property"] and row["high"] == "1440":
            assert "not used" in row["text"]


def test_no_system_is_named_in_the_code_of_care():
    for module in ("care", "release"):
        text = (Path(pentools.__file__).parent / "record" / "stages" / "job" / f"{module}.py").read_text("utf-8")
        assert not [key for key in SYSTEMS if f'"{key}"' in text and key not in ("bulb", "bellows")], (
            module
        )  # parts too


def test_no_line_is_written_twice():
    keys = [(row["applies_to"], row["key"], row["topic"]) for row in tables.rows("care_lines")]
    assert len(set(keys)) == len(keys)


def test_the_sac_that_was_measured_stands_for_the_seals(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "sac-pen")
    job.add("intake", "arrival", {"pen": "x", "system": "lever-sac", "material": "acrylic"})
    for chosen, told in (
        ("latex", "latex"),
        ("silicone", "silicone"),
        ("PVC", "plasticised PVC"),
        ("pleated", "latex"),
    ):
        job.add("seal", "measure", {"place": "sac", "bore": "8 mm", "material": chosen})
        text = suggested_care(job)
        for name in ("latex", "silicone", "plasticised PVC"):
            said = [line for line in care_lines("material", name) if line.line in text]
            assert bool(said) is (name == told), (chosen, name)


WORDS = {"cold water soak": "soaking", "hot water": "hot water", "bleach": "bleach", "flush mix soak": "ammonia (it is in window cleaner)"}  # fmt: skip


@pytest.mark.parametrize("system", SYSTEMS)
def test_for_every_system_and_material_nothing_is_empty_long_or_against_the_table(job, system):
    for material in MATERIALS:
        arrive(job, system, material)
        told, never = care_of(job), never_on(job)
        assert (2 if material == "degrading celluloid" else 5) <= len(told) <= 12, material
        assert len({line.line for line in told}) == len(told), material
        for treatment, word in WORDS.items():
            verdict = limit_for(job, "barrel", treatment).verdict
            assert word in never or verdict != "never", (material, word)
            assert word not in never or verdict != "ok" or treatment != "cold water soak", (material, word)
        if any("ages the rubber" in line.line for line in told):
            assert WORDS["flush mix soak"] in never
        # nothing is recommended that is forbidden on the same card
        assert not {WORDS.get(treatment) for line in told for treatment in line.allows} & set(never), material


def test_no_ammonia_on_plated_brass_and_no_polish_on_gold_filled_trim(job):
    arrive(job, "piston", "nylon")
    assert never_on(job) == ("hot water", "nail-varnish remover", "bleach")
    job.add("open", "material", {"part": "clip", "material": "gold-filled", "told_by": "mark", "sure": "yes"})
    assert "ammonia (it is in window cleaner)" in never_on(job)
    assert "polish" in never_on(job)


@pytest.mark.parametrize("ending", ["stopped", "returned"])
def test_a_pen_that_goes_home_unmended_is_not_to_be_filled(job, ending):
    arrive(job, "lever-sac", "casein")
    job.add("release", "result", {"ending": ending, "summary": "It could not be opened."})
    said = suggested_care(job)
    assert said.startswith("It was not mended: do not fill it")
    assert "lever up" not in said
    assert "ink only" not in said
    assert "Never soak it" in said


def test_a_cork_that_was_measured_is_a_cork_and_grease_inside_is_no_joint(job):
    arrive(job, "piston", "acrylic")
    assert "ammonia (it is in window cleaner)" in never_on(job)  # acrylic crazes
    assert "Use it often." not in suggested_care(job)
    job.add("seal", "measure", {"place": "cork", "bore": "9 mm; 9 mm; 9 mm"})
    job.add("seal", "sealant", {"sealant": "grease", "place": "cork"})
    assert "Use it often." in suggested_care(job)
    assert "until the parts touch" not in suggested_care(job)
    job.add("seal", "sealant", {"sealant": "grease", "place": "section"})
    assert "until the parts touch" in suggested_care(job)


@pytest.mark.parametrize(
    ("kind", "texts"),
    [
        ("measure", {"bore": "9 mm"}), ("trial", {"what": "a cork", "dry": "yes", "happened": "too stiff"}),
        ("sealant", {"sealant": "none"}), ("", {}),
    ],
)  # fmt: skip
def test_a_cork_is_one_wherever_it_was_named(job, kind, texts):
    arrive(job, "piston", "acrylic")
    if kind:
        job.add("seal", kind, {"place": "cork", **texts})
    said = suggested_care(job)
    assert any(line.line in said for line in care_lines("material", "cork")) is bool(kind)


def test_every_pen_is_told_of_warmth_once(job):
    for material in MATERIALS:
        arrive(job, "piston", material)
        told = [line.line for line in care_of(job) if line.topic == "keeping"]
        warm = [line for line in told if any(word in line for word in ("heat", "radiator"))]
        assert len(warm) == 1, (material, told)


def parts_told(job):
    return {(line.applies_to, line.key) for line in care_of(job) if line.applies_to in ("part", "fitted")}


@pytest.mark.parametrize(
    ("part", "method", "told"),
    [
        ("cap", "cap-lip-glue", {("part", "glued crack")}),
        ("cap", "cap-lip-weld", {("part", "welded crack")}),
        ("barrel", "barrel-cement", {("part", "welded crack")}),
        ("inner-cap", "inner-cap-set", {("part", "inner cap"), ("fitted", "shellac")}),
        ("inner-cap", "inner-cap-new", {("part", "inner cap")}),
        ("cap", "cap-fade-leave", {("part", "wax")}),
        ("bands", "ring-dry", {("part", "wax")}),
        ("barrel", "window-rinse", {("part", "ink window")}),
        ("threads", "thread-build", {("fitted", "shellac")}),
        ("clip", "clip-tighten", set()),
    ],
)
def test_what_was_mended_is_told_of(job, part, method, told):
    arrive(job, "piston", "acrylic")
    assert parts_told(job) == set()
    job.add("repairs", "repair", {"part": part, "method": method})
    assert parts_told(job) == told
    assert len(care_of_mends(job)) == len([key for kind, key in told if kind == "part"])


def test_of_what_was_replaced_since_nothing_is_told(job):
    arrive(job, "lever-sac", "hard rubber")
    job.add("repairs", "repair", {"part": "cap", "method": "cap-lip-glue"})
    job.add("repairs", "repair", {"part": "cap", "method": "cap-lip-sleeve"})
    assert ("part", "glued crack") in parts_told(job)
    job.add("repairs", "repair", {"part": "cap", "method": "cap-lip-piece"})
    assert parts_told(job) == {("part", "welded crack")}


def test_every_care_that_a_repair_names_has_its_line():
    for row in tables.read(RepairRow, "part_repairs"):
        for key in row.care:
            assert care_lines("part", key) or care_lines("fitted", key), row.key
        assert ("wax" in row.method.replace("soft wax", "").replace("coloured wax", "")) == ("wax" in row.care), row.key
        assert ("shellac" in row.method + row.how and "or shellac" not in row.how.casefold()) <= (
            "shellac" in row.care
        ), row.key
