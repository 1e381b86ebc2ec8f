"""The sum grade: its sizes, its neighbours, and how sure they are."""

import json

import pytest

from pentools.errors import InputError
from pentools.sums.base import read_options
from pentools.sums.finish.grade import GRADE


def ask(one, **texts):
    return one.run(read_options(one.fields, texts))


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


def test_how_sure_a_grade_is_stands_in_plain_words():
    assert "(33.5 to 36.5 µm, seen at second hand)" in ask(GRADE, grade="P400").sentence
    assert "like 7 µm (measured at this bench)" in ask(GRADE, grade="cloth 4000 = finish 7 um").sentence
    assert ask(GRADE, grade="P400").data["certainty"] == "secondary"


def test_grade_of_a_cloth_shows_both_figures():
    answer = ask(GRADE, grade="cushioned cloth 2000")
    assert "23 µm" in answer.sentence
    assert "finishes like 15 µm" in answer.sentence
    assert answer.data["finish_certainty"] == "judged"
    assert "two-figures" in [f["topic"] for f in answer.data["findings"]]
    with pytest.raises(InputError, match="Which scale"):
        ask(GRADE, grade="1500")
    with pytest.raises(InputError):
        ask(GRADE, grade="")


def test_the_whole_of_a_grade():
    """P400 of ISO 6344-3: 35 ± 1.5 µm, three percent coarser than 53.9 µm; the other scales as they print theirs."""
    answer = ask(GRADE, grade="P400")
    data = answer.data
    assert answer.sentence.endswith("; three percent of it is coarser than 53.9 µm.")
    assert (data["particle_low_um"], data["particle_high_um"], data["finish_low_um"], data["finish_high_um"]) == (
        33.5,
        36.5,
        33.5,
        36.5,
    )
    beside = {n["scale"]: n for n in data["neighbours"]}
    assert beside["JIS electrical"] == {
        "scale": "JIS electrical", "name": "JIS R 6001, electrical-resistance method", "ratio": 1.0, "like_for_like_um": 30.84,
        "nearest": {"grade": "JIS 360 electrical", "particle_um": 35, "finish_um": 35},
        "coarser": {"grade": "JIS 320 electrical", "particle_um": 40, "finish_um": 40},
        "finer": {"grade": "JIS 400 electrical", "particle_um": 30, "finish_um": 30},
        "within_spread": ["JIS 360 electrical"],
        "nearest_like_for_like": {"grade": "JIS 400 electrical", "particle_um": 30, "finish_um": 30},
    }  # fmt: skip
    assert beside["P"]["within_spread"] == []
    assert beside["cushioned"]["coarser"] is None
    assert (beside["P"]["ratio"], beside["CAMI"]["ratio"]) == (1.157, 1.029)  # 40.5/35 and 36/35
    assert answer.table[0] == ("scale", "nearest", "µm", "times as coarse", "coarser", "finer", "could pass for")
    assert answer.table[1] == (
        "P (ISO 6344, coated abrasives)",
        "P360",
        "40.5",
        "1.16",
        "P360 (40.5)",
        "P500 (30.2)",
        "none",
    )
    assert answer.table[7][4:] == ("none", "cushioned cloth 1000 (29)", "cushioned cloth 1000")


def test_a_cloth_is_compared_by_its_finish():
    answer = ask(GRADE, grade="cushioned cloth 2000")
    assert answer.table[1][1:] == ("P1200", "15.3", "1.02", "P1200 (15.3)", "P1500 (12.6)", "P1000 to P2000")
    assert [f.topic for f in answer.findings] == ["two-figures", "same-number", "certainty"]
    texts = [f.text for f in answer.findings]
    assert "the grain is 23 µm and cuts like it, the finish is like 15 µm (9.8 to 20)" in texts[0]
    assert texts[1].startswith("The number 2000 alone also means 1.2 µm (F2000)")  # the one farthest off
    assert "particle" not in ask(GRADE, grade="film 9 um").sentence
    # a film's number is its size, so no other scale can be meant by it; what is remarked of a grade is told
    assert [f.text for f in ask(GRADE, grade="film 9 um").findings] == ["film 9 µm: no tolerance was found."]
    assert [f.topic for f in ask(GRADE, grade="CAMI 600").findings] == ["same-number", "note"]


def test_the_number_that_is_furthest_off_is_named():
    # as the scales print them: CAMI 400 at 22 to 23.6 µm stands between F400 at 17.3 and P400 at 35; a sieve of 400 mesh opens 38 µm (ASTM E11)
    found = {f.topic: f for f in ask(GRADE, grade="CAMI 400").findings}
    assert (found["same-number"].values["grade"], found["same-number"].values["um"]) == ("mesh 400", 38)
