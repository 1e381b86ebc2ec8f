"""Two benches come together by the ids of their entries: copied, merged, kept apart, and doing it twice is doing it once."""

import shutil

import pytest

from pentools.books.exchange.uniting import ids_on, unite_benches
from pentools.books.invented.bench import invent_bench
from pentools.errors import InputError, RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.job import create_job, jobs_on, open_job


@pytest.fixture
def here(tmp_path):
    return open_bench_folder(tmp_path / "here", create=True)


@pytest.fixture
def there(tmp_path):
    return open_bench_folder(tmp_path / "there", create=True)


def state(bench):
    return {
        p.relative_to(bench.folder).as_posix(): p.read_bytes()
        for p in bench.folder.rglob("*")
        if p.is_file() and p.name != ".record.lock"
    }


def did(done):
    return {one.theirs: (one.here, one.did) for one in done.jobs}


def test_jobs_that_are_only_there_are_copied_without_their_pages(here, there):
    job = create_job(there, "lever", sample="lever-back-again")
    (job.folder / "writeup" / "letter.html").write_text("x")
    own = {
        name: content for name, content in state(there).items() if name.startswith("lever/") and "writeup" not in name
    }
    assert did(unite_benches(here, there.folder)) == {"lever": ("lever", "copied")}
    assert {name: content for name, content in state(here).items() if name.startswith("lever/")} == own
    before = state(here)
    assert did(unite_benches(here, there.folder)) == {"lever": ("lever", "the same")}
    assert state(here) == before


def test_a_job_of_both_is_merged_whatever_it_is_called_here(here, there, tmp_path):
    create_job(there, "lever", sample="lever-back-again")
    shutil.copytree(there.folder / "lever", here.folder / "lever-home")
    (here.folder / "lever-home" / "lever.ipynb").rename(here.folder / "lever-home" / "lever-home.ipynb")
    open_job("lever", bench=there).add("work log", "note", {"note": "there"})
    done = unite_benches(here, there.folder)
    assert did(done) == {"lever": ("lever-home", "merged")}
    assert jobs_on(here) == ("lever-home",)
    assert open_job("lever-home", bench=here).record.live("work log", "note")[-1].data == {"note": "there"}


def test_another_pen_of_the_same_name_is_laid_beside_and_never_mixed(here, there):
    for bench in (here, there):
        create_job(bench, "pen-1").add("intake", "arrival", {"pen": f"the pen of {bench.folder.name}"})
    done = unite_benches(here, there.folder)
    assert did(done) == {"pen-1": ("pen-1-2", "copied")}
    assert "another" in done.jobs[0].why.casefold()
    assert (here.folder / "pen-1-2" / "pen-1-2.ipynb").is_file()
    assert len(open_job("pen-1", bench=here).record.entries) == 1
    before = state(here)
    assert did(unite_benches(here, there.folder)) == {"pen-1": ("pen-1-2", "the same")}
    assert state(here) == before


def test_a_look_does_nothing(here, there):
    create_job(there, "lever", sample="lever-back-again")
    before = state(here)
    assert did(unite_benches(here, there.folder, write=False)) == {"lever": ("lever", "copied")}
    assert state(here) == before


def test_the_benches_own_facts_are_not_touched_and_their_differences_told(here, there):
    create_job(there, "lever", sample="lever-back-again")
    (there.folder / "bench.toml").write_text('[money]\nrate_per_hour = 40.0\ncurrency = "EUR"\n[own]\nshelf = "left"\n')
    mine = (here.folder / "bench.toml").read_bytes()
    done = unite_benches(here, there.folder)
    assert {fact.place: (fact.here, fact.there) for fact in done.facts} == {
        "money.rate_per_hour": (0.0, 40.0),
        "own": (None, {"shelf": "left"}),
    }
    assert (here.folder / "bench.toml").read_bytes() == mine


