"""The stages of a job in the order of the work: the one place where a stage is registered."""

from __future__ import annotations

import functools
import importlib

from pentools.errors import InputError
from pentools.record.kinds import Stage

__all__ = ["STAGES", "all_stages", "find_stage"]

# key -> where the stage is declared; the order is the order of the job
STAGES: dict[str, str] = {
    "intake": "pentools.record.stages.job.intake:INTAKE",
    "identify": "pentools.record.stages.dating.identify:IDENTIFY",
    "condition": "pentools.record.stages.job.condition:CONDITION",
    "agree": "pentools.record.stages.job.agree:AGREE",
    "open": "pentools.record.stages.treatment.opening:OPEN",
    "clean": "pentools.record.stages.treatment.cleaning:CLEAN",
    "repairs": "pentools.record.stages.repairs.repairs:REPAIRS",
    "work log": "pentools.record.stages.job.work_log:WORK_LOG",
    "seal": "pentools.record.stages.seal.sealing:SEAL",
    "closing": "pentools.record.stages.closing.closing:CLOSING",
    "fill test": "pentools.record.stages.weighing.filling:FILL_TEST",
    "nib": "pentools.record.stages.nib.nib:NIB",
    "finish": "pentools.record.stages.finish.finishing:FINISH",
    "limits": "pentools.record.stages.job.limits:LIMITS",
    "pictures": "pentools.record.stages.job.pictures:PICTURES",
    "release": "pentools.record.stages.job.release:RELEASE_STAGE",
    "posting": "pentools.record.stages.job.posting:POSTING",
}


@functools.cache
def find_stage(key: str) -> Stage:
    """The stage of that name.

    Parameters
    ----------
    key : str
        A key of `STAGES`.

    Returns
    -------
    Stage
        Its declaration.

    Raises
    ------
    InputError
        If there is none of that name.
    """
    if key not in STAGES:
        raise InputError("stage", "one of " + ", ".join(STAGES), key)
    module, attribute = STAGES[key].split(":")
    found = getattr(importlib.import_module(module), attribute)
    assert isinstance(found, Stage)
    return found


def all_stages() -> tuple[Stage, ...]:
    """All stages in the order of the job."""
    return tuple(find_stage(key) for key in STAGES)
