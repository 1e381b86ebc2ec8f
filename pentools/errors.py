"""The kit's own exceptions: one family, each with a sentence a person at the bench can act on."""

from __future__ import annotations

__all__ = ["HoldError", "InputError", "PentoolsError", "RecordError"]

LONGEST = 200  # letters of what was given that an error repeats


class PentoolsError(Exception):
    """Base of every error the kit raises on purpose; its text is fit to be shown as it is."""


class InputError(PentoolsError, ValueError):
    """Something typed or passed in cannot be used.

    Parameters
    ----------
    name : str
        What the value was for, in words ("bore", "filled mass").
    accepted : str
        What is accepted, with unit ("2 to 20 mm").
    got : object
        What was given, shown as it was typed.
    advice : str
        What to do about it, as a sentence.
    """

    def __init__(self, name: str, accepted: str, got: object, advice: str = "") -> None:
        self.name = name
        self.accepted = accepted
        self.got = got
        self.advice = advice
        shown = str(got) if len(str(got)) <= LONGEST else str(got)[: LONGEST - 1] + "…"
        shown = f"“{shown}”" if isinstance(got, str) else shown
        text = f"{name} must be {accepted}: got {shown}."
        super().__init__(f"{text} {advice}".rstrip())


class RecordError(PentoolsError):
    """A job's record cannot be read or written as asked."""


class HoldError(PentoolsError):
    """A hold point stands in the way; its text says why and how it is released."""