def test_one_that_cannot_be_taken_is_named_and_stops_nothing(here, there, tmp_path):
    create_job(there, "a-good").add("intake", "arrival", {"pen": "x"})
    (there.folder / "b-bad").mkdir()
    (there.folder / "b-bad" / "record.jsonl").mkdir()
    (there.folder / "b bad name").mkdir()
    (there.folder / "b bad name" / "record.jsonl").write_text("")
    create_job(there, "c-good").add("intake", "arrival", {"pen": "y"})
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / "record.jsonl").write_text("")
    (there.folder / "d-link").symlink_to(tmp_path / "elsewhere")
    done = did(unite_benches(here, there.folder))
    assert {name: way for name, (_, way) in done.items()} == {
        "a-good": "copied",
        "b bad name": "left",
        "b-bad": "left",
        "c-good": "copied",
        "d-link": "left",
    }
    assert "b bad name" not in {p.name for p in here.folder.iterdir()}


def test_a_job_that_stands_in_several_here_is_left(here, there):
    create_job(there, "lever", sample="lever-back-again")
    for name in ("one", "two"):
        create_job(here, name, sample="lever-back-again")
    done = unite_benches(here, there.folder)
    assert did(done) == {"lever": ("", "left")}
    assert "one, two" in done.jobs[0].why


def test_it_is_refused_on_itself_within_itself_and_where_there_is_nothing(here, tmp_path):
    create_job(here, "lever", sample="lever-back-again")
    for other in (here.folder, here.folder / "lever", here.folder.parent):
        with pytest.raises(InputError, match="another folder"):
            unite_benches(here, other)
    with pytest.raises(RecordError, match="no folder"):
        unite_benches(here, tmp_path / "nowhere")
    (tmp_path / "empty").mkdir()
    with pytest.raises(RecordError, match="no job"):
        unite_benches(here, tmp_path / "empty")


def test_both_ways_two_benches_come_to_the_same_entries(tmp_path):
    for name, seed in (("one", 1), ("two", 2)):
        invent_bench(tmp_path / name, 8, seed=seed)
    shutil.copytree(tmp_path / "one", tmp_path / "two", dirs_exist_ok=True)
    one, two = open_bench_folder(tmp_path / "one"), open_bench_folder(tmp_path / "two")
    job = jobs_on(one)[0]
    open_job(job, bench=one).add("work log", "note", {"note": "one"})
    open_job(job, bench=two).add("work log", "note", {"note": "two"})
    unite_benches(one, two.folder)
    unite_benches(two, one.folder)
    assert ids_on(one).keys() <= ids_on(two).keys()  # there a line more states the order
    assert [e.id for e in open_job(job, bench=one).record.live()] == [
        e.id for e in open_job(job, bench=two).record.live()
    ]


def test_a_fault_in_the_middle_of_a_copy_leaves_nothing(here, there, monkeypatch):
    create_job(there, "lever", sample="lever-back-again")

    def broken(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pentools.books.exchange.uniting.shutil.copyfile", broken)
    done = unite_benches(here, there.folder)
    assert done.jobs[0].did == "left"
    assert "No space left" in done.jobs[0].why
    assert [p.name for p in here.folder.iterdir()] == ["bench.toml"]


def test_the_drawer_is_not_touched_and_a_number_given_by_both_is_named(here, there):
    for bench, total in ((here, "20.00 EUR"), (there, "30.00 EUR")):
        job = create_job(bench, f"pen-{bench.folder.name}")
        data = {"number": "2026-001", "place": 1, "given_on": "2026-03-14", "total": total}
        job.record.append(new_entry("agree", "invoice", data))
    (there.folder / "stock.csv").write_text("kind,what\nsac,latex sac\n")
    done = unite_benches(here, there.folder)
    assert done.numbers == (("2026-001", ("pen-here", "pen-there")),)
    assert ("stock.csv", "0 lines", "2 lines") in [(fact.place, fact.here, fact.there) for fact in done.facts]
    assert not (here.folder / "stock.csv").exists()
    shutil.rmtree(here.folder / "pen-there")
    assert unite_benches(here, there.folder, write=False).numbers == ()
