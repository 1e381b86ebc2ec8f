"""The bench's decimal sign stands in what is read, and nowhere else."""

import pytest

from pentools.decimals import in_markup, in_text


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("1.75 mL ± 0.01", "1,75 mL ± 0,01"),
        ("12.60\u202fmm (0.496\u202fin).", "12,60\u202fmm (0,496\u202fin)."),
        ("97 % of 1.8.", "97 % of 1,8."),
        ("version 1.2.3", "version 1.2.3"),
        ("photo-1.2.jpg", "photo-1.2.jpg"),
        ("barrel2.5x", "barrel2.5x"),
        ("14:32:07 on 2026-03-14", "14:32:07 on 2026-03-14"),
    ],
)
def test_numbers_only(text, shown):
    assert in_text(text, ",") == shown
    assert in_text(text, ".") == text


def test_attributes_stay():
    svg = '<svg viewBox="0 0 1.5 2.5"><path d="M 0.5 1.5"/><text x="1.5">1.5 mm</text></svg>'
    assert in_markup(svg, ",") == svg.replace(">1.5 mm<", ">1,5 mm<")


def test_on_a_page_and_in_a_panel(tmp_path):
    from pentools.panels.bench import BenchSheet
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job
    from pentools.writeup.page import render_page

    (tmp_path / "bench.toml").write_text('[bench]\ndecimal_sign = ","\n')
    job = create_job(open_bench_folder(tmp_path), "green-piston", sample="green-piston")
    page = render_page(job, "owner")
    assert "1,748\u202fmL" in page
    assert "1.748\u202fmL" not in page
    assert "1,748" in BenchSheet(job).panel("fill test").result_text.value
