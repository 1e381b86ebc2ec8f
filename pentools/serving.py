"""JupyterLab as `pentools open` starts it: up in a third of the time, and a notebook is handed over once its cells have run.

The browser may load its own files meanwhile, which takes as long as the cells do.
"""

from __future__ import annotations

import asyncio
import os
import sys
import time
from pathlib import Path
from typing import Any

from pentools.lean import without_grammars

__all__ = ["READY_FILE", "SERVER", "WAITS_S", "main", "until_ready"]

READY_FILE = "PENTOOLS_READY_FILE"
"""The environment's name for the file whose being there says that the notebook's cells have run."""
SERVER = "PENTOOLS_SERVER"
"""The environment's name for the server's own address, which its kernels are told."""
WAITS_S = 60.0
_LOOKS_EVERY_S = 0.05


async def until_ready(path: str, seconds: float = WAITS_S) -> bool:
    """Wait until a file is there.

    Parameters
    ----------
    path : str
        The file; an empty one is always there.
    seconds : float
        How long to wait at most [s].

    Returns
    -------
    bool
        Whether it is there.
    """
    until = time.monotonic() + seconds
    while path and not Path(path).exists():
        if time.monotonic() > until:
            return False
        await asyncio.sleep(_LOOKS_EVERY_S)
    return True


def main() -> int:
    """Serve, as JupyterLab's own command does, with the options that stand on the command line."""
    with without_grammars():
        import jupyterlab.commands
        from jupyter_server.services.contents.largefilemanager import AsyncLargeFileManager

        # it would start Node, where there is one, to ask for a registry that is never used
        if hasattr(jupyterlab.commands, "_yarn_config"):
            jupyterlab.commands._yarn_config = lambda _: {"yarn config": {}, "npm config": {}}
        from jupyterlab.labapp import LabApp

    class HandsOverWhenReady(AsyncLargeFileManager):
        """A notebook is read once what it shows has been put into it."""

        async def get(self, path: str, *given: Any, **more: Any) -> Any:
            if path.endswith(".ipynb"):
                await until_ready(os.environ.get(READY_FILE, ""))
            return await super().get(path, *given, **more)  # type: ignore[no-untyped-call]

    LabApp.initialize_server(argv=sys.argv[1:], contents_manager_class=HandsOverWhenReady).start()
    return 0


if __name__ == "__main__":
    sys.exit(main())
