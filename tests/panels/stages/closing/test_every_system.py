"""Every filling system goes home by its panel: asked where a step is skipped, its nights answered by a click each, nothing left over."""

import pytest

from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.closing.closing import closing_findings, closing_sentence
from pentools.record.stages.closing.proofs import owed_now
from pentools.record.stages.closing.work import closing_of
from pentools.systems.registry import SYSTEMS
from pentools.writeup.write import write_pages


def save(panel, steps):
    for key in steps:
        panel.steps.rows[key].tested.value = True
    form = panel.forms["order"]
    form.button.click()
    return form.status.text


def answer_what_is_owed(job, panel, moment):
    for proof in [one for one in owed_now(job) if one.row.moment == moment and one.state != "passed"]:
        passing = next(key for row, key in panel.proofs.buttons if row == proof.row.key and key != "begin")
        panel.proofs.buttons[proof.row.key, passing].click()


@pytest.mark.parametrize("system", SYSTEMS)
def test_it_goes_together_and_home(system, tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "one")
    job.add("intake", "arrival", {"pen": "a pen", "system": system, "material": "celluloid"})
    panel = BenchSheet(job).panel("closing")
    keys = list(panel.steps.rows)
    night = keys.index("rested")

    asked = save(panel, [keys[max(night - 1, 1)]])  # everything before it skipped
    assert "not saved" in asked.casefold()
    assert "first" in asked
    assert job.record.live("closing") == []
    panel.steps.rows[keys[max(night - 1, 1)]].done.value = False

    panel.steps.before.value = True
    assert save(panel, keys[:night]).startswith("saved ")
    answer_what_is_owed(job, panel, "closing")
    answer_what_is_owed(job, panel, "posting")
    if keys[night + 1 :]:
        assert save(panel, keys[night + 1 :]).startswith("saved ")
        answer_what_is_owed(job, panel, "posting")
    assert [proof.row.key for proof in owed_now(job) if proof.state != "passed"] == []
    assert closing_of(job).next_step is None
    assert closing_sentence(job).endswith("It owes no test any more.")
    assert [f.text for f in closing_findings(job) if f.level in ("stop", "warning")] == []
    job.add("release", "result", {"ending": "done", "summary": "It writes."})
    assert all(path.exists() for path in write_pages(job, ["letter", "record", "care"]))
