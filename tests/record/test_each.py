"""Every job on a bench is asked, in order; one that cannot be read or contradicts itself stands in nobody's way."""

from pentools.errors import InputError
from pentools.record.each import ask_each


def test_each_answers_by_its_name_and_a_bad_one_is_none(bench, new_job):
    for name in ("b-two", "a-one", "c-bad"):
        new_job(name).add("intake", "arrival", {"pen": f"pen {name}"})
    (bench.folder / "c-bad" / "record.jsonl").unlink()
    (bench.folder / "c-bad" / "record.jsonl").mkdir()
    (bench.folder / "no-job").mkdir()
    told = dict(ask_each(bench, lambda job: (job.name, len(job.record.live()))))
    assert list(told) == ["a-one", "b-two", "c-bad"]
    assert told == {"a-one": ("a-one", 1), "b-two": ("b-two", 1), "c-bad": None}
    assert list(dict(ask_each(bench, lambda job: job.name, without="a-one"))) == ["b-two", "c-bad"]


def test_a_question_that_entries_contradict_is_none(bench, new_job):
    new_job("pen").add("intake", "arrival", {"pen": "a pen"})

    def contradicted(_):
        raise InputError("mass", "one", "two")

    assert dict(ask_each(bench, contradicted)) == {"pen": None}
