"""The notebook's server: this machine only, behind a token, with a person's own settings still heard."""

import json
import os
import shutil
import subprocess
import time
import urllib.error
import urllib.request
from pathlib import Path

import pytest

from pentools.lab import lab_command, lab_environment, run_lab
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "pen-1")


def test_it_listens_on_this_machine_only_and_serves_one_job(job):
    command = lab_command(job, port=8123, browser=False)
    assert {
        "--ServerApp.ip=127.0.0.1", "--ServerApp.port=8123",
        "--ServerApp.open_browser=False", "--ServerApp.terminals_enabled=False",
        f"--ServerApp.root_dir={job.folder}", "--LabApp.default_url=/lab/tree/pen-1.ipynb",
    } <= set(command)  # fmt: skip


def test_the_kits_settings_stand_beside_a_persons_own(tmp_path):
    there = {"JUPYTER_CONFIG_PATH": "own", "PATH": "bin"}
    environment = lab_environment(tmp_path, "secret", there)
    settings, own = environment["JUPYTER_CONFIG_PATH"].split(os.pathsep)
    assert own == "own"
    written = json.loads((tmp_path / "settings" / "labconfig" / "default_setting_overrides.json").read_text())
    assert settings == str(tmp_path / "settings")
    assert written["@jupyterlab/apputils-extension:notification"]["fetchNews"] == "false"
    assert environment["PATH"] == "bin"
    assert there == {"JUPYTER_CONFIG_PATH": "own", "PATH": "bin"}


def test_the_token_is_handed_over_in_a_file_of_ones_own(tmp_path):
    environment = lab_environment(tmp_path, "secret", {"JUPYTER_TOKEN": "a person's own"})
    path = Path(environment["JUPYTER_TOKEN_FILE"])
    assert path.read_text() == "secret"
    assert "JUPYTER_TOKEN" not in environment
    assert "secret" not in " ".join(environment.values())
    if os.name == "posix":
        assert path.stat().st_mode & 0o777 == 0o600


def test_the_address_said_is_the_one_served_with_a_new_token_each_time(job, monkeypatch):
    served, said = [], []

    def serve(command, env, check):
        served.append((command, Path(env["JUPYTER_TOKEN_FILE"]).read_text()))
        return subprocess.CompletedProcess(command, 5)

    monkeypatch.setattr("pentools.lab.subprocess.run", serve)
    assert run_lab(job, port=0, browser=False, say=said.append) == 5
    assert run_lab(job, port=8123, browser=False, say=said.append) == 5
    for (command, token), address in zip(served, said[1::2], strict=True):
        port = dict(word.split("=", 1) for word in command if "=" in word)["--ServerApp.port"]
        assert address.strip() == f"http://127.0.0.1:{port}/lab/tree/pen-1.ipynb?token={token}"
        assert port != "0"
        assert token not in " ".join(command)
    tokens = [token for _, token in served]
    assert len(set(tokens)) == 2
    assert all(len(token) >= 32 for token in tokens)


def processes():
    """The command lines that everybody on this machine can list, by process."""
    with subprocess.Popen(["ps", "-eo", "pid=,args="], stdout=subprocess.PIPE, text=True) as asked:
        return dict(line.split(None, 1) for line in asked.stdout if line.split()[1:])


@pytest.mark.skipif(os.name != "posix" or not shutil.which("ps"), reason="command lines are listed with ps")
def test_a_server_that_runs_wants_its_token_and_shows_it_to_nobody(job, monkeypatch):
    said, seen = [], {}

    def watch(command, env, check):
        with subprocess.Popen(command, env=env, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as server:
            try:
                address, token = said[1].strip().split("/lab/")[0], said[1].partition("token=")[2]
                seen["without"] = asked(f"{address}/api/sessions", server)
                seen["with"] = asked(f"{address}/api/sessions?token={token}", server)
                seen["shown"] = [args for args in processes().values() if token in args]
                seen["listed"] = str(server.pid) in processes()
            finally:
                server.terminate()
        return subprocess.CompletedProcess(command, 0)

    def asked(address, server):
        for _ in range(600):
            assert server.poll() is None
            try:
                return urllib.request.urlopen(address, timeout=10).status
            except urllib.error.HTTPError as error:
                return error.code
            except OSError:
                time.sleep(0.2)
        raise AssertionError("the server does not answer")

    monkeypatch.setattr("pentools.lab.subprocess.run", watch)
    run_lab(job, port=0, browser=False, say=said.append)
    assert seen == {"without": 403, "with": 200, "shown": [], "listed": True}
