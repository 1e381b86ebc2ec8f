"""Cleaning: baths and soaks held against what the part can take, the flush mix, the rinse, and the drying clock."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.fields import Field
from pentools.record.kinds import Kind, Stage, StageState
from pentools.record.stages.common import PARTS, yes_no
from pentools.record.stages.treatment.baths import BATHS, bath_findings, drying_of, running_soaks
from pentools.sums.treatment.mix import MIX

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["CLEAN"]

_PART = Field("part", "Part", "choice", choices=PARTS, required=True, public=True, hint="which part of the pen")
_BATH = Field("bath", "In what", "choice", choices=BATHS, required=True, public=True, hint="the table of limits is asked before it is saved")  # fmt: skip
_CAME_OUT = Field("came_out", "What came out", "long text", public=True, hint="colour, crumbs, how the water ran at the end")  # fmt: skip

FLUSH_MIX = Kind(
    "flush mix",
    "Flush mix",
    tuple(replace(field, public=True) for field in MIX.fields),
    log=False,
    help="One part of household ammonia to nine of water is common practice; how strong that is depends on the bottle.",
)
BATH = Kind(
    "bath",
    "A bath that is over",
    (
        _PART,
        _BATH,
        Field("strength", "Strength, or what else was in it", public=True, hint="such as 1 + 9, a drop of washing-up liquid"),
        Field("minutes", "Minutes", "quantity", unit="min", low=0.05, high=2880, public=True, hint="such as 3 min"),
        Field("temperature", "Temperature of the bath", "quantity", unit="degC", low=2, high=60, public=True, hint="such as 20 °C"),
        _CAME_OUT,
    ),
)  # fmt: skip
SOAK_STARTED = Kind(
    "soak started",
    "A soak begins",
    (
        _PART,
        _BATH,
        Field("limit", "Your own limit", "quantity", unit="min", low=0.5, high=2880, public=True, hint="if shorter than the table’s, such as 10 min"),
        Field("strength", "Strength, or what else is in it", public=True, hint="such as 1 + 9"),
    ),
    help="The clock runs from the moment it is saved.",
)  # fmt: skip
SOAK_ENDED = Kind(
    "soak ended",
    "A soak ends",
    (_PART, _CAME_OUT),
    help="Save it as the part comes out; its minutes are worked out.",
)
RINSE = Kind(
    "rinse",
    "Rinse after compound or grease",
    (
        _PART,
        Field("with_what", "With what", required=True, public=True, hint="such as a drop of washing-up liquid in 200 ml, then clear water"),
        Field("minutes", "Minutes", "quantity", unit="min", low=0.05, high=120, public=True, hint="such as 2 min"),
        yes_no("wets", "Does water spread on it now?", "no: polish or grease is left, and ink will not wet it", public=True),
    ),
    help="Polishing compound and silicone keep ink from wetting feed, nib and section: wash until a drop spreads.",
)  # fmt: skip
DRYING = Kind(
    "drying",
    "Drying",
    (
        _PART,
        Field("hours", "How long it dries", "quantity", unit="h", low=0.05, high=720, required=True, public=True, hint="such as 24 h; a feed keeps water longest"),
        Field("begun_ago", "Begun how long ago", "quantity", unit="h", low=0, high=720, hint="empty: now"),
        Field("how", "How", public=True, hint="such as nib down on tissue, in moving air, no heat"),
    ),
    help="The earliest moment of the next step is worked out: nothing is sealed, weighed or warmed wet.",
)  # fmt: skip


def _state(job: Job) -> StageState:
    if not job.record.live("clean"):
        return StageState("not begun")
    running = running_soaks(job)
    if running:
        count = "a soak is" if len(running) == 1 else f"{len(running)} soaks are"
        return StageState("open", f"{count} running")
    drying = [dry for dry in drying_of(job) if not dry.over]
    return StageState("open", drying[-1].sentence) if drying else StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.record.live("clean"):
        return ()
    found = [f.under("Cleaning") for f in bath_findings(job) if f.level in ("warning", "stop")]
    if running_soaks(job):
        found.insert(0, Finding("warning", "Cleaning: a soak is still running. Take the part out, and save that.", "soak-running"))  # fmt: skip
    if job.held("soak"):
        found.append(Finding("warning", f"Cleaning: baths are logged although {job.held('soak')}.", "soak-held"))
    unwetted = {str(v["part"]): v["wets"] for _, v in job.log("clean", "rinse")}
    labels = dict(PARTS)
    found += [
        Finding("warning", f"Cleaning: water does not spread on the {labels[part]} yet; rinse it again.", "not-wetting")
        for part, wets in unwetted.items()
        if wets is False
    ]
    return tuple(found)


CLEAN = Stage(
    "clean",
    "Cleaning",
    "Which water and solvents each part can take, how long it was in them, and when it is dry again.",
    (BATH, SOAK_STARTED, SOAK_ENDED, FLUSH_MIX, RINSE, DRYING),
    panel="pentools.panels.stages.treatment.cleaning:CleanPanel",
    section="pentools.writeup.sections.treatment.cleaning:section",
    state=_state,
    checks=_checks,
)
