"""The list of parts wanted, over all pens on a bench."""

import pentools
from pentools.books.queue.wanted import wanted_in_words
from pentools.record.bench import open_bench_folder
from pentools.record.coming_back import start_from
from pentools.record.job import create_job

OILED = {"part": "threads", "method": "thread-oil"}


def test_every_makeshift_of_every_pen_is_a_row(tmp_path):
    bench = open_bench_folder(tmp_path, create=True)
    assert len(pentools.parts_wanted(tmp_path)) == 0
    one, two = create_job(bench, "one"), create_job(bench, "two")
    one.add("intake", "arrival", {"pen": "a red pen", "system": "piston"})
    one.add("repairs", "repair", {**OILED, "wanted": "a section of its own"})
    two.add("repairs", "repair", OILED)
    table = pentools.parts_wanted(tmp_path).set_index("job")
    assert list(table.index) == ["one", "two"]
    assert tuple(table.loc["one", ["pen", "system", "part", "wanted", "holds_now"]]) == (
        "a red pen", "piston", "threads", "a section of its own", "trace of oil or grease",
    )  # fmt: skip
    assert table["wanted"].isna().tolist() == [False, True]


def test_of_a_pen_that_came_back_the_newest_job_counts(tmp_path):
    bench = open_bench_folder(tmp_path, create=True)
    create_job(bench, "one").add("repairs", "repair", {**OILED, "wanted": "a section"})
    job = start_from(tmp_path, "two", "one")
    assert len(pentools.parts_wanted(tmp_path)) == 0
    job.add("repairs", "repair", {**OILED, "wanted": "a section"})
    assert list(pentools.parts_wanted(tmp_path)["job"]) == ["two"]


def test_a_job_that_cannot_be_read_hides_no_other(tmp_path):
    bench = open_bench_folder(tmp_path, create=True)
    create_job(bench, "one").add("repairs", "repair", OILED)
    (create_job(bench, "two").folder / "record.jsonl").write_bytes(b"\x00{")
    assert list(pentools.parts_wanted(tmp_path)["job"]) == ["one"]


def test_what_a_job_waits_for_stands_there_until_it_arrives_or_the_job_ends(tmp_path):
    job = create_job(open_bench_folder(tmp_path, create=True), "one")
    job.add("work log", "wanted", {"what": "a blind cap", "part": "blind-cap", "ordered_on": "2026-03-02"})
    job.add("work log", "wanted", {"what": "a clip"})
    [cap, _] = pentools.parts_wanted(tmp_path).to_dict("records")
    assert (cap["waits"], cap["ordered_on"], cap["holds_now"]) == (True, "2026-03-02", None)
    words = wanted_in_words(open_bench_folder(tmp_path))
    assert words[0].startswith("one: blind cap or end knob: waits for: a blind cap, since ")
    assert words[0].endswith(", ordered on 2026-03-02.")
    assert words[1].endswith(", not ordered yet.")
    job.add("work log", "wanted", {"what": "a blind cap", "arrived_on": "2026-03-20"})
    assert list(pentools.parts_wanted(tmp_path)["wanted"]) == ["a clip"]
    job.add("release", "result", {"ending": "stopped", "summary": "No clip is to be had."})
    assert list(pentools.parts_wanted(tmp_path)["wanted"]) == ["a clip"]
    job.add("release", "result", {"ending": "returned", "summary": "It goes home."})
    assert len(pentools.parts_wanted(tmp_path)) == 0
