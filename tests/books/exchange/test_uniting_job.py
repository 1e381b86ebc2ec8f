"""A copy of a job is taken over entry by entry and picture by picture; nothing here is written over, and twice is once."""

import shutil

import pytest

from pentools.books.exchange.uniting_job import take_over
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, open_job
from pentools.record.stages.job.pictures import PICTURE


@pytest.fixture
def pair(tmp_path):
    """The same job on two benches, from one sample."""
    here = create_job(open_bench_folder(tmp_path / "here", create=True), "lever", sample="lever-back-again")
    shutil.copytree(tmp_path / "here", tmp_path / "there")
    return here, open_job("lever", bench=open_bench_folder(tmp_path / "there"))


def state(job):
    return {
        p.relative_to(job.folder).as_posix(): p.read_bytes()
        for p in job.folder.rglob("*")
        if p.is_file() and not p.name.startswith(".")
    }


def photos(job):
    return [logged.values.photo for logged in open_job(job.name, bench=job.bench).log(PICTURE)]


def test_what_is_the_same_is_passed_by(pair):
    here, there = pair
    before = state(here)
    taken = take_over(here, there.folder)
    assert not taken.anything
    assert taken.record.there == 17
    assert state(here) == before


def test_entries_of_both_stand_in_the_record_and_the_other_copy_is_only_read(pair):
    here, there = pair
    here.add("work log", "note", {"note": "here"})
    there.add("work log", "note", {"note": "there"})
    untouched = state(there)
    taken = take_over(here, there.folder)
    assert taken.record.added == 1
    notes = [e.data["note"] for e in open_job("lever", bench=here.bench).record.live("work log", "note")]
    assert sorted(notes) == ["here", "there"]
    assert state(there) == untouched
    before = state(here)
    assert not take_over(open_job("lever", bench=here.bench), there.folder).anything
    assert state(here) == before


def test_a_look_writes_nothing_and_says_the_same(pair):
    here, there = pair
    there.add("work log", "note", {"note": "there"})
    (there.folder / "photos" / "new.jpg").write_bytes(b"new")
    (there.folder / "photos" / "side-before.jpg").write_bytes(b"other")
    before = state(here)
    look = take_over(here, there.folder, write=False)
    assert state(here) == before
    done = take_over(here, there.folder)
    assert (
        (look.record.added, look.files, look.beside)
        == (done.record.added, done.files, done.beside)
        == (1, ("photos/new.jpg",), look.beside)
    )


def test_a_picture_whose_name_is_taken_lies_beside_and_its_entry_names_it_so(pair):
    here, there = pair
    for job, content in ((here, b"mine"), (there, b"theirs")):
        (job.folder / "photos" / "nib.jpg").write_bytes(content)
        job.add("pictures", "picture", {"photo": "nib.jpg", "moment": "during", "shows": content.decode()})
    taken = take_over(here, there.folder)
    (name,) = taken.beside.values()
    assert name.startswith("photos/nib-")
    assert (here.folder / name).read_bytes() == b"theirs"
    assert (here.folder / "photos" / "nib.jpg").read_bytes() == b"mine"
    assert taken.renamed == 1
    shown = {logged.values.shows: logged.values.photo for logged in open_job("lever", bench=here.bench).log(PICTURE)}
    assert (shown["mine"], f"photos/{shown['theirs']}") == ("nib.jpg", name)
    before = state(here)
    again = take_over(open_job("lever", bench=here.bench), there.folder)
    assert (again.anything, again.renamed) == (False, 0)
    assert state(here) == before


def test_a_picture_that_is_here_under_another_name_is_not_laid_twice(pair):
    here, there = pair
    (here.folder / "photos" / "mine.jpg").write_bytes(b"one picture")
    (there.folder / "photos" / "theirs.jpg").write_bytes(b"one picture")
    there.add("pictures", "picture", {"photo": "theirs.jpg", "moment": "during"})
    taken = take_over(here, there.folder)
    assert (taken.files, dict(taken.beside), taken.renamed) == ((), {}, 1)
    assert photos(here)[-1] == "mine.jpg"


def test_an_entry_that_stood_here_before_keeps_its_picture(pair):
    here, there = pair
    (there.folder / "photos" / "side-before.jpg").write_bytes(b"retouched there")
    taken = take_over(here, there.folder)
    assert list(taken.beside) == ["photos/side-before.jpg"]
    assert taken.renamed == 0
    assert photos(here) == photos(there)


def test_lines_that_contradict_each_other_are_set_aside_once(pair):
    here, there = pair
    lines = there.record.path.read_bytes()
    there.record.path.write_bytes(lines.replace(b"a blotting paper", b"two blotting papers") + b"no line\n")
    taken = take_over(here, there.folder)
    assert len(taken.record.conflicts) == 1
    assert taken.aside == 2
    assert len(list(here.folder.glob("record-unlike-*.txt"))) == 1
    before = state(here)
    assert take_over(open_job("lever", bench=here.bench), there.folder).aside == 0
    assert state(here) == before


def test_a_notebook_with_other_words_lies_beside_and_pages_stay_out(pair):
    here, there = pair
    there.notebook.write_text("{}")
    (there.folder / "writeup").mkdir(exist_ok=True)
    (there.folder / "writeup" / "letter.html").write_text("x")
    mine = here.notebook.read_bytes()
    taken = take_over(here, there.folder)
    assert here.notebook.read_bytes() == mine
    assert (here.folder / taken.beside["lever.ipynb"]).read_text() == "{}"
    assert not (here.folder / "writeup" / "letter.html").exists()


def test_a_job_of_another_name_there_brings_its_notebook_under_the_name_here(pair, tmp_path):
    here, _ = pair
    (tmp_path / "there" / "lever").rename(tmp_path / "there" / "old")
    (tmp_path / "there" / "old" / "lever.ipynb").rename(tmp_path / "there" / "old" / "old.ipynb")
    assert not take_over(here, tmp_path / "there" / "old").anything
