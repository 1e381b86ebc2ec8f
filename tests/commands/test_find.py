"""Finding on the command line: words and sizes as they are typed, in lines or as JSON, and what cannot be read."""

import json

import pytest

from pentools.cli import main
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def bench(tmp_path, monkeypatch):
    monkeypatch.setenv("PENTOOLS_KEPT", str(tmp_path / "kept"))
    bench = open_bench_folder(tmp_path / "bench", create=True)
    job = create_job(bench, "pen-1")
    job.add("intake", "arrival", {"pen": "a red pen", "system": "lever-sac", "material": "casein"})
    job.add("seal", "measure", {"place": "sac", "bore": "7.61 mm", "nipple": "6.20 mm", "depth": "62 mm"})
    return bench


@pytest.fixture
def find(bench, capsys):
    def said(*words):
        code = main(["find", *words, "--bench", str(bench.folder)])
        out, err = capsys.readouterr()
        return code, out, err

    return said


@pytest.mark.parametrize(
    "words",
    [
        ("red",), ("--barrel", "7.6 mm", "--nipple", "6.2 mm"), ("--nipple", "0.244 in"), ("--nipple", "6,2 mm"),
        ("--nipple", "6.5 mm ± 0.2 mm"), ("--system", "lever filler"), ("--material", "Casein"), ("--part", "seals and sac"),
        ("--depth", "61.2 mm"), ("--sac-length", "60 mm", "--nipple", "6.2 mm"),
    ],
)  # fmt: skip
def test_what_is_typed_is_understood(find, words):
    code, out, _ = find(*words, "--json")
    found = json.loads(out)
    assert code == 0
    assert (found["n"], found["without_that_size"]) == ((0, 1) if "--sac-length" in words else (1, 0))


def test_lines(find):
    code, out, _ = find("red", "--nipple", "6.2 mm")
    assert code == 0
    assert out.splitlines()[0] == "pen-1  a red pen; on the bench"
    assert "near enough within twice" in out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "what to look for"), (("--nipple", "6.2"), "The unit is missing"), (("--nipple", ""), "a size with its unit"),
        (("--system", "steam"), "steam"), (("--part", "wheel"), "wheel"), (("red", "--most", "-1"), "0 or more"),
        (("--nipple", "400 mm"), "nipple"),
    ],
)  # fmt: skip
def test_what_cannot_be_used_is_said(find, words, said):
    code, out, err = find(*words)
    assert (code, out, said in err) == (2, "", True), err
