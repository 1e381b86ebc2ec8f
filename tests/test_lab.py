"""The notebook's server: this machine only, behind a token, with a person's own settings still heard."""

import json
import os
import subprocess

import pytest

from pentools.lab import lab_command, lab_environment, run_lab
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "pen-1")


def test_it_listens_on_this_machine_only_and_serves_one_job(job):
    command = lab_command(job, token="secret", port=8123, browser=False)
    assert {
        "--ServerApp.ip=127.0.0.1", "--ServerApp.port=8123", "--IdentityProvider.token=secret",
        "--ServerApp.open_browser=False", "--ServerApp.terminals_enabled=False",
        f"--ServerApp.root_dir={job.folder}", "--LabApp.default_url=/lab/tree/pen-1.ipynb",
    } <= set(command)  # fmt: skip


def test_the_kits_settings_stand_beside_a_persons_own(tmp_path):
    there = {"JUPYTER_CONFIG_PATH": "own", "PATH": "bin"}
    environment = lab_environment(tmp_path, there)
    settings, own = environment["JUPYTER_CONFIG_PATH"].split(os.pathsep)
    assert own == "own"
    written = json.loads((tmp_path / "settings" / "labconfig" / "default_setting_overrides.json").read_text())
    assert settings == str(tmp_path / "settings")
    assert written["@jupyterlab/apputils-extension:notification"]["fetchNews"] == "false"
    assert environment["PATH"] == "bin"
    assert there == {"JUPYTER_CONFIG_PATH": "own", "PATH": "bin"}


def test_the_address_said_is_the_one_served_with_a_new_token_each_time(job, monkeypatch):
    served, said = [], []

    def serve(command, env, check):
        served.append(command)
        return subprocess.CompletedProcess(command, 5)

    monkeypatch.setattr("pentools.lab.subprocess.run", serve)
    assert run_lab(job, port=0, browser=False, say=said.append) == 5
    assert run_lab(job, port=8123, browser=False, say=said.append) == 5
    tokens = []
    for command, address in zip(served, said[1::2], strict=True):
        options = dict(word.split("=", 1) for word in command if "=" in word)
        port, token = options["--ServerApp.port"], options["--IdentityProvider.token"]
        assert address.strip() == f"http://127.0.0.1:{port}/lab/tree/pen-1.ipynb?token={token}"
        assert port != "0"
        tokens.append(token)
    assert len(set(tokens)) == 2
    assert all(len(token) >= 32 for token in tokens)
