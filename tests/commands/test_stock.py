"""The drawer on the command line: as lines and as JSON, its list laid once, lots with what is written much like them."""

import json

import pytest

from pentools.cli import main
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def bench(tmp_path):
    bench = open_bench_folder(tmp_path, create=True)
    (tmp_path / "stock.csv").write_text(
        "kind,what,lot,how many,at least\nsac,latex sac 16,bag of May 2026,2,3\nsac,b,,few,\n"
    )
    job = create_job(bench, "a-pen")
    job.add("work log", "material", {"what": "latex sac 16", "way": "added", "part": "seals", "lot": "Bag of may 2026"})
    job.add("work log", "tool", {"tool": "wooden plug", "made_from": "beech", "dimensions": "7 mm"})
    return str(tmp_path)


def told(capsys, *words):
    assert main([*words, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_the_drawer(bench, capsys):
    found = told(capsys, "stock", "--bench", bench)
    sac, other = found["items"]
    assert (sac["counted"], sac["used"], sac["left"], sac["reorder"], sac["jobs"]) == (2.0, 1, 1.0, True, ["a-pen"])
    assert (other["counted"], other["left"]) == (None, None)
    assert found["reorder"] == ["latex sac 16"]
    assert "line 3: how many" in found["problems"][0]
    assert main(["--bench", bench, "stock"]) == 0
    said = capsys.readouterr()
    assert "Order latex sac 16, bag of May 2026: 1 left, and there should be at least 3." in said.out
    assert "not counted" in said.out
    assert "line 3" in said.err


def test_a_lot(bench, capsys):
    found = told(capsys, "stock", "--lot", "bag of MAY2026", "--bench", bench)
    assert (found["n"], found["came_back"], found["share"], [one["job"] for one in found["jobs"]]) == (
        1,
        0,
        None,
        ["a-pen"],
    )
    assert main(["stock", "--lot", "bag of My 2026", "--bench", bench]) == 0
    assert "Written much like it:" in capsys.readouterr().out
    assert main(["stock", "--lot", "bag of May 2026", "--bench", bench]) == 0
    assert "1 pen got" in capsys.readouterr().out


def test_the_tools(bench, capsys):
    assert told(capsys, "stock", "--tools", "--bench", bench)["tools"][0]["jobs"] == ["a-pen"]
    assert main(["stock", "--tools", "--bench", bench]) == 0
    assert "wooden plug, 7 mm: made of beech for a-pen on " in capsys.readouterr().out


def test_the_list_is_laid_once(tmp_path, capsys):
    assert main(["stock", "--bench", str(tmp_path)]) == 0
    assert "stock --start" in capsys.readouterr().out
    assert main(["stock", "--start", "--bench", str(tmp_path)]) == 0
    before = (tmp_path / "stock.csv").read_bytes()
    assert main(["stock", "--start", "--bench", str(tmp_path)]) == 2
    assert (tmp_path / "stock.csv").read_bytes() == before
    assert [item["what"] for item in told(capsys_cleared(capsys), "stock", "--bench", str(tmp_path))["items"]] == [
        "latex sac 16"
    ]


def capsys_cleared(capsys):
    capsys.readouterr()
    return capsys
