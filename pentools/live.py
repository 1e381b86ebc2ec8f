"""A job's sheet brought to life before the browser opens: its cells are run, and what they show is put into the notebook."""

from __future__ import annotations

import json
import time
import urllib.request
from collections.abc import Callable
from pathlib import Path
from typing import Any, cast

from pentools.errors import RecordError
from pentools.lean import notebook_format
from pentools.record.view import SPOILT

__all__ = ["bring_to_life", "put_to_rest", "wait_for_server"]

SHOWN = "The sheet stands here once its cells have run: Run, Run All Cells."
CELL_S, READY_S = 60.0, 60.0
Poll = Callable[[], int | None]


def wait_for_server(address: str, token: str, ended: Poll, seconds: float = 60.0) -> None:
    """Wait until a server answers.

    Parameters
    ----------
    address : str
        Such as ``http://127.0.0.1:8888``.
    token : str
        Its access token.
    ended : callable
        Gives the server's exit code, or None while it runs.
    seconds : float
        How long to wait [s].

    Raises
    ------
    RecordError
        If the server ended, or did not answer in time.
    """
    until = time.monotonic() + seconds
    while True:
        try:
            _ask(f"{address}/api/status", token)
        except OSError:
            if ended() is not None:
                raise RecordError(
                    "The notebook's server ended before it answered; what it said stands above."
                ) from None
            if time.monotonic() > until:
                raise RecordError(f"The notebook's server did not answer in {seconds:.0f} s.") from None
            time.sleep(0.05)
        else:
            return


def bring_to_life(address: str, token: str, notebook: Path, place: str = "") -> None:
    """Run a notebook's cells in a kernel of the server and put what they show into the file, trusted.

    Parameters
    ----------
    address, token : str
        The server, which serves the notebook's folder.
    notebook : Path
        The notebook; only its code cells' outputs are written, never its texts.
    place : str
        Where it lies below the folder that is served; by default in that folder itself.

    Raises
    ------
    RecordError
        If the kernel does not start or the notebook cannot be written.
    """
    name = place or notebook.name
    session = _ask(
        f"{address}/api/sessions",
        token,
        {"path": name, "name": notebook.name, "type": "notebook", "kernel": {"name": "python3"}},
    )
    content = notebook_format().read(notebook, as_version=4)
    with _client(session["kernel"]["id"]) as client:
        for number, cell in enumerate((cell for cell in content.cells if cell.cell_type == "code"), 1):
            cell.outputs, cell.execution_count = _run(client, cell.source), number
    _write(notebook, content)


def put_to_rest(notebook: Path) -> None:
    """Take the outputs out of a notebook again: they belong to a kernel that is gone. What cannot be written stays."""
    nbformat = notebook_format()
    try:
        content = nbformat.read(notebook, as_version=4)
        shown = [cell for cell in content.cells if cell.cell_type == "code" and (cell.outputs or cell.execution_count)]
        for cell in shown:
            cell.outputs, cell.execution_count = [], None
        if shown:
            _write(notebook, content)
    except (OSError, nbformat.ValidationError, *SPOILT):
        return


def _ask(url: str, token: str, body: Any = None) -> Any:
    request = urllib.request.Request(  # noqa: S310 - this machine's own server
        url,
        data=None if body is None else json.dumps(body).encode(),
        headers={"Authorization": f"token {token}", "Content-Type": "application/json"},
    )
    with urllib.request.urlopen(request, timeout=30) as answer:  # noqa: S310
        return json.load(answer)


def _client(kernel_id: str) -> _Kernel:
    from jupyter_core.paths import jupyter_runtime_dir

    return _Kernel(Path(jupyter_runtime_dir()) / f"kernel-{kernel_id}.json")


class _Kernel:
    """A client of a running kernel."""

    def __init__(self, connection: Path) -> None:
        self._connection = connection

    def __enter__(self) -> _Kernel:
        from jupyter_client.blocking.client import BlockingKernelClient

        until = time.monotonic() + READY_S
        while True:
            self._client = BlockingKernelClient()
            self._client.load_connection_file(str(self._connection))
            self._client.start_channels()
            try:
                self._client.wait_for_ready(timeout=READY_S)
            except RuntimeError as error:
                # a kernel that is still starting has no heartbeat yet, and is taken for dead
                self._client.stop_channels()
                if time.monotonic() > until:
                    raise RecordError(f"The notebook's kernel did not start: {error}") from error
            else:
                return self

    def __exit__(self, *_: object) -> None:
        self._client.stop_channels()

    def run(self, code: str, heard: Callable[[dict[str, Any]], None]) -> None:
        """Run code; what it shows is handed on message by message."""
        self._client.execute_interactive(code, store_history=True, allow_stdin=False, timeout=CELL_S, output_hook=heard)


def _run(kernel: _Kernel, code: str) -> list[Any]:
    """What a cell shows, as a notebook keeps it."""
    output_from_msg = notebook_format().v4.output_from_msg
    outputs: list[Any] = []

    def heard(message: dict[str, Any]) -> None:
        kind = message["header"]["msg_type"]
        if kind in ("display_data", "execute_result", "stream", "error"):
            output = output_from_msg(message)
            data = cast("dict[str, Any]", output.get("data", {}))
            if "application/vnd.jupyter.widget-view+json" in data:
                # the text beside a panel would hold all that it shows, private values too
                data["text/plain"] = SHOWN
            outputs.append(output)

    kernel.run(code, heard)
    return outputs


def _write(notebook: Path, content: Any) -> None:
    nbformat = notebook_format()
    try:
        nbformat.write(content, notebook)
        nbformat.sign.NotebookNotary().sign(content)
    except OSError as error:
        raise RecordError(f"{notebook} could not be written ({error.strerror or error}).") from error
