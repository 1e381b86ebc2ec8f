"""One way to ask a sum: texts, numbers, lists and columns in, with the bench's own facts; an answer that shows itself."""

import json

import numpy as np
import pandas as pd
import pytest

from pentools import InputError, seal_fit
from pentools.answers import asking
from pentools.answers.asking import BENCH_FACTS, Answer, answer_to, ask, ask_each, bench_of
from pentools.sums import SUMS, find
from pentools.units import Reading

RING = {"bore": "7.40 mm", "groove": "4.50 mm", "width": "2.4 mm"}


@pytest.fixture
def bench(tmp_path, monkeypatch):
    monkeypatch.delenv("PENTOOLS_BENCH", raising=False)
    (tmp_path / "bench.toml").write_text(
        '[balance]\nreadability = "0.001 g"\nrepeatability = "0.002 g"\n[room]\ntemperature = "24 °C"\n[stock]\nrings = ["1.78 mm x 4.47 mm"]\nabrasives = ["P400", "P800", "film 3 um"]\n'
    )
    return tmp_path


def test_texts_numbers_and_readings_give_the_same_answer():
    typed = ask("seal", RING).data
    assert ask("seal", {"bore": 7.40, "groove": 4.50, "width": 2.4}).data == typed
    assert ask("seal", {"bore": np.float64(7.40), "groove": Reading(4.50, "mm"), "width": "2.4 mm"}).data == typed
    assert ask("seal", {"bore": "0.29134 in", "groove": 4.50, "width": 2.4}).data["gland"] != typed["gland"]


def test_a_list_is_several_readings_of_one_question():
    several = ask("seal", RING | {"bore": [7.40, 7.44, 7.36]})
    assert several.data == answer_to("seal", RING | {"bore": "7.40 mm; 7.44 mm; 7.36 mm"}).data


def test_shares_and_small_numbers_are_typed_plainly():
    assert asking._text(next(f for f in find("leak").fields if f.name == "humidity"), 0.45) == "45 %"
    assert asking._text(next(f for f in find("leak").fields if f.name == "readability"), 0.00001) == "0.00001 g"


def test_an_unknown_name_and_a_list_for_one_value_are_refused():
    with pytest.raises(InputError, match="keyword must be one of bore, groove"):
        ask("seal", {"boer": 7.4})
    with pytest.raises(InputError, match="Groove diameter must be one value"):
        ask("seal", RING | {"groove": [4.5, 4.6]})


def test_columns_give_a_frame_with_a_row_a_question():
    bores = pd.Series([7.40, 7.40, 99.0], index=["head", "packing", "wrong"])
    frame = ask_each("seal", RING | {"bore": bores, "duty": np.array(["hand-turned", "static", "static"])})
    assert list(frame.index) == ["head", "packing", "wrong"]
    assert frame.loc["head", "sentence"] == ask("seal", RING).sentence
    assert frame.loc["packing", "sentence"] == ask("seal", RING | {"duty": "static"}).sentence
    assert "Bore must be at least 2 mm" in frame.loc["wrong", "refused"]
    assert frame["refused"].isna().tolist() == [True, True, False]
    with pytest.raises(InputError, match="columns must be of one length: got “bore 2, width 3”"):
        ask_each("seal", {"bore": np.array([7.4, 7.5]), "width": np.array([2.0, 2.1, 2.2]), "groove": 4.5})


def test_not_a_number_in_a_column_was_not_measured():
    frame = ask_each("seal", RING | {"width": pd.Series([2.4, np.nan])})
    without = ask("seal", {"bore": "7.40 mm", "groove": "4.50 mm"})
    assert frame["sentence"].tolist() == [ask("seal", RING).sentence, without.sentence]


def test_an_answer_shows_itself():
    answer = seal_fit(**RING)
    assert isinstance(answer, Answer)
    assert str(answer) == answer.sentence
    assert repr(answer) == f"<Answer: {answer.sentence}>"
    assert "\n" not in repr(answer)
    shown = answer._repr_html_()
    assert answer.sentence in shown
    assert shown.count("<li") == len(answer.findings)
    assert shown.count("<tr>") == len(answer.table)
    assert shown.count("<svg") == len(answer.figures()) == 1
    assert list(answer.frame().columns) == list(answer.table[0])
    assert len(answer.frame()) == len(answer.table) - 1
    assert json.loads(json.dumps(answer.data, allow_nan=False))["sentence"] == answer.sentence
    assert answer.figure()._repr_svg_().startswith("<svg")


