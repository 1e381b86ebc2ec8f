"""The heatings of a job: for each joint its window, its passes session by session, and when to stop."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools import tables
from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.treatment.heat_log import HeatLog, HeatPass, read_heat_log
from pentools.calc.treatment.heat_window import HeatLimitRow, HeatWindow, SealantRow, heat_window
from pentools.calc.treatment.materials import UNKNOWN
from pentools.numbers import capital
from pentools.record.stages.treatment.facts import limit_of_materials, material_words, materials_of
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS, JOINT, JOINT_PLACES, JOINTS, Joint
from pentools.record.view import once_a_state
from pentools.tables.source_words import source_words
from pentools.words import CERTAINTY

if TYPE_CHECKING:
    import datetime as dt

    from pentools.record.job import Job

__all__ = ["JOINTS", "JointHeat", "heated_joints", "joint_body", "joint_heat", "stop_count"]

_WARMED = {key: part for key, _, part in JOINT_PLACES}


@dataclass(frozen=True, slots=True)
class JointHeat:
    """What is known of heat at one joint.

    Parameters
    ----------
    joint, label : str
        Which joint, and its name in words.
    body : str
        The material that is warmed; "unknown" where it is not named.
    limit_c : float or None
        Highest temperature at its surface [°C]: the table's, or the bench's own; None where it is never warmed.
    window : HeatWindow
        Sealant against body; a joint that was warmed before anybody looked at it has an unknown one.
    passes : tuple of HeatPass
        All heatings of this joint, in order.
    session : tuple of HeatPass
        Those of the last day on which it was warmed: the stop count is theirs.
    log : HeatLog
        What the last session says.
    sentence : str
        The window with both its figures, as one sentence.
    sources : tuple of str
        Where limit and softening are known from, in words.
    certainty : str
        How sure they are, body and sealant, in plain words.
    findings : tuple of Finding
        What to make of it.
    """

    joint: str
    label: str
    body: str
    limit_c: float | None
    window: HeatWindow
    passes: tuple[HeatPass, ...]
    session: tuple[HeatPass, ...]
    log: HeatLog
    sentence: str
    sources: tuple[str, ...]
    certainty: str
    findings: tuple[Finding, ...]


def stop_count() -> tuple[int, float]:
    """How many heatings a session may have, and the largest rise from one to the next [°C]."""
    rows = tables.read(HeatLimitRow, "heat_limits")
    rules = {row.rule: row.value or 0.0 for row in rows if row.material == "any"}
    return int(rules["heatings"]), rules["step"]


@once_a_state
def heated_joints(job: Job) -> tuple[str, ...]:
    """The joints that were looked at or warmed, the last one first."""
    found = {logged.entry.id: logged.values.joint for logged in job.log(JOINT)}
    found |= {logged.entry.id: logged.values.joint for logged in job.log(HEAT_PASS)}
    joints = (found.get(entry.id) for entry in reversed(job.record.live("open")))
    return tuple(dict.fromkeys(joint for joint in joints if joint is not None))


def joint_body(job: Job, joint: str) -> str:
    """What is warmed at a joint: as its entry says, else as named for the part; "unknown" where it is not."""
    said = _newest(job, joint)
    if said is not None and said.body is not None:
        return material_words(said.body)[0]
    names = materials_of(job, _WARMED.get(joint, "whole"))
    # of several, the one that gives way first
    return min(names, key=lambda name: -1.0 if name == UNKNOWN else _limit_of(name))


@once_a_state
def joint_heat(job: Job, joint: str) -> JointHeat | None:
    """What the record says of heat at a joint.

    Parameters
    ----------
    joint : str
        A key of `JOINTS`.

    Returns
    -------
    JointHeat or None
        None where the joint was neither looked at nor warmed.
    """
    said, passes = _newest(job, joint), _passes(job, joint)
    if said is None and not passes:
        return None
    body = joint_body(job, joint)
    label = dict(JOINTS).get(joint, joint)
    sealant = (said.sealant or UNKNOWN) if said is not None else UNKNOWN
    limits, sealants = tables.read(HeatLimitRow, "heat_limits"), tables.read(SealantRow, "joint_sealants")
    window = heat_window(body, sealant, limits, sealants)
    limit = window.body_limit_c
    own = limit_of_materials(job, (body,), "dry heat")
    if own.overruled is not None:
        limit = None if own.verdict == "never" else own.max_c if own.max_c is not None else limit
    last_day = passes[-1][0] if passes else None
    session = tuple(one for day, one in passes if day == last_day)
    most, step = stop_count()
    log = read_heat_log(
        session,
        limit,
        stop_after=most,
        largest_step_c=step,
        nitrate=body in ("celluloid", "degrading celluloid"),
    )
    advice = [f for f in window.findings if f.topic != "window"]
    overruled = [f for f in own.findings if f.topic == "overruled"]
    head = capital(label)
    return JointHeat(
        joint, label, body, limit, window, tuple(one for _, one in passes), session, log,
        _sentence(head, window, limit, overruled=own.overruled is not None),
        source_words(window.sources, "heat_limits", "joint_sealants"), _how_sure(window.certainty),
        tuple(f.under(head) for f in gravest_first((*log.findings, *advice, *overruled))),
    )  # fmt: skip


def _sentence(head: str, window: HeatWindow, limit_c: float | None, *, overruled: bool) -> str:
    own = ""
    if overruled:
        own = " The bench overrules the limit: " + ("never warm." if limit_c is None else f"at most {limit_c:g} °C.")
    return f"{head}, {window.verdict}{own}"


def _how_sure(keys: str) -> str:
    """Such as "body: judged; sealant: read in the source", out of the keys of the tables."""
    pairs = (part.partition(": ") for part in keys.split("; "))
    return "; ".join(f"{what}{colon}{CERTAINTY.get(key, key)}" for what, colon, key in pairs)


def _limit_of(name: str) -> float:
    """The limit of a material's surface [°C]; 0 for one that is never warmed or has none."""
    rows = tables.read(HeatLimitRow, "heat_limits")
    return next((row.value or 0.0 for row in rows if (row.material, row.rule) == (name, "working limit")), 0.0)


def _newest(job: Job, joint: str) -> Joint | None:
    said = [logged.values for logged in job.log(JOINT) if logged.values.joint == joint]
    return said[-1] if said else None


def _passes(job: Job, joint: str) -> list[tuple[dt.date, HeatPass]]:
    found = []
    for logged in job.log(HEAT_PASS):
        said = logged.values
        if said.joint == joint:
            surface = None if said.surface is None else said.surface.value
            one = HeatPass(surface, said.moved or "", said.broke or "", said.free is True)
            found.append((logged.entry.time.date(), one))
    return found
