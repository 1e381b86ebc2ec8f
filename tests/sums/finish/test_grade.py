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
