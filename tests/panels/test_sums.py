"""The calculator's panels: every sum opens, refuses in words, and works its own example out."""

import shlex

import pytest

from pentools.panels import guard
from pentools.panels.bench import MessagePanel
from pentools.panels.sums import open_sums
from pentools.sums import SUMS, find


@pytest.fixture(autouse=True)
def strict():
    guard.strict(True)
    yield
    guard.strict(False)


def example(key):
    """The texts of a sum's own example, by field name."""
    words = [word for word in shlex.split(find(key).example)[3:] if word != "--json"]
    texts, at = {}, 0
    while at < len(words):
        if words[at].startswith("--"):
            name = words[at][2:].replace("-", "_")
            value = words[at + 1] if at + 1 < len(words) and not words[at + 1].startswith("--") else "yes"
            texts[name] = f"{texts[name]}; {value}" if name in texts else value
            at += 2
        else:
            texts[find(key).positional] = words[at]
            at += 1
    return texts


def shown(panel, name):
    return panel.boxes[name].widget in (*panel.first.children, *panel.rest.children)


@pytest.mark.parametrize("key", SUMS)
def test_every_sum_works_its_example_out_in_a_panel(key):
    panel = open_sums().panel(key)
    for name, text in example(key).items():
        panel.boxes[name].text = text
        assert panel.boxes[name].text == text
    panel.button.click()
    assert panel.status.text == ""
    assert "pt-sentence" in panel.result.value


def test_a_bad_value_is_marked_and_kept():
    panel = open_sums().panel("capacity")
    panel.boxes["empty"].text = "23.26 furlongs"
    panel.button.click()
    assert "Not worked out" in panel.status.text
    assert "furlongs" in panel.boxes["empty"].message.value
    assert panel.boxes["empty"].text == "23.26 furlongs"


def test_a_bare_number_is_read_in_the_box_s_own_unit():
    panel = open_sums().panel("capacity")
    panel.boxes["empty"].text, panel.boxes["filled"].text = "23,26", "25,06 g"
    panel.button.click()
    assert panel.status.text == ""
    assert "1.79" in panel.result.value


def test_what_must_be_said_stands_in_two_columns_and_the_rest_under_more():
    panel = open_sums().panel("capacity")
    assert "pt-fields" in panel.first._dom_classes
    assert not shown(panel, "readability")
    panel.more.value = True
    assert shown(panel, "readability")
    panel.more.value = False
    panel.boxes["readability"].text = "a hair"
    panel.button.click()
    assert shown(panel, "readability")  # what is wrong is in sight


def test_contradicting_weighings_are_said_in_words():
    panel = open_sums().panel("capacity")
    panel.boxes["empty"].text, panel.boxes["filled"].text = "25.00 g", "23.00 g"
    panel.button.click()
    assert "mixed up" in panel.status.text


def test_only_the_systems_own_dimensions_are_asked():
    panel = open_sums().panel("capacity")
    assert not shown(panel, "bore")
    panel.boxes["system"].text = "piston"
    assert shown(panel, "bore")
    assert not shown(panel, "outside")


def test_several_and_unknown_sums():
    assert [p.sum.key for p in open_sums().panel("capacity", "leak").parts] == ["capacity", "leak"]
    assert isinstance(open_sums().panel("magic"), MessagePanel)


def test_the_boxes_begin_with_the_bench_s_own_facts(tmp_path):
    (tmp_path / "bench.toml").write_text('[balance]\nreadability = "0.001 g"\n[room]\ntemperature = "24 °C"\n')
    boxes = open_sums(tmp_path).panel("capacity").boxes
    assert (boxes["readability"].text, boxes["temperature"].text) == ("0.001 g", "24 °C")
    assert open_sums().panel("capacity").boxes["temperature"].text == "20 °C"


def test_only_the_chosen_system_s_dimensions_are_asked_for():
    panel = open_sums().panel("capacity")

    def seen():
        return {name for name in find("capacity").asked_for.fields if shown(panel, name)}

    assert seen() == set()
    panel.boxes["system"].text = "piston"
    assert {"bore", "stroke"} <= seen()
    assert "reach" not in seen()