def test_the_longest_answer_has_a_short_repr():
    answer = answer_to(
        "treatment", {"material": "casein", "treatment": "flush mix soak", "overrule": "limited", "reason": "x" * 999}
    )
    assert len(repr(answer)) < 200
    assert len(repr(seal_fit(**RING).figure())) < 300


def test_what_was_typed_cannot_become_markup():
    answer = Answer("<b>no</b>", {}, (), (("a",), ("<i>x</i>",)))
    assert "<b>" not in answer.html()
    assert "<i>" not in answer.html()


def test_the_bench_fills_what_was_not_said(bench):
    mine = answer_to("leak", {"times": "0 h; 24 h", "masses": "18.214 g; 18.213 g"}, bench)
    typed = answer_to("leak", {"times": "0 h; 24 h", "masses": "18.214 g; 18.213 g", "readability": "0.001 g", "repeatability": "0.002 g"})  # fmt: skip
    assert mine.data["detection_limit_mg_per_h"] == typed.data["detection_limit_mg_per_h"]
    assert "readability" in mine.data["from_bench"]
    assert mine.findings[-1].topic == "from-bench"
    assert "readability 0.001 g" in mine.findings[-1].text
    assert "temperature 24 °C" in mine.findings[-1].text
    assert mine.data["findings"][-1]["topic"] == "from-bench"


def test_a_typed_balance_is_not_mixed_with_the_bench_s(bench):
    mine = answer_to("leak", {"times": "0 h; 24 h", "masses": "18.2 g; 18.2 g", "readability": "0.1 g"}, bench)
    assert "repeatability" not in mine.data["from_bench"]
    assert "temperature" in mine.data["from_bench"]


def test_own_rings_are_the_drawer_or_where_it_is_asked_for_the_whole_list(bench):
    answer = answer_to("seal", RING, bench)
    assert answer.data["from_bench"] == ["drawer"]
    assert any(one["in_drawer"] for one in answer_to("seal", RING | {"all": "yes"}, bench).data["candidates"])
    assert answer_to("seal", RING | {"from": "stock"}, bench).data["from_bench"] == ["stock"]
    assert answer_to("abrasives", {"material": "celluloid", "defect": "20 um"}, bench).data["from_bench"] == ["own"]


def test_one_text_of_the_drawer_that_cannot_be_read_stands_in_no_answers_way(tmp_path):
    (tmp_path / "bench.toml").write_text('[stock]\nrings = ["odd", "1.78x4.47"]\nsacs = ["16"]\nwashers = ["?"]\n')
    found = answer_to("seal", RING | {"all": "yes"}, tmp_path).data
    assert [one["designation"] for one in found["candidates"] if one["in_drawer"]] == ["4.47x1.78"]
    assert answer_to("sac", {"barrel": "8.00 mm"}, tmp_path).data["in_drawer"] is False
    assert answer_to("washer", {"bore": "8.30 mm", "rod": "1.60 mm"}, tmp_path).data["in_drawer"] == []
    with pytest.raises(InputError):
        answer_to("seal", RING | {"from": "stock"}, tmp_path)  # asked for by name, it is said


def test_without_a_bench_nothing_is_taken(bench, monkeypatch):
    assert bench_of() is None
    monkeypatch.setenv("PENTOOLS_BENCH", str(bench))
    assert bench_of().folder == bench
    monkeypatch.setenv("PENTOOLS_BENCH", str(bench / "nothing here"))
    assert bench_of() is None


def test_every_fact_of_the_bench_has_its_field_and_its_line():
    from pentools.record.bench import BENCH_TEMPLATE

    for key, facts in BENCH_FACTS.items():
        assert key in SUMS
        for name, (table, fact) in facts.items():
            assert f"[{table}]" in BENCH_TEMPLATE
            assert f"{fact} = " in BENCH_TEMPLATE
            assert name in [field.name for field in find(key).fields] or (key, name) in {("money", "currency"), ("leak", "linearity"), ("leak", "eccentricity"), ("leak", "pressure")}  # fmt: skip
