"""The short plan for a nib's tip."""

import pytest

from pentools.calc.finish.nib import FEELS, nib_smoothing_plan
from pentools.calc.finish.reading import read_grades
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, media

OWNED = read_grades(
    "P400; P2500; cushioned cloth 2000; cushioned cloth 10000; film 9 um; film 3 um; film 1 um; film 0.3 um",
    catalogue(),
)


@pytest.mark.parametrize("feel", sorted(FEELS))
def test_few_strokes_and_a_check_every_few(feel):
    plan = nib_smoothing_plan(feel, OWNED, media(), aligned=True)
    assert 1 <= len(plan.steps) <= 3
    assert all(step.check_every < step.most_strokes <= 20 for step in plan.steps)
    assert max(step.grade.particle_um for step in plan.steps) <= FEELS[feel][0] * 1.001
    assert plan.steps[-1].grade.finish_um <= 1
    sizes = [step.grade.finish_um for step in plan.steps]
    assert sizes == sorted(sizes, reverse=True)
    assert "stop-early" in [f.topic for f in plan.findings]


def test_align_first():
    plan = nib_smoothing_plan("scratchy", OWNED, media(), aligned=False)
    assert plan.steps == ()
    assert plan.findings[0].level == "stop"
    assert nib_smoothing_plan("scratchy", OWNED, media()).findings[0].topic == "align-first"
    assert "align-first" not in [f.topic for f in nib_smoothing_plan("scratchy", OWNED, media(), aligned=True).findings]


def test_without_tipping_fewer_strokes_still():
    with_tip, without = (nib_smoothing_plan("scratchy", OWNED, media(), aligned=True, tipped=t) for t in (True, False))
    assert without.steps[0].most_strokes < with_tip.steps[0].most_strokes
    assert "no-tipping" in [f.topic for f in without.findings]


def test_nothing_fine_enough():
    coarse = nib_smoothing_plan("scratchy", read_grades("P400; film 9 um", catalogue()), media(), aligned=True)
    assert coarse.steps == ()
    assert "too-coarse" in [f.topic for f in coarse.findings]
    short = nib_smoothing_plan("scratchy", read_grades("film 3 um", catalogue()), media(), aligned=True)
    assert "finish-not-reached" in [f.topic for f in short.findings]
    with pytest.raises(InputError):
        nib_smoothing_plan("odd", OWNED, media())
