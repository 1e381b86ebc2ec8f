"""The check in words: one job, the whole bench with one bad job on it, and what was mended or merged."""

import pytest

from pentools.errors import InputError, RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.checking import Checked, check, check_bench, check_job, mended_in_words, merged_in_words
from pentools.record.mending import Mended
from pentools.record.merging import MergeReport


def said(run, *given, **more):
    lines = []
    return run(*given, lines.append, **more), "\n".join(lines)


def test_a_job_is_told_with_its_stages(new_job):
    job = new_job()
    outcome, text = said(check_job, job)
    assert outcome.grave > 0
    assert text.startswith(f"{job.name}: 0 entries\n  Intake")
    assert text.endswith("1 matters here, 4 for a fuller record.")
    assert (
        text.index("Matters here:") < text.index("Owed before it goes home: who") < text.index("For a fuller record:")
    )


def test_one_job_that_cannot_be_read_stands_in_nobodys_way(bench, new_job, monkeypatch):
    good, bad, odd = new_job("good"), new_job("bad"), new_job("odd")
    (bad.folder / "record.jsonl").mkdir()
    odd.add("intake", "arrival", {"pen": "a pen"})
    good.add("intake", "arrival", {"pen": "a pen"})
    (bench.folder / "my pen").mkdir()
    (bench.folder / "my pen" / "record.jsonl").write_text("")
    (bench.folder / "no job").mkdir()

    def review(job):
        return 1 / 0 if job.name == "odd" else ()

    monkeypatch.setattr("pentools.record.checking.review", review)
    outcome, text = said(check_bench, bench)
    assert outcome == Checked(0, 3)
    assert "good: 1 entry. Nothing is missing." in text
    assert "bad: cannot be read." in text
    assert "is no file" in text
    assert "odd: cannot be read. Something unexpected went wrong (ZeroDivisionError)" in text
    assert "my pen: cannot be read. job name must be" in text
    assert "no job" not in text
    assert text.endswith("4 jobs: 0 to look at again, 3 that cannot be read, 1 with nothing that matters missing.")


def test_what_is_odd_about_the_bench_is_said_once(bench, new_job):
    for name in ("pen-a", "pen-b"):
        new_job(name)
    (bench.folder / "bench.toml").write_text("[bench]\ncontact = 5\n")
    outcome, text = said(check_bench, open_bench_folder(bench.folder))
    assert text.count("[bench] contact") == 1
    assert outcome.grave > 1
    assert "2 jobs: 2 to look at again" in text


def test_an_empty_and_a_missing_bench(bench, tmp_path):
    outcome, text = said(check_bench, bench)
    assert (outcome, "There is no job in" in text) == (Checked(), True)
    with pytest.raises(RecordError, match="cannot be looked into"):
        check_bench(open_bench_folder(tmp_path / "nowhere"), print)


def test_to_mend_wants_one_job(bench, new_job):
    with pytest.raises(InputError, match="named"):
        check(bench, None, print, mend=True)
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen"})
    with job.record.path.open("ab") as file:
        file.write(b"no entry\n")
    lines = []
    check(bench, job.name, lines.append, mend=True)
    assert lines[0].startswith("Line 2 of the record cannot be read and was set aside in record-unread-")
    assert "Nothing was deleted." in lines[0]
    assert not any("was left as it is" in line for line in lines)
    lines.clear()
    check(bench, job.name, lines.append, mend=True)
    assert lines[0] == "There is nothing to mend."


def test_what_was_mended_is_named():
    text = " ".join(mended_in_words(Mended((3, 5), "aside.txt", "kept.txt", ("pen-1/", "record.jsonl"))))
    for word in ("Lines 3, 5", "aside.txt", "kept.txt", "only you can read pen-1/ and record.jsonl"):
        assert word in text


def test_what_was_merged_is_counted_three_ways():
    text = " ".join(
        merged_in_words(MergeReport(4, ("abc",), there=7, unread=2, aside="aside.txt", both=True, strangers=True))
    )
    for word in (
        "4 entries taken over",
        "7 passed by",
        "3 lines set aside in aside.txt, 2 of them because they cannot be read",
        "Entry abc differs",
        "own order stands first",
        "Is it a copy of this very job?",
    ):
        assert word in text
    assert merged_in_words(MergeReport(1, ()))[-1] == "0 set aside."
