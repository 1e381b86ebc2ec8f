"""JupyterLab on one notebook: on this machine only, with a token, and without questions at the start."""

from __future__ import annotations

import html
import json
import os
import secrets
import signal
import subprocess
import sys
import tempfile
import threading
import webbrowser
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from pentools.errors import PentoolsError
from pentools.record.layout import BENCH_NOTEBOOK, DOOR
from pentools.serving import READY_FILE, SERVER

__all__ = ["lab_command", "lab_environment", "run_lab", "write_kernel", "write_lab_settings"]

# what a bench has no use for takes a second from the browser's start; a plain `jupyter lab` has all of it
_LEFT_OUT = (
    "apputils-extension:announcements",
    "console-extension",
    "debugger-extension",
    "extensionmanager-extension",
    "fileeditor-extension:language-server",
    "hub-extension",
    "inspector-extension",
    "logconsole-extension",
    "lsp-extension",
    "mermaid-extension",
    "notebook-extension:language-server",
    "notebook-extension:log-output",
    "terminal-extension",
    "tooltip-extension",
    "vega5-extension",
)
_SETTINGS = {
    "@jupyterlab/apputils-extension:notification": {"fetchNews": "false", "checkForUpdates": False},
    "@jupyterlab/notebook-extension:tracker": {"windowingMode": "none", "scrollPastEnd": False},
    # a story cell typed seconds before leaving is on disk
    "@jupyterlab/docmanager-extension:plugin": {"autosaveInterval": 5},
}


def write_lab_settings(folder: Path) -> Path:
    """Write the few settings the sheet needs (no news question, the whole page laid out, no tools for programmers) as defaults.

    Parameters
    ----------
    folder : Path
        Where to put them.

    Returns
    -------
    Path
        The folder to put on Jupyter's configuration path; a person's own settings still go before these.
    """
    place = folder / "labconfig"
    place.mkdir(parents=True, exist_ok=True)
    (place / "default_setting_overrides.json").write_text(json.dumps(_SETTINGS, indent=1), encoding="utf-8")
    left_out = {"disabledExtensions": {f"@jupyterlab/{name}": True for name in _LEFT_OUT}}
    (place / "page_config.json").write_text(json.dumps(left_out, indent=1), encoding="utf-8")
    return folder


def lab_command(notebook: Path, *, port: int) -> list[str]:
    """The command that serves a notebook; the access token is not on it, since others can list commands.

    Parameters
    ----------
    notebook : Path
        The notebook; its folder is what is served.
    port : int
        The port; 0 takes a free one.

    Returns
    -------
    list of str
        The command's words.
    """
    options = [
        "--ServerApp.ip=127.0.0.1",
        f"--ServerApp.port={port}",
        f"--ServerApp.root_dir={notebook.parent}",
        "--ServerApp.open_browser=False",
        f"--ServerApp.default_url=/doc/tree/{notebook.name}",
        f"--LabApp.default_url=/doc/tree/{notebook.name}",
        "--ServerApp.terminals_enabled=False",
        "--ServerApp.log_level=ERROR",  # the only address that is printed is the one that leads to the sheet
        "--LabApp.log_level=ERROR",
        "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
        "--LabApp.extension_manager=readonly",
        *(f"--ServerApp.jpserver_extensions={name}=False" for name in ("jupyter_lsp", "jupyter_server_terminals")),
    ]
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        options.append("--allow-root")
    return [sys.executable, "-m", "pentools.serving", *options]


def lab_environment(folder: Path, token: str, base: Mapping[str, str] | None = None) -> dict[str, str]:
    """The environment for the server: its settings, its token, and workspaces of its own, so that no old layout hides the notebook.

    Parameters
    ----------
    folder : Path
        A folder that only its owner can look into.
    token : str
        The access token; it is handed over in a file there, named in the environment.
    base : mapping or None
        The environment to start from; the process's own by default.

    Returns
    -------
    dict
        Name to value.
    """
    environment = dict(os.environ if base is None else base)
    environment.pop("JUPYTER_TOKEN", None)  # a person's own would go before the file
    environment["JUPYTER_TOKEN_FILE"] = str(_write_own(folder / "token", token))
    settings = str(write_lab_settings(folder / "settings"))
    environment["JUPYTER_CONFIG_PATH"] = os.pathsep.join(
        filter(None, (settings, environment.get("JUPYTER_CONFIG_PATH")))
    )
    own = str(write_kernel(folder / "jupyter"))
    environment["JUPYTER_PATH"] = os.pathsep.join(filter(None, (own, environment.get("JUPYTER_PATH"))))
    environment["JUPYTERLAB_WORKSPACES_DIR"] = str(folder / "workspaces")
    return environment


