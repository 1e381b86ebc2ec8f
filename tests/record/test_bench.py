"""The bench's file: own facts over the usual ones, and what cannot be used is named by its place."""

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


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ('[caliper]\nuncertainty = "0.02 g"\n', r"\[caliper\] uncertainty"),
        ('[balance]\nreadability = "fine"\n', r"\[balance\] readability"),
        ("[money]\nrate_per_hour = -1\n", "rate_per_hour must be a number, zero or more: got -1"),
        ("[money]\nrate_per_hour = true\n", "rate_per_hour must be a number"),
        ("room = 20\n", r"\[room\] must be a table"),
        ("[bench\n", "Mend that line"),
    ],
)
def test_what_cannot_be_used_is_named_by_its_place(tmp_path, text, place):
    with pytest.raises(RecordError, match=place):
        written(tmp_path, text)


def test_the_folder_given_goes_before_the_environment_and_that_before_the_home_folder(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    monkeypatch.delenv("PENTOOLS_BENCH", raising=False)
    assert bench_folder() == (tmp_path / "pen-bench").resolve()
    monkeypatch.setenv("PENTOOLS_BENCH", "~/other")
    assert bench_folder() == (tmp_path / "other").resolve()
    assert bench_folder(tmp_path / "third") == (tmp_path / "third").resolve()


def test_a_job_name_takes_up_to_64_letters_and_never_leaves_the_bench():
    assert check_job_name("x" * 64) == "x" * 64
    for name in ("x" * 65, "../pen", "a..b", "nul.txt", "pen."):
        with pytest.raises(InputError, match="job name must be"):
            check_job_name(name)
