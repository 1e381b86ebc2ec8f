"""The short plan for a nib's tip."""

import pytest

from pentools.calc.finish.reading import read_grades
from pentools.calc.nib import smoothing
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, media
from pentools.tables.nib import habits

OWNED = read_grades(
    "P400; P2500; cushioned cloth 2000; cushioned cloth 10000; film 9 um; film 3 um; film 1 um; film 0.3 um",
    catalogue(),
)


def nib_smoothing_plan(feel, owned, bands, *, tipped=True, **more):
    return smoothing.nib_smoothing_plan(feel, habits(), owned, bands, tipped=tipped, **more)


@pytest.mark.parametrize("habit", habits(), ids=lambda habit: habit.feel)
def test_few_strokes_and_a_check_every_few(habit):
    plan = nib_smoothing_plan(habit.feel, OWNED, media(), aligned=True)
    assert 1 <= len(plan.steps) <= 3
    assert all(step.check_every < step.most_strokes <= 20 for step in plan.steps)
    assert max(step.grade.particle_um for step in plan.steps) <= habit.coarsest_um * 1.001
    assert plan.steps[-1].grade.finish_um <= 1
    sizes = [step.grade.finish_um for step in plan.steps]
    assert sizes == sorted(sizes, reverse=True)
    assert "stop-early" in [f.topic for f in plan.findings]


# common practice, no source: what may touch a tip at all, the finish that is smooth, and the most strokes a step
@pytest.mark.parametrize(
    ("feel", "coarsest", "strokes", "untipped"),
    [("a little toothy", 1.0, 8, 4), ("scratchy", 3.0, 12, 6), ("reshaped", 13.0, 20, 10)],
)
def test_what_each_feel_may_take(feel, coarsest, strokes, untipped):
    def plan(size, **more):
        return nib_smoothing_plan(feel, read_grades(f"film {size:g} um", catalogue()), media(), aligned=True, **more)

    assert [step.most_strokes for step in plan(coarsest).steps] == [strokes]
    assert [step.most_strokes for step in plan(coarsest, tipped=False).steps] == [untipped]
    assert f"at {strokes} strokes in any case" in plan(coarsest).steps[0].how
    assert plan(coarsest * 1.01).steps == ()
    assert f"{coarsest:g} µm or finer" in next(
        f.text for f in plan(coarsest * 1.01).findings if f.topic == "too-coarse"
    )
    # film of 1 µm is smooth, anything coarser keeps some feedback
    assert "finish-not-reached" not in [f.topic for f in plan(1).findings]
    if coarsest > 1:
        kept = next(f for f in plan(1.1).findings if f.topic == "finish-not-reached")
        assert (kept.level, "1.1 µm" in kept.text, "; 1 µm would end it" in kept.text) == ("note", True, True)


def test_three_steps_at_most_and_they_are_numbered():
    films = read_grades("film 12 um; film 9 um; film 5 um; film 3 um; film 1 um", catalogue())
    steps = nib_smoothing_plan("reshaped", films, media(), aligned=True).steps
    assert [(step.number, step.grade.name, step.check_every) for step in steps] == [
        (1, "5", 4),
        (2, "3", 4),
        (3, "1", 4),
    ]
    powder = read_grades("F1200", catalogue())  # loose grit has no place on a tip
    assert nib_smoothing_plan("reshaped", powder, media(), aligned=True).steps == ()


def test_align_first():
    plan = nib_smoothing_plan("scratchy", OWNED, media(), aligned=False)
    assert plan.steps == ()
    assert plan.findings[0].level == "stop"
    assert [f.topic for f in plan.findings] == ["align-first", "stop-early"]
    unseen = nib_smoothing_plan("scratchy", OWNED, media())
    assert [(f.level, f.topic) for f in unseen.findings] == [("warning", "align-first"), ("warning", "stop-early")]
    assert unseen.steps
    assert "align-first" not in [f.topic for f in nib_smoothing_plan("scratchy", OWNED, media(), aligned=True).findings]


def test_without_tipping_fewer_strokes_still():
    with_tip, without = (nib_smoothing_plan("scratchy", OWNED, media(), aligned=True, tipped=t) for t in (True, False))
    assert without.steps[0].most_strokes < with_tip.steps[0].most_strokes
    assert "no-tipping" in [f.topic for f in without.findings]
    unseen = smoothing.nib_smoothing_plan("scratchy", habits(), OWNED, media(), aligned=True)
    assert unseen == nib_smoothing_plan("scratchy", OWNED, media(), aligned=True, tipped=None), "not said is not tipped"
    assert [s.most_strokes for s in unseen.steps] == [s.most_strokes for s in without.steps]
    assert any(f.text.startswith("Look first: is there hard tipping left?") for f in unseen.findings)
    assert "no-tipping" not in [f.topic for f in with_tip.findings]


def test_nothing_fine_enough():
    coarse = nib_smoothing_plan("scratchy", read_grades("P400; film 9 um", catalogue()), media(), aligned=True)
    assert coarse.steps == ()
    assert "too-coarse" in [f.topic for f in coarse.findings]
    short = nib_smoothing_plan("scratchy", read_grades("film 3 um", catalogue()), media(), aligned=True)
    assert "finish-not-reached" in [f.topic for f in short.findings]
    with pytest.raises(InputError):
        nib_smoothing_plan("odd", OWNED, media())
