"""The nib's panel: what is held and refused, what is shown, and a scan that becomes an entry of lines."""

import pytest
from by_name import kind_of

import pentools
from pentools.calc.base.findings import Finding
from pentools.errors import InputError
from pentools.sums.base import SumAnswer

YES = {"action": "nib work", "agreed": "yes", "answered_on": "2026-03-14", "channel": "letter", "authority": "yes"}
PAGE = {"when": "after", "ink": "a blue ink", "paper": "smooth pad paper", "wetness": "medium"}
FLEX = {"when": "after", "widths": "0.50 mm; 1.00 mm"}
FOUND = {
    "median_width_um": 523.4, "u_um": 4.2, "variation_ratio": 1.31, "ratio_floor": 1.1, "strokes": [{}] * 12, "skips": 2,
    "length_mm": 6012.0, "pressed": {"width_um": 801.0, "u_um": 6.0},
}  # fmt: skip


@pytest.fixture
def panel(job, sheet):
    return sheet.panel("nib")


def logged(job, kind):
    return [entry.values for entry in job.log(kind_of("nib", kind))]


@pytest.mark.parametrize(
    ("kind", "texts"),
    [
        ("smoothing", {"grade": "film 1 um", "strokes": "4", "figure": "eight"}),
        ("adjust", {"what": "tines", "did": "set over a brass form"}),
    ],
)
def test_no_work_on_the_nib_without_a_yes(job, panel, put, release, kind, texts):
    said = put(panel, kind, **texts)
    assert "NOT SAVED" in said
    assert "consent to work on the nib is not recorded" in said
    assert logged(job, kind) == []
    release(panel, "nib work", "my own pen")
    assert put(panel, kind, **texts).startswith("saved ")
    assert job.record.releases("nib work")[0].data["reason"] == "my own pen"


def test_the_owners_yes_lets_it_go_and_tines_out_of_line_hold_it(job, panel, put):
    job.add("agree", "answer", YES)
    panel.refresh()
    assert put(panel, "loupe", when="found", tipping="sound", tines="left high").startswith("saved ")
    assert "the tines are not level" in put(panel, "smoothing", grade="film 1 um", strokes="4", figure="eight")
    assert logged(job, "smoothing") == []
    put(panel, "adjust", what="tines", did="by hand")
    put(panel, "loupe", when="after", tipping="sound", tines="level")
    panel.forms["smoothing"].button.click()
    assert panel.forms["smoothing"].status.text.startswith("saved ")


def test_a_grade_without_its_scale_is_refused(job, panel, put):
    job.add("agree", "answer", YES)
    assert "NOT SAVED" in put(panel, "smoothing", grade="1500", strokes="4", figure="eight")


def test_a_look_of_one_entry_is_not_that_of_the_next(job, panel, put):
    job.add("agree", "answer", YES)
    panel.refresh()
    put(panel, "smoothing", grade="film 1 um", strokes="4", figure="eight", looked="yes")
    assert panel.forms["smoothing"].boxes["looked"].text == ""
    assert logged(job, "smoothing")[0].looked is True


@pytest.mark.parametrize(
    ("texts", "why"),
    [
        ({"loads": "15 g; 60 g", "maximum": "yes"}, "never driven to its limit"),
        ({"loads": "15 g; 160 g"}, "past the 150 gf"),
        ({"loads": "15 g; 160 g", "metal": "gold"}, "a gold nib is loaded with"),
    ],
)
def test_a_nib_is_not_driven_to_its_limit(job, panel, put, release, texts, why):
    assert why in put(panel, "flex", **FLEX, **texts)
    assert logged(job, "flex") == []
    release(panel, "flex", "the owner asks for it in writing")
    assert put(panel, "flex", **FLEX, **texts).startswith("saved ")


def test_a_light_load_is_saved_and_answered(job, panel, put):
    assert "as many as the loads" in put(panel, "flex", when="after", loads="15 g; 60 g", widths="0.5 mm")
    assert put(panel, "flex", **FLEX, loads="15 g; 60 g", angle="45 deg").startswith("saved ")
    panel.show_form("flex")
    assert "0.88" in panel.result_text.value
    assert "never" not in panel.result_text.value


