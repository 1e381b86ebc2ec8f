"""The bench sheet: its panels, large type, a practice sheet, and files it cannot read said in words."""

from pentools.panels.bench import BenchSheet, MessagePanel, open_bench
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.registry import STAGES
from pentools.writeup.write import write_pages


def test_large_type_reaches_every_stage(sheet):
    slot = sheet.stage("limits")
    sheet.large.value = True
    assert "pt-large" in slot.widget._dom_classes
    assert "pt-large" in sheet.stage("seal").widget._dom_classes
    sheet.large.value = False
    assert "pt-large" not in slot.widget._dom_classes


def test_an_unknown_stage_is_a_message(sheet):
    assert isinstance(sheet.stage("polishing the moon"), MessagePanel)


def test_outside_a_job_it_is_a_practice_sheet(tmp_path):
    opened = open_bench(tmp_path)
    assert opened.practice
    assert "nothing typed here is kept" in opened.head.value
    assert not (tmp_path / "record.jsonl").exists()


def test_a_job_that_cannot_be_read_is_a_message(job):
    job.record.path.unlink(missing_ok=True)
    job.record.path.mkdir()
    opened = open_bench(job.folder)
    assert isinstance(opened, MessagePanel)
    assert "record.jsonl" in opened.text
    assert opened.stage("intake") is opened


def test_what_of_the_bench_file_cannot_be_used_stands_in_nobodys_way(job):
    (job.bench.folder / "bench.toml").write_text("[balance\n")
    opened = open_bench(job.folder)
    shown = opened.check()
    shown.button.click()
    assert "bench.toml, line 1 cannot be read" in shown.list.value
    assert opened.stage("intake").stage.key == "intake"


def test_what_is_wrong_with_the_benchs_own_facts_stands_at_the_head(job):
    (job.bench.folder / "bench.toml").write_text('[caliper]\nuncertainty = "wide"\n')
    assert "uncertainty" in open_bench(job.folder).head.value


def test_several_stages_in_one_cell(sheet):
    group = sheet.stage("limits", "pictures")
    assert [slot.stage.key for slot in group.parts] == ["limits", "pictures"]


def test_a_stage_is_one_line_until_it_is_opened_and_one_is_open_at_a_time(sheet):
    limits, seal = sheet.stage("limits"), sheet.stage("seal")
    assert limits.body.children == seal.body.children == ()
    assert limits.built is None
    limits.title.click()
    assert limits.body.children == (sheet.strip.widget, limits.panel.widget, sheet.onward.widget)
    seal.title.click()
    assert limits.body.children == ()
    assert seal.is_open
    seal.title.click()
    assert not seal.is_open


def test_opening_puts_the_cursor_into_the_first_box(sheet):
    sheet.stage("fill test").title.click()
    selector = sheet.desk.look_at["selector"]
    # the state is chosen already
    assert selector == ".pt-slot-fill-test .pt-form .pt-draft--fill-test--weighing--mass"


def test_a_stage_without_a_cell_opens_on_the_sheet_itself(sheet):
    sheet.stage("seal")
    sheet.open_stage("finish")
    assert sheet.stray.children == (sheet.slots["finish"].widget,)
    sheet.open_stage("seal")
    assert sheet.stray.children == ()


def test_the_head_says_what_comes_next_and_what_waits(sheet, job):
    assert "A drawn test pen" in sheet.head.value
    assert "job test-pen" in sheet.head.value
    assert "<b>Next:</b> " in sheet.head.value
    job.add("seal", "measure", {"place": "head", "bore": "8 mm"})
    sheet.changed(None)
    assert "■ Sealant waits: no dry fit has passed" in sheet.head.value


def test_the_kind_of_work_folds_the_other_stages_under_further(sheet, job):
    def named():
        return {
            child.description.split(" ", 1)[1]
            for child in sheet.ways.children
            if child not in (sheet.further, sheet.large)
        }

    assert any("inish" in name for name in named())
    job.add("intake", "request", {"asked": "a new sac, please", "work": "re-sac"})
    sheet.changed(None)
    before = named()
    assert not any("inish" in name for name in before)
    sheet.further.value = True
    assert len(named()) == len(STAGES) > len(before)
    job.add("finish", "zone", {"part": "barrel", "zone": "plain barrel"})
    sheet.further.value = False
    sheet.changed(None)
    assert any("inish" in name for name in named())


def test_a_job_in_which_nothing_is_missing_says_so(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    job = create_job(bench, "green-piston", sample="green-piston")
    shown = BenchSheet(job).check()
    assert shown.list.value == ""
    shown.button.click()
    assert "a copy for the owner" in shown.list.value
    write_pages(job, ["letter"])
    shown.button.click()
    assert shown.list.value == "<p>Nothing is missing, and nothing is odd.</p>"


def test_the_pen_is_drawn_anew_only_when_its_measures_change(sheet, job, monkeypatch):
    drawn = []
    import pentools.figures.pen_from_record as drawing

    real = drawing.pen_drawing
    monkeypatch.setattr(drawing, "pen_drawing", lambda *given, **more: drawn.append(1) or real(*given, **more))
    job.add("work log", "note", {"note": "nothing of the pen"})
    sheet.changed(None)
    assert drawn == []
    job.add("fill test", "dimensions", {"bore": "9.0 mm", "stroke": "31 mm"})
    before = sheet.head.value
    sheet.changed(None)
    assert drawn == [1]
    assert sheet.head.value != before


def test_the_line_of_a_folded_stage_waits_under_further_too(sheet, job):
    finish, seal = sheet.stage("finish"), sheet.stage("seal")
    assert finish.widget.layout.display != "none"
    job.add("intake", "request", {"asked": "a new sac, please", "work": "re-sac"})
    sheet.changed(None)
    assert finish.widget.layout.display == "none"
    assert seal.widget.layout.display != "none"
    sheet.further.value = True
    assert finish.widget.layout.display != "none"
    sheet.open_stage("finish")
    sheet.further.value = False
    assert finish.widget.layout.display != "none"  # it is open
    sheet.open_stage("seal")
    assert finish.widget.layout.display == "none"
