"""What is worked out from a record is worked out once, and again when a line is added."""

import itertools

import pytest

from pentools.errors import InputError
from pentools.panels.bench import BenchSheet
from pentools.record.job import create_job, job_in
from pentools.record.kinds import Kind
from pentools.record.stages.weighing.filling import capacity_of
from pentools.record.stages.weighing.kinds import SETUP, WEIGHING
from pentools.record.view import once_a_state


@pytest.fixture
def decodings(monkeypatch):
    """Which entries were decoded, by id, each time anew."""
    seen = []
    real = Kind.decode

    def counted(self, entry):
        seen.append(entry.id)
        return real(self, entry)

    monkeypatch.setattr(Kind, "decode", counted)
    return seen


def test_an_entry_is_decoded_once_however_often_it_is_asked_for(new_job, decodings):
    job = new_job()
    job.add("fill test", "weighing", {"state": "dry", "mass": "15 g"})
    for _ in range(3):
        assert job.newest(WEIGHING).mass.value == 15
        assert len(job.log(WEIGHING)) == 1
    assert job.log(WEIGHING) is job.log(WEIGHING)
    assert job.newest(SETUP).readability is None
    job.add("fill test", "weighing", {"state": "dry", "mass": "16 g"})
    assert [logged.values.mass.value for logged in job.log(WEIGHING)] == [15, 16]
    assert len(decodings) == 2


def test_saving_one_weighing_with_every_panel_open_decodes_each_entry_at_most_once(bench, decodings):
    job = create_job(bench, "job", sample="green-piston")
    sheet = BenchSheet(job_in(job.folder))
    for stage in ("intake", "fill test", "seal", "finish", "open", "clean", "release"):
        sheet.stage(stage)
        sheet.open_stage(stage)
    assert len(decodings) == len(set(decodings))
    decodings.clear()
    panel = sheet.panel("fill test")
    form = panel.forms["weighing"]
    form.boxes["state"].text, form.boxes["mass"].text = "dry", "18.43 g"
    form.save()
    assert "saved" in form.status.text
    assert 1 <= len(decodings) <= 2  # the new line; no older one again


def test_a_question_is_answered_once_a_state(new_job):
    count = itertools.count()

    @once_a_state
    def question(job, word, *, loud=False):
        return (next(count), word.upper() if loud else word, len(job.log(WEIGHING)))

    job, other = new_job("one"), new_job("two")
    first = question(job, "a", loud=True)
    assert question(job, "a", loud=True) is first
    assert question(job, "a")[1] == "a"
    assert question(other, "a", loud=True) != first
    job.add("fill test", "weighing", {"state": "dry", "mass": "15 g"})
    assert question(job, "a", loud=True)[2] == 1


def test_what_another_notebook_adds_is_seen(new_job):
    job = new_job()
    twin = job_in(job.folder)
    assert job.log(WEIGHING) == ()
    twin.add("fill test", "weighing", {"state": "dry", "mass": "15 g"})
    job.record.refresh()
    assert len(job.log(WEIGHING)) == 1


def test_a_refusal_is_kept_like_an_answer(new_job):
    count = itertools.count()

    @once_a_state
    def question(job):
        raise InputError("mass", "given", str(next(count)))

    job = new_job()
    for _ in range(2):
        with pytest.raises(InputError, match="got “0”"):
            question(job)


def test_no_answer_depends_on_the_order_of_asking(bench):
    from pentools.books.tables.worked import FILLINGS, FINDINGS
    from pentools.record.registry import all_stages
    from pentools.record.review import review

    create_job(bench, "job", sample="green-piston")

    def asked(order):
        job = job_in(bench.folder / "job")
        questions = {
            "capacity": lambda: capacity_of(job).sentence,
            "review": lambda: review(job),
            "fillings": lambda: FILLINGS.of(job),
            "findings": lambda: FINDINGS.of(job),
            **{stage.key: lambda stage=stage: stage.state_of(job) for stage in all_stages()},
        }
        return {key: questions[key]() for key in (list(questions) if order else reversed(questions))}

    assert asked(True) == asked(False)
