"""The sums that can be asked for by name, from the command line, a panel or a notebook."""

from __future__ import annotations

import importlib

from pentools.errors import InputError
from pentools.sums.base import Sum, SumAnswer, read_options

__all__ = ["SUMS", "Sum", "SumAnswer", "find", "read_options"]

# name on the command line -> module and attribute; loaded only when asked for
SUMS: dict[str, str] = {
    "capacity": "pentools.sums.capacity:CAPACITY",
    "leak": "pentools.sums.leak:LEAK",
    "date": "pentools.sums.date:DATE",
    "money": "pentools.sums.money:MONEY",
    "seal": "pentools.sums.seal:SEAL",
    "sac": "pentools.sums.sac:SAC",
    "washer": "pentools.sums.washer:WASHER",
    "thread": "pentools.sums.thread:THREAD",
    "knockout": "pentools.sums.knockout:KNOCKOUT",
    "heat": "pentools.sums.heat:HEAT",
    "treatment": "pentools.sums.treatment:TREATMENT",
    "mix": "pentools.sums.mix:MIX",
    "dilute": "pentools.sums.dilute:DILUTE",
    "shellac": "pentools.sums.shellac:SHELLAC",
    "abrasives": "pentools.sums.abrasives:ABRASIVES",
    "grade": "pentools.sums.grade:GRADE",
}


def find(key: str) -> Sum:
    """The sum of that name.

    Parameters
    ----------
    key : str
        A key of `SUMS`.

    Returns
    -------
    Sum
        The sum with its fields.

    Raises
    ------
    InputError
        If there is none of that name.
    """
    if key not in SUMS:
        raise InputError("sum", "one of " + ", ".join(SUMS), key)
    module, attribute = SUMS[key].split(":")
    found = getattr(importlib.import_module(module), attribute)
    assert isinstance(found, Sum)
    return found
