"""What is kept lies on this machine, is the user's alone, and is never missed where it cannot be used."""

import msgspec
import pytest

from pentools.books.asked import Question, ask_bench
from pentools.books.kept import Shelf, stamps_on
from pentools.record.job import jobs_on
from pentools.record.stages.job.intake_kinds import ARRIVAL


class Pen(msgspec.Struct, frozen=True):
    pen: str


PEN = Question("pen", Pen, lambda job: Pen(job.newest(ARRIVAL).pen or ""))


@pytest.mark.parametrize(
    "spoil", [lambda p: p.write_bytes(b"no base" * 400), lambda p: p.write_bytes(p.read_bytes()[:900])]
)
def test_a_spoilt_file_is_laid_anew_and_loses_nothing(bench, spoil):
    first = ask_bench(bench, PEN)
    spoil(Shelf(bench).path)
    assert Shelf(bench).of("pen") == {}
    assert ask_bench(bench, PEN) == first
    assert sorted(Shelf(bench).of("pen")) == ["a-first", "b-second", "c-torn"]


def test_a_folder_that_cannot_be_written_is_done_without(bench, tmp_path):
    (tmp_path / "kept").write_text("a file where the folder should be")
    assert len(ask_bench(bench, PEN).answers) == 3


def test_it_is_the_users_alone_and_not_on_the_bench(bench):
    ask_bench(bench, PEN)
    path = Shelf(bench).path
    assert path.stat().st_mode & 0o077 == 0
    assert path.parent.stat().st_mode & 0o077 == 0
    assert not path.is_relative_to(bench.folder)


def test_every_job_on_the_bench_has_a_stamp_whatever_lies_there(bench):
    (bench.folder / "d-notebook-alone").mkdir()
    (bench.folder / "d-notebook-alone" / "d-notebook-alone.ipynb").touch()
    (bench.folder / "e-no-job").mkdir()
    (bench.folder / "f-round").symlink_to("f-round")
    (bench.folder / "g-folder" / "record.jsonl").mkdir(parents=True)
    (bench.folder / "h-file").touch()
    assert tuple(stamps_on(bench)) == jobs_on(bench)
    assert [name[0] for name in stamps_on(bench)] == list("abcdg")
