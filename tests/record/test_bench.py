"""The bench's file: own facts over the usual ones, and what cannot be used is named by its place."""

import os

import pytest

from pentools.errors import InputError, RecordError
from pentools.record.bench import bench_folder, check_job_name, open_bench_folder


def written(tmp_path, text):
    (tmp_path / "bench.toml").write_text(text, encoding="utf-8")
    return open_bench_folder(tmp_path)


def test_own_facts_stand_over_the_usual_ones_and_the_rest_is_kept(tmp_path):
    bench = written(tmp_path, '[money]\nrate_per_hour = 35\n[stock]\nrings = ["1.78 mm x 5.28 mm"]\n[lamp]\nbulb = 7\n')
    assert bench.rate_per_hour == 35.0
    assert bench.text("money", "currency") == "EUR"
    assert bench.strings("stock", "rings") == ("1.78 mm x 5.28 mm",)
    assert (bench.text("lamp", "bulb"), bench.text("lamp", "shade")) == ("7", "")
    assert bench.large_type is False


def test_another_paper_leaves_the_rest_as_it_is(tmp_path):
    bench = written(tmp_path, '[bench]\nname = "the Weir"\n')
    other = bench.on_paper("Letter")
    assert [one.text("bench", "paper") for one in (bench, other)] == ["A4", "Letter"]
    assert (other.text("bench", "name"), other.folder) == ("the Weir", bench.folder)


def test_a_file_that_is_there_is_never_written_over(tmp_path):
    written(tmp_path, "[bench]\nlarge_type = true\n")
    assert open_bench_folder(tmp_path, create=True).large_type is True
    assert (tmp_path / "bench.toml").read_text(encoding="utf-8") == "[bench]\nlarge_type = true\n"


def test_what_cannot_be_used_is_among_the_problems_and_the_rest_is_used(tmp_path):
    bench = written(tmp_path, '[money]\nrate_per_hour = -1\ncurrency = "CHF"\n')
    assert (bench.rate_per_hour, bench.text("money", "currency")) == (0.0, "CHF")
    assert len(bench.problems) == 1
    assert written(tmp_path, "").problems == ()


def test_the_folder_given_goes_before_the_environment_and_that_before_the_home_folder(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    monkeypatch.delenv("PENTOOLS_BENCH", raising=False)
    assert bench_folder() == (tmp_path / "pen-bench").resolve()
    monkeypatch.setenv("PENTOOLS_BENCH", "~/other")
    assert bench_folder() == (tmp_path / "other").resolve()
    assert bench_folder(tmp_path / "third") == (tmp_path / "third").resolve()


@pytest.mark.parametrize(
    ("name", "rule"),
    [
        ("x" * 300, "at most 64 letters long (this one has 300)"), ("a/b", "without slashes"), ("../pen", "without slashes"),
        ("a\\b", "without slashes"), ("CON", "keep for a device, as they do CON"), ("nul.txt", "as they do NUL"),
        ("pén 1", "without é, a space"), ("pen\n", "without a line end"), ("a..b", "two full stops"),
        ("-pen", "begun and ended with"), ("pen.", "begun and ended with"), ("", "must be given"), ("  ", "must be given"),
    ],
)  # fmt: skip
def test_a_refusal_of_a_job_name_names_the_rule(name, rule):
    with pytest.raises(InputError, match="job name must be") as refused:
        check_job_name(name)
    assert rule in str(refused.value)


def test_a_job_name_takes_up_to_64_letters_and_never_leaves_the_bench():
    assert check_job_name("x" * 64) == "x" * 64
    assert check_job_name("2026-014_green.piston") == "2026-014_green.piston"
    assert check_job_name("console") == "console"
    for name in ("x" * 65, "../pen", "a..b", "nul.txt", "pen."):
        with pytest.raises(InputError, match="job name must be"):
            check_job_name(name)


@pytest.mark.skipif(os.name != "posix", reason="this system keeps no such rights")
def test_what_is_made_is_its_owner_s_alone(tmp_path):
    open_bench_folder(tmp_path / "a" / "bench", create=True)
    modes = [(tmp_path / "a" / name).stat().st_mode & 0o777 for name in ("bench", "bench/bench.toml")]
    assert modes == [0o700, 0o600]


def test_a_bench_that_cannot_be_made_leaves_nothing_behind(tmp_path, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pentools.record.appending.os.write", full)
    with pytest.raises(RecordError, match="No space left"):
        open_bench_folder(tmp_path / "bench", create=True)
    assert list(tmp_path.iterdir()) == []
