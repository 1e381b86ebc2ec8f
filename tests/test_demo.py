"""The demonstration: the sample pen worked through, and never worked over."""

from pentools.demo import SAMPLE, run_demo


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
