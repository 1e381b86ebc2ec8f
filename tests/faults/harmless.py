"""Everything that looks at a job, one after the other: what raises is told by name, and nothing stops the rest."""

import contextlib
import io
import shutil
import traceback
from pathlib import Path

from pentools import cli
from pentools.panels.bench import BenchSheet
from pentools.record.holds import state_of
from pentools.record.job import RECORD_NAME, job_in, shipped_folder
from pentools.record.ledger import ledger_row
from pentools.record.registry import STAGES, all_stages
from pentools.record.review import review
from pentools.writeup.forms import files_of, page_forms
from pentools.writeup.notebook import read_notebook

SAMPLES = tuple(sorted(path.name for path in shipped_folder("sample_jobs").iterdir()))


def lay_out(bench, name, lines):
    """A job's folder with a sample's notebook and pictures and the given lines as its record."""
    folder = Path(bench) / name
    if not folder.exists():
        sample = name if name in SAMPLES else SAMPLES[0]
        shutil.copytree(shipped_folder("sample_jobs") / sample, folder)
        if name != sample:
            (folder / f"{sample}.ipynb").rename(folder / f"{name}.ipynb")
    (folder / RECORD_NAME).write_bytes(lines)
    return folder


class Troubles(list):
    """What raised: where, and the last lines of how."""

    def tried(self, where, call):
        try:
            return call()
        except Exception as error:  # noqa: BLE001 - whatever it is, it is told
            last = traceback.extract_tb(error.__traceback__)[-1]
            self.append(
                f"{where}: {type(error).__name__}: {str(error)[:200]} ({Path(last.filename).name}:{last.lineno})"
            )
            return None


def looked_at(job):
    """What raises where a job's state, its review and its row of the ledger are asked for."""
    troubles = Troubles()
    for stage in all_stages():
        troubles.tried(f"state of {stage.key}", lambda stage=stage: state_of(job, stage))
    troubles.tried("review", lambda: [str(finding) for finding in review(job)])
    troubles.tried("ledger", lambda: ledger_row(job))
    return troubles


def paged(job):
    """What raises where every form of write-up is made, whether it may go out or not."""
    troubles = Troubles()
    notebook = troubles.tried("notebook", lambda: read_notebook(job.notebook))
    for form in page_forms():
        troubles.tried(form.key, lambda form=form: files_of(form, job, notebook, draft=True))
    return troubles


def panelled(job):
    """What raises where the sheet and every panel are opened, with all they can show."""
    troubles = Troubles()
    sheet = troubles.tried("sheet", lambda: BenchSheet(job))
    if sheet is None:
        return troubles

    def shown(key):
        panel = sheet.stage(key)
        panel.more_button.value = True
        assert "unexpected" not in panel.status.widget.value, panel.status.widget.value
        for form in panel.chooser.options:
            panel.chooser.value = form[1]
            assert "unexpected" not in panel.status.widget.value, panel.status.widget.value

    for key in STAGES:
        troubles.tried(f"panel {key}", lambda key=key: shown(key))
    troubles.tried("sheet's list", sheet.check)
    troubles.tried("sheet told of a change", lambda: sheet.changed(None))
    return troubles


def commanded(folder):
    """What raises where the commands about a job are run; an exit code is an answer."""
    troubles = Troubles()
    for words in (["check"], ["writeup"]):
        said = io.StringIO()
        with contextlib.redirect_stdout(said), contextlib.redirect_stderr(said):
            troubles.tried(
                f"pentools {words[0]}",
                lambda words=words: cli.main([*words, folder.name, "--bench", str(folder.parent)]),
            )
    return troubles


def everything(folder):
    """All of the above for the job in a folder."""
    troubles = Troubles()
    job = troubles.tried("opening", lambda: job_in(folder))
    if job is None:
        return troubles
    troubles += looked_at(job) + paged(job) + panelled(job) + commanded(folder)
    return troubles
