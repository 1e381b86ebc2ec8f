"""The sample jobs and what they are written up as, made once for all tests of this folder."""

import functools

from building import ROOT

from pentools.record.job import job_in
from pentools.record.layout import sample_names
from pentools.writeup.forms import PAGE_FORMS, files_of
from pentools.writeup.notebook import read_notebook

SAMPLES = sample_names()
LEAD = "green-piston"


@functools.cache
def sample(name):
    return job_in(ROOT / "sample_jobs" / name)


@functools.cache
def made(name, form):
    """The files of a form of a sample, path below writeup/ to content."""
    job = sample(name)
    return files_of(PAGE_FORMS[form], job, read_notebook(job.notebook))


def words_of(text):
    return len(text.split())