def write_kernel(folder: Path) -> Path:
    """Describe the kernel that the notebooks run in: this very Python, and quiet in the window that the server runs in.

    Parameters
    ----------
    folder : Path
        Where to put it.

    Returns
    -------
    Path
        The folder to put first on Jupyter's data path; another kernel of that name may be one without the kit.
    """
    place = folder / "kernels" / "python3"
    place.mkdir(parents=True, exist_ok=True)
    words = [sys.executable, "-m", "ipykernel_launcher", "-f", "{connection_file}", "--IPKernelApp.log_level=40"]
    kernel = {
        "argv": words,
        "display_name": "Python 3 (ipykernel)",
        "language": "python",
        "metadata": {"debugger": True},
    }
    (place / "kernel.json").write_text(json.dumps(kernel), encoding="utf-8")
    return folder


def _write_own(path: Path, text: str) -> Path:
    """A file that only its owner can read."""
    with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600), "w", encoding="ascii") as file:
        file.write(text)
    return path


def run_lab(notebook: Path, *, port: int, browser: bool, say: Callable[[str], None]) -> int:
    """Serve a notebook, live, until it is stopped.

    Parameters
    ----------
    notebook : Path
        A job's notebook, or the bench's.
    port : int
        The port; 0 takes a free one.
    browser : bool
        Whether to open a browser.
    say : callable
        Takes each line for the person.

    Returns
    -------
    int
        The server's exit code.
    """
    from pentools.live import bring_to_life, put_to_rest, wait_for_server

    token = secrets.token_hex(24)
    with tempfile.TemporaryDirectory(prefix="pentools-lab-") as folder, _stopped_when_told():
        held = Path(folder)
        server = f"http://127.0.0.1:{port or _free_port()}"
        command = lab_command(notebook, port=int(server.rpartition(":")[2]))
        door = f"/doc/tree/{notebook.name}" if notebook.name == BENCH_NOTEBOOK else ""
        environment = lab_environment(held, token) | {SERVER: server, DOOR: door, READY_FILE: str(held / "ready")}
        process = subprocess.Popen(command, env=environment)  # noqa: S603
        try:
            say(f"Opening {notebook.name}: the sheet comes up by itself. Stop with Ctrl+C here.")
            wait_for_server(server, token, process.poll)
            address = f"{server}/doc/tree/{notebook.name}?token={token}"
            say(f"  {address}")
            if browser:  # it loads its own files while the cells run
                webbrowser.open(_way_in(held / "open.html", address).as_uri())
            try:
                bring_to_life(server, token, notebook)
            except PentoolsError as error:
                say(f"The sheet could not come up by itself ({error}). In the notebook choose Run, Run All Cells.")
            finally:
                Path(environment[READY_FILE]).touch()
            return process.wait()
        except KeyboardInterrupt:
            return 0
        finally:
            process.terminate()
            process.wait()
            put_to_rest(notebook)
            for sheet in notebook.parent.glob("*/*.ipynb") if door else ():  # of jobs that the bench may have opened
                if sheet.stem == sheet.parent.name:
                    put_to_rest(sheet)


@contextmanager
def _stopped_when_told() -> Iterator[None]:
    """Within it the window's closing and the program's ending stop it as Ctrl+C does, and Ctrl+C however it was started."""
    # only the main thread may say so, and not every system has them all
    here = threading.current_thread() is threading.main_thread()
    told = [getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if here and hasattr(signal, name)]
    before = {number: signal.signal(number, signal.default_int_handler) for number in told}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def _way_in(path: Path, address: str) -> Path:
    """A page that leads to the sheet: the address holds the token, and a browser's command line can be listed."""
    page = f'<!doctype html><meta http-equiv="refresh" content="0; url={html.escape(address)}"><title>The sheet</title>'
    return _write_own(path, page)


def _free_port() -> int:
    import socket

    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])
