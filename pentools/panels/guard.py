"""No callback fails in silence: whatever goes wrong in one is said on the panel, in words, with nothing lost."""

from __future__ import annotations

import functools
import logging
import traceback
from collections.abc import Callable
from html import escape
from typing import Any

import ipywidgets as widgets

from pentools.errors import PentoolsError

__all__ = ["AskedOnce", "Status", "guarded", "is_enter", "strict"]

_log = logging.getLogger(__name__)
_strict = {"on": False}


def strict(on: bool) -> None:
    """Raise unexpected errors again after they were shown; for tests."""
    _strict["on"] = on


class Status:
    """The line that says "saved 14:32:07" or what went wrong; read aloud by a screen reader."""

    def __init__(self) -> None:
        self.widget = widgets.HTML()
        self.text = ""

    def saved(self, text: str) -> None:
        """Say that something was saved."""
        self.text = text
        self.widget.value = f'<span class="pt-saved" role="status">✓ {escape(text)}</span>'

    def failed(self, text: str, details: str = "") -> None:
        """Say that nothing was saved, and why."""
        self.text = text
        folded = f"<details><summary>for a report</summary><pre>{escape(details)}</pre></details>" if details else ""
        self.widget.value = f'<span class="pt-error" role="alert">✗ {escape(text)}</span>{folded}'

    def asked(self, text: str) -> None:
        """Ask before anything is saved."""
        self.text = text
        self.widget.value = f'<span class="pt-asked" role="alert">? {escape(text)}</span>'

    def quiet(self) -> None:
        """Say nothing."""
        self.text = self.widget.value = ""


class AskedOnce:
    """What is unlikely is asked about, and taken when the same is given again.

    Parameters
    ----------
    status : Status
        Where it is asked.
    again : str
        What to do if it is so, such as "Press Save again if it is so, or change it."
    """

    def __init__(self, status: Status, again: str) -> None:
        self._status, self._again = status, again
        self._asked: object = None

    def sure(self, typed: object, doubt: Callable[[], str]) -> bool:
        """Whether what was typed may be saved; where it is doubted for the first time, the question is asked."""
        found = "" if self._asked == typed else doubt()
        self._asked = typed if found else None
        if found:
            self._status.asked(f"{found} Not saved yet. {self._again}")
        return not found


def guarded(status: Status, action: Callable[..., None], failed: str = "NOT SAVED") -> Callable[..., None]:
    """Wrap a callback so that what goes wrong in it is said on the panel.

    Parameters
    ----------
    status : Status
        Where it is said.
    action : callable
        The callback; its arguments are ignored.
    failed : str
        The words that a failure begins with.

    Returns
    -------
    callable
        The callback for a button or a box.
    """

    @functools.wraps(action)
    def run(*_: Any, **__: Any) -> None:
        try:
            action()
        except PentoolsError as error:
            status.failed(f"{failed}. {error}")
        except Exception as error:  # the widget library would swallow it
            _log.exception("a panel's callback failed")
            status.failed(
                f"{failed}. Something unexpected went wrong ({error}). What you typed is still here.",
                traceback.format_exc(),
            )
            if _strict["on"]:
                raise

    return run


def is_enter(content: object) -> bool:
    """Whether a message from a one-line box says that Enter was pressed in it."""
    return isinstance(content, dict) and content.get("event") == "submit"