@pytest.mark.parametrize(
    ("feed", "section", "texts", "why"),
    [
        ("ebonite", "celluloid", {}, "no heat on the feed where it sits"),
        ("ebonite", "celluloid", {"alone": "yes"}, ""),
        ("plastic", "celluloid", {"alone": "yes"}, "not set by heat"),
        ("ebonite", "phenolic", {}, ""),
        ("ebonite", "phenolic", {"nipple": "sac"}, "never warmed"),
        ("plastic", "celluloid", {"way": "cold"}, ""),
    ],
)
def test_the_feeds_window_holds_its_setting(job, panel, put, feed, section, texts, why):
    for part, material in (("feed", feed), ("section", section)):
        job.add("open", "material", {"part": part, "material": material, "sure": "yes"})
    said = put(panel, "feed setting", **{"way": "water", "gap": "slides", "surface": "80 °C", **texts})
    assert why in said
    assert said.startswith("saved ") is (why == "")


def test_the_owners_no_to_heat_holds_the_feed_too(job, panel, put):
    job.add("open", "material", {"part": "feed", "material": "ebonite", "sure": "yes"})
    job.add("agree", "answer", {**YES, "action": "heat", "agreed": "no"})
    assert "said no to heat" in put(panel, "feed setting", way="water", gap="slides", alone="yes")


def test_water_that_was_too_hot_is_saved_and_said_at_once(job, panel, put):
    job.add("open", "material", {"part": "feed", "material": "ebonite", "sure": "yes"})
    said = put(panel, "feed setting", way="water", gap="slides", alone="yes", surface="99 °C")
    assert "and stop" in said
    assert len(logged(job, "feed setting")) == 1


def test_a_fit_of_nothing_is_refused_and_a_verdict_is_shown(panel, put):
    assert "at least one of its measurements" in put(panel, "fit", when="found")
    put(panel, "fit", when="found", reach="20.0 mm", inner_cap="19.0 mm")
    panel.show_form("fit")
    assert "will touch the inner cap" in panel.result_text.value


@pytest.fixture
def measured(monkeypatch):
    """Stands for the line sum; what it was asked for is kept."""
    asked = []

    def measure(scan, **more):
        asked.append((str(scan), more))
        return SumAnswer("It draws.", FOUND)

    monkeypatch.setattr(pentools, "measure_lines", measure, raising=False)
    return asked


def test_a_scan_is_measured_when_its_test_is_saved(job, panel, put, measured):
    (job.folder / "scans").mkdir(exist_ok=True)
    (job.folder / "scans" / "after.png").write_bytes(b"a picture")
    panel.show_form("writing test")
    said = put(panel, "writing test", **PAGE, scan="after.png")
    assert "its lines measured" in said
    assert measured == [(str(job.folder / "scans" / "after.png"), {})]
    [lines] = logged(job, "lines")
    assert (lines.when, lines.scan) == ("after", "after.png")
    assert "0.523" in panel.result_text.value
    assert "±" in panel.result_text.value


def test_a_scan_that_gives_nothing_loses_no_test(job, panel, put, monkeypatch):
    def fail(*_, **__):
        raise InputError("scan", "a page with strokes", "a blank page")

    monkeypatch.setattr(pentools, "measure_lines", fail, raising=False)
    assert "scans folder" in put(panel, "writing test", **PAGE, scan="no-such.png")
    assert logged(job, "writing test") == []
    (job.folder / "scans").mkdir(exist_ok=True)
    (job.folder / "scans" / "after.png").write_bytes(b"a picture")
    said = put(panel, "writing test", **PAGE, scan="after.png")
    assert "its scan gave no lines" in said
    assert (len(logged(job, "writing test")), logged(job, "lines")) == (1, [])


@pytest.mark.parametrize(("level", "kept"), [("warning", 1), ("stop", 0), ("note", 1)])
def test_what_the_line_sum_doubts_is_said_and_what_it_stops_is_not_kept(job, panel, put, monkeypatch, level, kept):
    doubt = Finding(level, "base.refused", sentence="This looks like print.")
    monkeypatch.setattr(pentools, "measure_lines", lambda *_: SumAnswer("It draws.", FOUND, (doubt,)), raising=False)
    (job.folder / "scans").mkdir(exist_ok=True)
    (job.folder / "scans" / "after.png").write_bytes(b"a picture")
    said = put(panel, "writing test", **PAGE, scan="after.png")
    assert ("looks like print" in said) is (level != "note")
    assert ("gave no lines" in said) is (level == "stop")
    assert len(logged(job, "lines")) == kept


