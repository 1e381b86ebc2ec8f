"""The sheet brought to life before the browser opens: what is written into the notebook, and that it goes again."""

import concurrent.futures
import json
import subprocess
import urllib.request

import nbformat
import pytest

from pentools import live
from pentools.errors import RecordError
from pentools.lab import _free_port, lab_command, lab_environment
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.serving import READY_FILE

TOKEN = "a-token-for-this-test"


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "pen-1")
    job.add("intake", "owner", {"owner": "Ottilie Privatname", "contact": "ottilie@example.org"})
    return job


@pytest.fixture
def server(job, tmp_path, monkeypatch):
    held = tmp_path / "lab"
    held.mkdir()
    for name in ("JUPYTER_RUNTIME_DIR", "JUPYTER_DATA_DIR", "JUPYTER_CONFIG_DIR", "IPYTHONDIR"):
        monkeypatch.setenv(name, str(held / name.lower()))
    port = _free_port()
    with (held / "lab.log").open("wb") as log:
        process = subprocess.Popen(
            lab_command(job.notebook, port=port),
            env=lab_environment(held, TOKEN) | {READY_FILE: str(held / "ready")},
            stdout=log,
            stderr=log,
        )
        live.wait_for_server(f"http://127.0.0.1:{port}", TOKEN, process.poll, 120)
        yield f"http://127.0.0.1:{port}"
        process.terminate()
        process.wait(30)


def stories(notebook):
    return [cell.source for cell in nbformat.read(notebook, 4).cells if cell.cell_type == "markdown"]


def code(notebook):
    return [cell for cell in nbformat.read(notebook, 4).cells if cell.cell_type == "code"]


def test_every_stage_stands_in_the_notebook_trusted_and_with_nothing_private_beside_it(job, server):
    told = stories(job.notebook)
    live.bring_to_life(server, TOKEN, job.notebook)
    cells = code(job.notebook)
    assert all(any("application/vnd.jupyter.widget-view+json" in o.get("data", {}) for o in c.outputs) for c in cells)
    assert all(o["data"]["text/plain"] == live.SHOWN for c in cells for o in c.outputs)
    assert "Privatname" not in job.notebook.read_text(encoding="utf-8")
    assert stories(job.notebook) == told
    from nbformat.sign import NotebookNotary

    assert NotebookNotary().check_signature(nbformat.read(job.notebook, 4))
    live.put_to_rest(job.notebook)
    assert all(c.outputs == [] and c.execution_count is None for c in code(job.notebook))
    assert stories(job.notebook) == told


def test_the_notebook_is_handed_over_to_the_browser_only_then(job, server, tmp_path):
    def got():
        address = f"{server}/api/contents/{job.notebook.name}?content=1&token={TOKEN}"
        with urllib.request.urlopen(address, timeout=30) as answer:
            return json.load(answer)["content"]["cells"]

    with concurrent.futures.ThreadPoolExecutor() as pool:
        asked = pool.submit(got)
        live.bring_to_life(server, TOKEN, job.notebook)
        assert not asked.done()
        (tmp_path / "lab" / "ready").touch()
        assert all(cell["outputs"] for cell in asked.result(30) if cell["cell_type"] == "code")


def test_a_server_that_ended_is_said():
    with pytest.raises(RecordError, match="ended before it answered"):
        live.wait_for_server("http://127.0.0.1:9", TOKEN, lambda: 1)
    with pytest.raises(RecordError, match="did not answer in 0 s"):
        live.wait_for_server("http://127.0.0.1:9", TOKEN, lambda: None, 0.0)


@pytest.mark.parametrize("text", ["", "{", json.dumps({"cells": 5})])
def test_a_notebook_that_cannot_be_read_is_left_as_it_is(tmp_path, text):
    path = tmp_path / "pen.ipynb"
    path.write_text(text)
    live.put_to_rest(path)
    assert path.read_text() == text
    live.put_to_rest(tmp_path / "not-there.ipynb")
