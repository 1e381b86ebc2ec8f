"""The bench sheet: its panels, large type, a practice sheet, and files it cannot read said in words."""

from pentools.panels.bench import BenchSheet, MessagePanel, open_bench
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.writeup.write import write_pages


def test_large_type_reaches_every_panel(sheet):
    panel = sheet.stage("limits")
    sheet.large.value = True
    assert "pt-large" in panel.widget._dom_classes
    sheet.large.value = False
    assert "pt-large" not in panel.widget._dom_classes


def test_an_unknown_stage_is_a_message(sheet):
    assert isinstance(sheet.stage("polishing the moon"), MessagePanel)


def test_outside_a_job_it_is_a_practice_sheet(tmp_path):
    opened = open_bench(tmp_path)
    assert opened.practice
    assert "nothing typed here is kept" in opened.overview.value
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
    assert "bench.toml, line 1 cannot be read" in opened.check().value
    assert opened.stage("intake").stage.key == "intake"


def test_several_stages_in_one_cell(sheet):
    group = sheet.stage("limits", "pictures")
    assert [panel.stage.key for panel in group.panels] == ["limits", "pictures"]
    assert sheet.panels == list(group.panels)


def test_a_job_in_which_nothing_is_missing_says_so(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    job = create_job(bench, "green-piston", sample="green-piston")
    assert "a copy for the owner" in BenchSheet(job).check().value
    write_pages(job, ["letter"])
    assert BenchSheet(job).check().value == "<p>Nothing is missing, and nothing is odd.</p>"
