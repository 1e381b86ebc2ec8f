"""`pentools quote` at the command line: a job's, all that held, and what is refused."""

import json

from pentools.cli import main
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


def bench_of(tmp_path, count):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    (bench.folder / "bench.toml").write_text('[money]\ncurrency = "EUR"\nrate_per_hour = 40\n')
    for number in range(count):
        job = create_job(bench, f"old-{number}")
        job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac"})
        job.add("intake", "request", {"asked": "a sac", "work": "re-sac"})
        job.add("work log", "work", {"activity": "seal", "minutes": f"{50 + 5 * number} min", "done": "it"})
        job.add("work log", "material", {"what": "sac", "way": "added", "part": "seals", "cost": "2.80 EUR"})
        job.add("release", "result", {"ending": "done", "summary": "x", "price": "45 EUR"})
    job = create_job(bench, "new")
    job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac"})
    job.add("intake", "request", {"asked": "a sac", "work": "re-sac"})
    return str(bench.folder)


def test_a_quote_as_json_has_exact_amounts(tmp_path, capsys):
    folder = bench_of(tmp_path, 4)
    assert main(["quote", "new", "--bench", folder, "--json"]) == 0
    out = capsys.readouterr().out
    data = json.loads(out)
    assert data["jobs"] == ["old-0", "old-1", "old-2", "old-3"]
    assert data["n"] == 4
    assert data["minutes"]["low"] < data["minutes"]["likely"] < data["minutes"]["high"]
    assert data["price"]["low"] < data["price"]["high"] <= data["ceiling"]
    assert '"rate_per_hour": 40' in out
    assert '"low": 2.80' in out
    assert main(["quote", "old-1", "--bench", folder]) == 0
    assert "old-1" not in capsys.readouterr().out


def test_too_few_is_an_answer_and_a_job_that_is_not_there_is_none(tmp_path, capsys):
    folder = bench_of(tmp_path, 2)
    assert main(["quote", "new", "--bench", folder]) == 0
    assert capsys.readouterr().out.startswith("Too few to say")
    assert main(["quote", "nobody", "--bench", folder]) == 3
    assert "There is no job nobody" in capsys.readouterr().err


def test_one_job_or_all_is_asked_for(tmp_path, capsys):
    folder = bench_of(tmp_path, 2)
    assert main(["quote", "--held", "--json", "--bench", folder]) == 0
    assert json.loads(capsys.readouterr().out)["hours_held"] == "too few to say"
    assert main(["quote", "--bench", folder]) == 2
    assert main(["quote", "new", "--held", "--bench", folder]) == 2
    assert "or with --held for all" in capsys.readouterr().err
