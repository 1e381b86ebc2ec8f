"""The sample jobs' scans are drawings that say so, and the record keeps what is in them."""

import drawn_scans
import pytest
from by_name import kind_of
from PIL import Image, ImageChops

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.mark.parametrize("name", sorted(drawn_scans.SCANS))
def test_a_drawn_scan_is_what_its_script_draws(name):
    file, width, swell = drawn_scans.SCANS[name]
    path = drawn_scans.ROOT / "sample_jobs" / name / "scans" / file
    with Image.open(path) as there:
        assert there.info["dpi"] == pytest.approx((600, 600), abs=0.01)
        now = drawn_scans.drawn(width, swell)
        assert there.size == now.size
        apart = ImageChops.difference(there, now).getextrema()[1]
        assert apart <= 60, "the font may differ, the strokes may not"


@pytest.mark.parametrize("name", sorted(drawn_scans.SCANS))
def test_the_record_says_that_it_is_drawn_and_keeps_the_width_that_was_drawn(name, tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), name, sample=name)
    file, width, _ = drawn_scans.SCANS[name]
    [lines] = [logged.values for logged in job.log(kind_of("nib", "lines"))]
    assert (lines.drawn, lines.scan) == (True, file)
    assert (job.folder / "scans" / file).is_file()
    assert abs(lines.line.value - width) < 2 * lines.line.standard_uncertainty
