"""Everything that looks at a job, one after the other: what raises is told by name, and nothing stops the rest."""

import contextlib
import datetime as dt
import io
import itertools
import json
import logging
import shutil
import traceback
import uuid
from pathlib import Path

from pentools import cli
from pentools.books.tables.pages import pages_of
from pentools.books.tables.worked import DRAWN, FILLINGS, FINDINGS
from pentools.panels.bench import BenchSheet, MessagePanel
from pentools.record.holds import state_of
from pentools.record.job import RECORD_NAME, job_in, shipped_folder
from pentools.record.layout import sample_names
from pentools.record.registry import STAGES, all_stages
from pentools.record.review import review
from pentools.writeup.forms import files_of, page_forms
from pentools.writeup.notebook import read_notebook

SECONDS = itertools.count(1_780_000_000)
SAMPLES = sample_names()


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
    """What raised, and what nobody meant to raise though it was said in words: where, and the last line of how."""

    def tried(self, where, call):
        log, meant = logging.getLogger("pentools.record.view"), _Unmeant()
        level = log.level
        log.addHandler(meant)
        log.setLevel(logging.INFO)
        try:
            return call()
        except Exception as error:  # noqa: BLE001 - whatever it is, it is told
            self.append(f"{where}: {_told(error)}")
            return None
        finally:
            log.removeHandler(meant)
            log.setLevel(level)
            self += [f"{where}, in words: {text}" for text in meant.found]


class _Unmeant(logging.Handler):
    """Gathers the errors that a question about a record raised and that are none of the kit's own."""

    def __init__(self):
        super().__init__()
        self.found = []

    def emit(self, record):
        self.found.append(_told(record.exc_info[1]))


def _told(error):
    last = traceback.extract_tb(error.__traceback__)[-1]
    return f"{type(error).__name__}: {str(error)[:200]} ({Path(last.filename).name}:{last.lineno})"


def looked_at(job):
    """What raises where a job's state, its review and its rows of the ledger are asked for."""
    troubles = Troubles()
    for stage in all_stages():
        troubles.tried(f"state of {stage.key}", lambda stage=stage: state_of(job, stage))
    troubles.tried("review", lambda: [str(finding) for finding in review(job)])
    troubles.tried("ledger", lambda: pages_of(job.bench, [job.name]))
    for question in (DRAWN, FILLINGS, FINDINGS):
        troubles.tried(question.key, lambda question=question: question.of(job))
    return troubles


def paged(job):
    """What raises where every form of write-up is made, whether it may go out or not."""
    troubles = Troubles()
    notebook = troubles.tried("notebook", lambda: read_notebook(job.notebook))
    for form in page_forms():
        troubles.tried(form.key, lambda form=form: files_of(form, job, notebook, draft=True))
    return troubles


def panel_of(sheet, key):
    """A stage's panel, opened on the sheet; a message in its place is a fault."""
    slot = sheet.stage(key)
    assert not isinstance(slot, MessagePanel), slot.text
    sheet.open_stage(key)
    return sheet.panel(key)


def panelled(job, *, every_form=False):
    """What raises where the sheet and every panel are opened, with all they can show; with every form chosen once."""
    troubles = Troubles()
    sheet = troubles.tried("sheet", lambda: BenchSheet(job))
    if sheet is None:
        return troubles

    def shown(key):
        panel = panel_of(sheet, key)
        panel.more_forms.value = True
        panel.more_button.value = True
        for _, form in panel.chooser.options if every_form else ():
            panel.chooser.value = form
        assert "unexpected" not in panel.status.text, panel.status.text

    for key in STAGES:
        troubles.tried(f"panel {key}", lambda key=key: shown(key))
    troubles.tried("sheet's list", sheet.check().show)
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


def line_of(stage, kind, data, **parts):
    """A line as another program might write it: nothing is asked of its values."""
    at = dt.datetime.fromtimestamp(next(SECONDS), dt.UTC).isoformat()  # a time of its own, so that each is told apart
    place = {"id": uuid.uuid4().hex, "at": at, "stage": stage, "kind": kind}
    whole = {**place, "data": data, "note": "", "replaces": None, "format": 1, **parts}
    return json.dumps(whole, ensure_ascii=False).encode("utf-8", "surrogatepass") + b"\n"


def record_of(sample):
    """The bytes of a sample's record."""
    return (shipped_folder("sample_jobs") / sample / RECORD_NAME).read_bytes()


def everything(folder):
    """All of the above for the job in a folder."""
    troubles = Troubles()
    job = troubles.tried("opening", lambda: job_in(folder))
    return troubles if job is None else [*troubles, *looked_at(job), *paged(job), *panelled(job), *commanded(folder)]
