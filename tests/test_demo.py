"""The demonstration: the sample pen worked through, and never worked over."""

from pentools.demo import SAMPLE, lay_year, run_demo


def test_the_pages_are_written_and_what_a_person_added_is_left(tmp_path):
    said = []
    run_demo(str(tmp_path), say=said.append, bench_option=" --bench here")
    folder = tmp_path / SAMPLE
    assert {page.name for page in (folder / "writeup").iterdir()} >= {"client.html", "blog.html", "record.html"}
    assert "Result: done." in said
    assert any("mL ±" in line for line in said)
    assert f"Open the notebook: pentools open {SAMPLE} --bench here" in said
    (folder / "photos" / "mine.txt").write_text("mine")
    record = (folder / "record.jsonl").read_bytes()
    again = []
    run_demo(str(tmp_path), say=again.append)
    assert again[0].endswith("it is left as it is.")
    assert (folder / "photos" / "mine.txt").read_text() == "mine"
    assert (folder / "record.jsonl").read_bytes() == record


def test_a_year_is_laid_once_and_a_bench_of_one_s_own_keeps_its_facts(tmp_path):
    said = []
    lay_year(str(tmp_path / "new"), say=said.append, bench_option=" --bench new")
    assert said[0].startswith("15 jobs")
    assert "  pentools queue --bench new" in said
    folder = tmp_path / "new" / "2026-002-brown-piston"
    assert (folder / "2026-002-brown-piston.ipynb").is_file()
    assert "north window" in (tmp_path / "new" / "bench.toml").read_text(encoding="utf-8")
    assert (tmp_path / "new" / "stock.csv").is_file()
    record = (folder / "record.jsonl").read_bytes() + b"\n"
    (folder / "record.jsonl").write_bytes(record)
    lay_year(str(tmp_path / "new"), say=said.append)
    assert said[-3].startswith("0 jobs")
    assert (folder / "record.jsonl").read_bytes() == record
    (tmp_path / "own").mkdir()
    (tmp_path / "own" / "bench.toml").write_text("[money]\nrate_per_hour = 50\n")
    lay_year(str(tmp_path / "own"), say=said.append)
    assert (tmp_path / "own" / "bench.toml").read_text() == "[money]\nrate_per_hour = 50\n"
    assert not (tmp_path / "own" / "stock.csv").exists()
