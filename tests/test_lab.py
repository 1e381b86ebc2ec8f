"""The notebook's server: this machine only, behind a token, with a person's own settings still heard."""

import html
import json
import os
import shutil
import signal
import subprocess
import sys
import urllib.error
import urllib.parse
import urllib.request
from pathlib import Path
from typing import ClassVar
from urllib.request import url2pathname

import pytest

from pentools.errors import RecordError
from pentools.lab import lab_command, lab_environment, run_lab
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "pen-1")


def test_it_listens_on_this_machine_only_and_serves_one_job(job):
    command = lab_command(job.notebook, port=8123)
    assert {
        "--ServerApp.ip=127.0.0.1", "--ServerApp.port=8123",
        "--ServerApp.open_browser=False", "--ServerApp.terminals_enabled=False",
        f"--ServerApp.root_dir={job.folder}", "--LabApp.default_url=/doc/tree/pen-1.ipynb",
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


def test_what_the_sheet_needs_of_the_lab_is_not_left_out(tmp_path):
    lab_environment(tmp_path, "secret", {})
    left_out = json.loads((tmp_path / "settings" / "labconfig" / "page_config.json").read_text())["disabledExtensions"]
    assert left_out["@jupyterlab/debugger-extension"] is True
    for needed in ("notebook", "docmanager", "filebrowser", "markdownviewer", "htmlviewer", "toc", "documentsearch"):
        assert not {f"@jupyterlab/{needed}-extension", f"@jupyterlab/{needed}-extension:plugin"} & set(left_out)


def test_the_kernel_is_this_very_python_whatever_else_is_called_so(tmp_path):
    environment = lab_environment(tmp_path, "secret", {"JUPYTER_PATH": "own"})
    first, own = environment["JUPYTER_PATH"].split(os.pathsep)
    assert own == "own"
    asked = [sys.executable, "-m", "jupyter", "kernelspec", "list", "--json"]
    told = subprocess.run(asked, env={**os.environ, **environment}, capture_output=True, text=True, check=True)
    spec = json.loads(told.stdout)["kernelspecs"]["python3"]
    assert spec["resource_dir"].startswith(first)
    assert spec["spec"]["argv"][0] == sys.executable


def test_the_token_is_handed_over_in_a_file_of_ones_own(tmp_path):
    environment = lab_environment(tmp_path, "secret", {"JUPYTER_TOKEN": "a person's own"})
    path = Path(environment["JUPYTER_TOKEN_FILE"])
    assert path.read_text() == "secret"
    assert "JUPYTER_TOKEN" not in environment
    assert "secret" not in " ".join(environment.values())
    if os.name == "posix":
        assert path.stat().st_mode & 0o777 == 0o600


class Served:
    """A server that only says what it was started with."""

    started: ClassVar[list[tuple[list[str], str]]] = []
    ready: ClassVar[Path]

    def __init__(self, command, env):
        self.started.append((command, Path(env["JUPYTER_TOKEN_FILE"]).read_text()))
        Served.ready = Path(env["PENTOOLS_READY_FILE"])
        self.ended = False

    def poll(self):
        return None

    def wait(self):
        return 5

    def terminate(self):
        self.ended = True


@pytest.fixture
def served(monkeypatch):
    """The calls around a server that is not there."""
    calls = []
    monkeypatch.setattr(Served, "started", [])
    monkeypatch.setattr("pentools.lab.subprocess.Popen", Served)
    monkeypatch.setattr("pentools.lab.webbrowser.open", lambda where: calls.append(("open", where)))
    for name in ("wait_for_server", "bring_to_life", "put_to_rest"):
        monkeypatch.setattr(f"pentools.live.{name}", lambda *given, name=name: calls.append((name, given)))
    return calls


def test_the_address_said_is_the_one_served_with_a_new_token_each_time(job, served):
    said = []
    assert run_lab(job.notebook, port=0, browser=False, say=said.append) == 5
    assert run_lab(job.notebook, port=8123, browser=False, say=said.append) == 5
    for (command, token), address in zip(Served.started, said[1::2], strict=True):
        port = dict(word.split("=", 1) for word in command if "=" in word)["--ServerApp.port"]
        assert address.strip() == f"http://127.0.0.1:{port}/doc/tree/pen-1.ipynb?token={token}"
        assert port != "0"
        assert token not in " ".join(command)
    tokens = [token for _, token in Served.started]
    assert len(set(tokens)) == 2
    assert all(len(token) >= 32 for token in tokens)


def test_the_browser_loads_while_the_cells_run_and_the_sheet_goes_with_the_server(job, served):
    said = []
    run_lab(job.notebook, port=0, browser=True, say=lambda line: (said.append(line), served.append(("said", line))))
    names = [name for name, _ in served]
    assert names == ["said", "wait_for_server", "said", "open", "bring_to_life", "put_to_rest"]
    assert served[4][1][2] == served[-1][1][0] == job.notebook


@pytest.mark.skipif(os.name != "posix", reason="signals of this kind are POSIX")
@pytest.mark.parametrize("name", ["SIGINT", "SIGTERM", "SIGHUP"])
def test_it_stops_and_clears_up_when_it_is_told_however_it_was_started(job, served, monkeypatch, name):
    number = getattr(signal, name)
    before = signal.signal(number, signal.SIG_IGN)
    monkeypatch.setattr(Served, "wait", lambda self: 0 if self.ended else os.kill(os.getpid(), number))
    try:
        assert run_lab(job.notebook, port=0, browser=False, say=lambda _: None) == 0
        assert signal.getsignal(number) == signal.SIG_IGN
    finally:
        signal.signal(number, before)
    assert served[-1][0] == "put_to_rest"


@pytest.mark.parametrize("fails", [False, True])
def test_the_notebook_is_handed_over_once_its_cells_have_run_or_could_not(job, served, monkeypatch, fails):
    there = []

    def bring(*_):
        there.append(Served.ready.exists())
        if fails:
            raise RecordError("no kernel")

    monkeypatch.setattr("pentools.live.bring_to_life", bring)
    monkeypatch.setattr(Served, "wait", lambda _: there.append(Served.ready.exists()))
    run_lab(job.notebook, port=0, browser=False, say=print)
    assert there[:2] == [False, True]


def test_where_the_sheet_cannot_come_up_by_itself_run_all_is_said(job, served, monkeypatch):
    def fails(*_):
        raise RecordError("no kernel")

    monkeypatch.setattr("pentools.live.bring_to_life", fails)
    said = []
    run_lab(job.notebook, port=0, browser=False, say=said.append)
    assert "token=" in said[1]
    assert "no kernel" in said[2]
    assert "Run All Cells" in said[2]


def test_the_browser_is_shown_the_way_by_a_file_and_no_command_line_has_the_token(job, served, monkeypatch):
    seen = {}

    def opened(where):
        path = Path(url2pathname(urllib.parse.urlparse(where).path))
        seen.update(where=where, text=path.read_text(), mode=path.stat().st_mode & 0o777)

    monkeypatch.setattr("pentools.lab.webbrowser.open", opened)
    said = []
    run_lab(job.notebook, port=0, browser=True, say=said.append)
    [(_, token)] = Served.started
    assert token not in seen["where"]
    assert html.escape(said[1].strip()) in seen["text"]
    if os.name == "posix":
        assert seen["mode"] == 0o600


def processes():
    """The command lines that everybody on this machine can list, by process."""
    with subprocess.Popen(["ps", "-eo", "pid=,args="], stdout=subprocess.PIPE, text=True) as asked:
        return dict(line.split(None, 1) for line in asked.stdout if line.split()[1:])


@pytest.mark.skipif(os.name != "posix" or not shutil.which("ps"), reason="command lines are listed with ps")
def test_a_server_that_runs_wants_its_token_and_shows_it_to_nobody(job, monkeypatch):
    seen = {}

    def look(server, token, _):
        seen["without"] = asked(f"{server}/api/sessions")
        seen["with"] = asked(f"{server}/api/sessions?token={token}")
        seen["shown"] = [args for args in processes().values() if token in args]
        seen["listed"] = any("pentools.serving" in args for args in processes().values())
        raise KeyboardInterrupt

    def asked(address):
        try:
            return urllib.request.urlopen(address, timeout=30).status
        except urllib.error.HTTPError as error:
            return error.code

    monkeypatch.setattr("pentools.live.bring_to_life", look)
    assert run_lab(job.notebook, port=0, browser=False, say=lambda _: None) == 0
    assert seen == {"without": 403, "with": 200, "shown": [], "listed": True}


def test_what_the_bench_may_have_opened_is_put_to_rest_with_it_and_no_other_notebook_is_touched(job, served):
    bench = job.bench.folder
    (bench / "bench.ipynb").write_text("{}", encoding="utf-8")
    own = job.folder / "my own figures.ipynb"
    own.write_text("{}", encoding="utf-8")
    run_lab(bench / "bench.ipynb", port=0, browser=False, say=print)
    assert [given[0] for name, given in served if name == "put_to_rest"] == [bench / "bench.ipynb", job.notebook]
    served.clear()
    (job.folder / "scans" / "scans.ipynb").write_text("{}", encoding="utf-8")
    run_lab(job.notebook, port=0, browser=False, say=print)
    assert [given[0] for name, given in served if name == "put_to_rest"] == [job.notebook]