def test_each_form_has_its_own_result(job, panel, put):
    path = job.bench.folder / "bench.toml"
    wanted = {
        "loupe": "Clean it, then look", "adjust": "Clean it, then look", "fit": "Measure the section", "smoothing plan": "Say how the nib feels",
        "smoothing": "Say how the nib feels", "feed setting": "not set by heat", "writing test": "one named ink", "lines": "one named ink",
        "start": "one named ink", "flow": "Weigh the pen", "flex": "kitchen scale",
    }  # fmt: skip
    assert path.is_file()
    assert set(wanted) == set(panel.forms)
    for key, words in wanted.items():
        panel.show_form(key)
        assert words in panel.result_text.value, key


def test_the_plan_stands_beside_the_strokes(job, panel, put):
    job.add("finish", "plan", {"defect": "light scratch", "own": "film 3 um; film 1 um"})
    put(panel, "loupe", when="found", tipping="sound", tines="level", called="F")
    assert "calls it “F”" in panel.result_text.value
    put(panel, "smoothing plan", feel="scratchy")
    panel.show_form("smoothing")
    assert "12 strokes each at most" in panel.result_text.value
    assert "film 1 µm" in panel.result_table.value


def test_flow_shows_both_moments(job, panel, put):
    job.add("fill test", "setup", {"readability": "0.0001 g"})
    put(panel, "flow", when="found", before="23.5120 g", after="23.4660 g", length="18 m")
    put(panel, "flow", when="after", before="23.5120 g", after="23.4220 g", length="18 m")
    panel.show_form("flow")
    assert "4.99" in panel.result_text.value
    assert "wetter than before" in panel.result_table.value
    assert panel.result_table.value.count("<table") == 2


def test_the_figures_nibs_are_held_to_are_under_more(panel):
    panel.more_button.value = True
    assert "gap between the tips, firm nib" in panel.more_drawings.value
    assert "150 gf" in panel.more_drawings.value


def test_what_is_known_is_offered_and_what_was_typed_stays(job, panel, put):
    boxes = {key: form.boxes for key, form in panel.forms.items()}
    assert (boxes["loupe"]["when"].text, boxes["fit"]["when"].text, boxes["writing test"]["ink"].text) == (
        "found",
        "found",
        "",
    )
    put(panel, "loupe", tipping="sound", tines="level")
    assert logged(job, "loupe")[0].when == "found"
    assert (boxes["loupe"]["when"].text, boxes["fit"]["when"].text) == ("after", "found")
    put(panel, "writing test", when="found", ink="a blue ink", paper="pad paper")
    assert (boxes["writing test"]["ink"].text, boxes["writing test"]["paper"].text) == ("a blue ink", "pad paper")
    boxes["writing test"]["ink"].text = "a black ink"
    job.add("nib", "adjust", {"what": "tines", "did": "by hand"})
    panel.refresh()
    assert (boxes["writing test"]["ink"].text, boxes["fit"]["when"].text) == ("a black ink", "after")


def test_the_plans_next_grade_is_offered(job, panel, put):
    job.add("agree", "answer", YES)
    job.add("finish", "plan", {"defect": "light scratch", "own": "film 3 um; film 1 um"})
    put(panel, "loupe", tipping="sound", tines="level")
    put(panel, "smoothing plan", feel="scratchy")
    grade = panel.forms["smoothing"].boxes["grade"]
    assert grade.text == "film 3 µm"
    put(panel, "smoothing", strokes="12", figure="eight", looked="yes")
    assert logged(job, "smoothing")[0].grade == "film 3 µm"
    assert grade.text == "film 1 µm"


def test_the_owners_letter_is_never_a_width(job, panel, put):
    put(panel, "loupe", tipping="sound", tines="level", called="F")
    panel.show_form("writing test")
    assert "mm" not in panel.result_text.value
    put(panel, "writing test", when="after", ink="a blue ink", paper="pad paper", wetness="wet")
    assert " mm" not in panel.result_text.value.replace("\u202f", " ")
