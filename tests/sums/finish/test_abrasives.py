"""The sums abrasives and grade: options in, JSON out."""

import json

import pytest

from pentools.errors import InputError
from pentools.sums.base import read_options
from pentools.sums.finish.abrasives import ABRASIVES, read_defect, read_finish, read_owned
from pentools.sums.finish.grade import GRADE


def ask(one, **texts):
    return one.run(read_options(one.fields, texts))


def plan(**texts):
    return ask(
        ABRASIVES, **{"material": "celluloid", "defect": "40 um", "own": "P400; cushioned 1500 to 12000", **texts}
    )


def test_options_are_the_ones_promised():
    options = {field.option for field in ABRASIVES.fields}
    assert {"--material", "--defect", "--finish", "--own", "--zone"} <= options
    assert GRADE.positional == GRADE.fields[0].name == "grade"


def test_json_keys():
    data = json.loads(json.dumps(plan().data))
    assert {"steps", "removed_total_um", "budget_um", "findings"} <= set(data)
    assert {"scale", "grade", "particle_um", "finish_um", "ratio", "removed_um", "unmask", "wet", "note"} <= set(
        data["steps"][0]
    )
    assert data["steps"][0]["ratio"] is None
    assert data["budget_um"] == 50
    assert data["removed_total_um"] == pytest.approx(sum(s["removed_um"] for s in data["steps"]), abs=0.01)
    assert [s["grade"] for s in data["steps"] if s["unmask"]] == ["6000"]
    assert data["unmask_at"] == "cushioned 6000"
    assert data["findings"][0]["level"] == "stop"
    assert data["reduced"]["removed_total_um"] <= 50
    assert data["reduced"]["reduced"] is None


def test_sentences():
    assert "Reduce the defect, do not remove it" in plan().sentence
    assert "over" not in plan(defect="8 um").sentence
    assert plan(zone="imprint").sentence.startswith("Leave the zone")
    assert plan(zone="imprint").table == ()
    assert len(plan().table) == 11


def test_the_worked_stock_sums():
    ladder = "P600; P1200; film 9 um; film 5 um; film 3 um; film 2 um"
    assert plan(defect="20 um", finish="2 um", own=ladder, scratch_share="0.10").data[
        "removed_total_um"
    ] == pytest.approx(31.62, abs=0.005)
    assert plan(defect="20 um", finish="2 um", own=ladder, scratch_share="0.15", stock_factor="3").data[
        "removed_total_um"
    ] == pytest.approx(46.145, abs=0.005)


@pytest.mark.parametrize(
    ("text", "depth"),
    [("40 um", (40, 40, 40)), ("40 ± 5 um", (30, 40, 50)), ("0.04 mm", (40, 40, 40)), ("deep scratch", (15, 22, 30))],
)
def test_defects(text, depth):
    found = read_defect(text)
    assert (found.low, found.typical, found.high) == pytest.approx(depth)


@pytest.mark.parametrize("text", ["40", "big", "40 g", "4 mm", "-3 um"])
def test_defects_refused(text):
    with pytest.raises(InputError):
        read_defect(text)


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("gloss", 3),
        ("Satin", 9),
        ("cushioned 12000", 3),
        ("3 um", 3),
        ("P2500", 8.4),
        ("9 um film", 9),
        ("0.002 mm", 2),
    ],
)
def test_finishes(text, size):
    assert read_finish(text) == pytest.approx(size)


@pytest.mark.parametrize("text", ["12000", "9", "mirror", "CAMI 1000"])
def test_finishes_refused(text):
    with pytest.raises(InputError):
        read_finish(text)


def test_own_finish_figures():
    (cloth,) = read_owned(("cushioned 1500",), ("cushioned 1500 = 18 um",))
    assert (cloth.particle_um, cloth.finish_um) == (30, 18)
    for bad in ("P400 = 18 um", "cushioned 1500", "cushioned 1500 = 18"):
        with pytest.raises(InputError):
            read_owned(("cushioned 1500",), (bad,))
    changed = plan(cushioned_finish="cushioned 1500 = 18 um").data["steps"][1]
    assert (changed["particle_um"], changed["finish_um"]) == (30, 18)


def test_a_ladder_is_judged_as_given():
    data = plan(own="CAMI 320; CAMI 400; P600; P800", as_given="yes", defect="20 um").data
    assert [s["label"] for s in data["steps"]] == ["CAMI 320", "CAMI 400", "P600", "P800"]
    assert any("23 µm to 25.8 µm" in f["text"] for f in data["findings"] if f["level"] == "stop")


@pytest.mark.parametrize(
    "texts",
    [
        {"own": "400; cushioned 1500"},
        {"own": "CAMI 800"},
        {"own": ""},
        {"material": "cheese"},
        {"material": ""},
        {"zone": "moon"},
        {"wall": "1.1"},
        {"stock_factor": "9"},
    ],
)
def test_refusals(texts):
    with pytest.raises(InputError):
        plan(**texts)


def test_wall_spent_and_length():
    data = plan(defect="10 um", wall="0.25 mm", spent="5 um", defect_length="6 mm").data
    assert data["budget_um"] == 20
    assert data["blend"] == {"run_out_mm": 0.2, "area_low_mm": 12, "area_high_mm": 18}


def test_grade_json():
    data = json.loads(json.dumps(ask(GRADE, grade="P400").data))
    assert (data["scale"], data["grade"], data["particle_um"], data["finish_um"], data["coarsest_um"]) == (
        "P",
        "400",
        35,
        35,
        53.9,
    )
    beside = {n["scale"]: n for n in data["neighbours"]}
    assert {"P", "F", "CAMI", "JIS electrical", "JIS sedimentation", "film", "cushioned"} <= set(beside)
    assert beside["CAMI"]["nearest"]["grade"] == "CAMI 320"
    assert beside["P"]["coarser"]["grade"] == "P360"
    assert any("17.3 µm (F400)" in f["text"] for f in data["findings"])


def test_grade_of_a_cloth_shows_both_figures():
    answer = ask(GRADE, grade="cushioned 1500")
    assert "30 µm" in answer.sentence
    assert "finishes like 22 µm" in answer.sentence
    assert answer.data["finish_certainty"] == "secondary"
    with pytest.raises(InputError, match="Which scale"):
        ask(GRADE, grade="1500")
    with pytest.raises(InputError):
        ask(GRADE, grade="")


@pytest.mark.parametrize("one", [ABRASIVES, GRADE], ids=lambda s: s.key)
def test_the_example_works_as_it_stands(one):
    import shlex

    words = shlex.split(one.example)[3:]
    if one.positional:
        texts = {one.positional: words[0]}
    else:
        texts = {
            name.removeprefix("--").replace("-", "_"): text for name, text in zip(words[::2], words[1::2], strict=True)
        }
    assert ask(one, **texts).sentence
