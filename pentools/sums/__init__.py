"""The sums that can be asked for by name, from the command line, a panel or a notebook."""

from __future__ import annotations

import importlib

from pentools.errors import InputError
from pentools.sums.base import Sum, SumAnswer, read_options

__all__ = ["SUMS", "Sum", "SumAnswer", "find", "read_options"]

# name on the command line -> module and attribute; loaded only when asked for
SUMS: dict[str, str] = {
    "capacity": "pentools.sums.weighing.capacity:CAPACITY",
    "leak": "pentools.sums.weighing.leak:LEAK",
    "date": "pentools.sums.dating.date:DATE",
    "money": "pentools.sums.dating.money:MONEY",
    "seal": "pentools.sums.seal.rings:SEAL",
    "sac": "pentools.sums.seal.sac:SAC",
    "washer": "pentools.sums.seal.washer:WASHER",
    "thread": "pentools.sums.seal.thread:THREAD",
    "knockout": "pentools.sums.seal.knockout:KNOCKOUT",
    "heat": "pentools.sums.treatment.heat:HEAT",
    "treatment": "pentools.sums.treatment.limits:TREATMENT",
    "mix": "pentools.sums.treatment.mix:MIX",
    "dilute": "pentools.sums.treatment.dilute:DILUTE",
    "shellac": "pentools.sums.treatment.shellac:SHELLAC",
    "order": "pentools.sums.closing.order:ORDER",
    "care": "pentools.sums.closing.care:CARE",
    "abrasives": "pentools.sums.finish.abrasives:ABRASIVES",
    "lines": "pentools.sums.nib.lines:LINES",
    "scanner": "pentools.sums.nib.scanner:SCANNER",
    "grade": "pentools.sums.finish.grade:GRADE",
    "flow": "pentools.sums.nib.flow:FLOW",
    "flex": "pentools.sums.nib.flex:FLEX",
    "smoothing": "pentools.sums.nib.smoothing:SMOOTHING",
    "setting": "pentools.sums.nib.setting:SETTING",
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
