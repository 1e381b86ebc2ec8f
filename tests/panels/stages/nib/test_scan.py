"""From a scan to an entry: the folder it must lie in, and every figure in its own field and unit."""

import pytest
from by_name import kind_of

from pentools.errors import InputError
from pentools.panels.stages.nib.scan import lines_from_scan, lines_of, scan_path
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job

DATA = {
    "median_width_um": 523.4, "u_um": 4.2, "variation_ratio": 1.31, "ratio_floor": 1.1, "strokes": [{}] * 12, "skips": 2,
    "length_mm": 6012.0, "pressed": {"width_um": 801.0, "u_um": 6.0},
}  # fmt: skip


def test_every_figure_is_kept_in_its_own_unit():
    found = lines_of(DATA)
    assert (found["line"].value, found["line"].unit, found["line"].standard_uncertainty) == (
        pytest.approx(0.5234),
        "mm",
        pytest.approx(0.0042),
    )
    assert (found["pressed"].value, found["pressed"].standard_uncertainty) == pytest.approx((0.801, 0.006))
    assert (found["ratio"], found["strokes"], found["skips"]) == (1.31, 12, 2)
    assert (found["written"].value, found["written"].unit) == (6.012, "m")
    assert found["line"].typed == "0.5234 ± 0.0042 mm"


def test_what_an_even_line_shows_is_no_ratio_and_no_pressed_line_is_none():
    found = lines_of({**DATA, "variation_ratio": 1.08, "pressed": None})
    assert (found["ratio"], found["pressed"]) == (None, None)


@pytest.mark.parametrize("name", ["../record.jsonl", "/etc/passwd.png", "a/b.png", "notes.txt", "..png", ""])
def test_only_a_picture_in_the_scans_folder(job, name):
    with pytest.raises(InputError):
        scan_path(job, name)


def test_the_file_must_be_there(job):
    with pytest.raises(InputError, match="scans"):
        scan_path(job, "after.png")
    (job.folder / "scans").mkdir(exist_ok=True)
    (job.folder / "scans" / "after.png").write_bytes(b"x")
    assert scan_path(job, "after.png").name == "after.png"


def test_a_scan_of_a_sample_is_measured_as_its_record_says(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "lead", sample="green-piston")
    test = next(logged.values for logged in job.log(kind_of("nib", "writing test")))
    kept = next(logged.values for logged in job.log(kind_of("nib", "lines")))
    found, warnings = lines_from_scan(job, test)
    assert warnings == ()
    assert found["line"].value == pytest.approx(kept.line.value, abs=0.002)
    assert found["line"].standard_uncertainty == pytest.approx(kept.line.standard_uncertainty, abs=0.003)
    assert (found["strokes"], found["skips"], found["when"], found["scan"]) == (
        kept.strokes,
        kept.skips,
        "after",
        "nib-after.png",
    )
    assert found["written"].value == pytest.approx(kept.written.value, abs=0.003)
    # what is measured can be kept and read again
    kind = kind_of("nib", "lines")
    job.save("nib", kind, found)
    assert job.log(kind)[-1].values.line.value == found["line"].value
