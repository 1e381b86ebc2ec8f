"""The knock-out tube: inside and outside as a pair, its wall, its block, its caution."""

import itertools

import pytest
from ranges import takes_only

from pentools.calc.seal.knockout import Soak, Tube, knockout_tool
from pentools.errors import InputError


def text(found, topic):
    return next(f.text for f in found.findings if f.topic == topic)


def test_a_tube_by_hand():
    tool = knockout_tool(1.8, 4.2, 5.0, depth_mm=18, front_mm=7, section_mm=10.5)
    assert tool.possible
    assert tool.tube == Tube(1.9, 4.9)
    assert tool.tube.wall_mm == pytest.approx(1.5)
    assert (tool.inside_low_mm, tool.inside_high_mm) == pytest.approx((1.9, 3.7))
    assert (tool.outside_low_mm, tool.outside_high_mm) == pytest.approx((2.7, 4.9))
    assert tool.reach_mm == 23
    assert (tool.block_low_mm, tool.block_high_mm) == pytest.approx((7.2, 8.5))
    assert "1.90 mm inside and 4.90 mm outside" in text(tool, "tool")


@pytest.mark.parametrize(
    ("inside", "outside", "does"),
    [
        (3.7, 2.7, False), (3.7, 4.5, True), (3.7, 4.49, False), (1.9, 2.7, True), (1.9, 2.69, False), (1.89, 4.0, False),
        (3.71, 4.9, False), (1.9, 4.9, True), (1.9, 4.91, False), (2.0, 2.5, False),
    ],
)  # fmt: skip
def test_inside_and_outside_are_a_pair(inside, outside, does):
    assert knockout_tool(1.8, 4.2, 5.0).does(Tube(inside, outside)) is does


def test_the_bore_may_leave_less_than_the_shoulder():
    # bore 4.0: outside 3.9, so inside at most 3.1, though the shoulder would allow 4.3
    tool = knockout_tool(1.8, 4.8, 4.0)
    assert tool.inside_high_mm == pytest.approx(3.1)
    assert knockout_tool(3.1, 4.8, 4.0).tube is None
    assert knockout_tool(3.0, 4.8, 4.0).tube == Tube(3.1, 3.9)
    assert not knockout_tool(3.1, 4.8, 4.0).does(Tube(3.2, 3.9))


def test_the_tube_named_can_always_be_made():
    for tail, shoulder, bore in itertools.product((0.0, 0.5, 1.83, 3.0), (2.0, 3.33, 4.2), (2.5, 4.07, 6.0)):
        if shoulder <= tail:
            continue
        tool = knockout_tool(tail, shoulder, bore)
        if tool.tube is not None:
            assert tool.does(tool.tube), (tail, shoulder, bore)
            assert tool.tube.wall_mm >= 0.4 - 1e-9
            assert tool.tube.inside_mm >= tail
            assert tool.tube.outside_mm < bore
            assert (shoulder - tool.tube.inside_mm) / 2 >= 0.25 - 1e-9


def test_tenths_where_a_tenth_lies_in_the_window_else_the_window():
    assert knockout_tool(1.83, 4.2, 5.07).tube == Tube(2.0, 4.9)
    assert knockout_tool(3.03, 4.8, 4.06).tube == Tube(pytest.approx(3.13), pytest.approx(3.96))


def test_a_solid_punch():
    punch = knockout_tool(0, 4.2, 5.0)
    assert punch.tube == Tube(0.0, 4.9)
    assert "A punch of 4.90 mm" in text(punch, "tool")


def test_a_tube_that_cannot_be_made_and_a_block_that_cannot():
    tool = knockout_tool(4.0, 4.3, 5.0)
    assert not tool.possible
    assert tool.findings[0].level == "stop"
    assert "over 4.10 mm inside and under 4.90 mm outside with a wall of 0.40 mm" in text(tool, "no-tool")
    assert not tool.does(Tube(4.1, 4.9))
    assert "split block" in text(knockout_tool(1.8, 4.2, 5.0, front_mm=9, section_mm=10), "block")
    # a hole of 7.8 + 0.2 on an edge of 10 less two ledges of 1 mm just goes
    for front, goes in ((7.8, True), (7.81, False)):
        found = knockout_tool(1.8, 4.2, 5.0, front_mm=front, section_mm=10).findings
        assert [f.level for f in found if f.topic == "block"] == ([] if goes else ["stop"])
    # a bearing of 0.25 mm all round: 4.2 less 0.5 leaves 3.7
    assert knockout_tool(3.6, 4.2, 6.0).tube == Tube(pytest.approx(3.7), pytest.approx(5.9))
    assert knockout_tool(3.61, 4.2, 6.0).tube is None


def test_soaking_is_named_only_where_the_section_bears_it():
    def said(verdict, limit=""):
        soak = None if verdict is None else Soak(verdict, limit)
        return text(knockout_tool(1.8, 4.2, 5.0, soak=soak), "force")

    assert "longer soak of section and feed, not more force" in said("ok")
    for verdict in (None, "limited", "never"):
        assert "longer soak" not in said(verdict)
        assert "time, not force" in said(verdict)
    assert "Soak nothing before" in said(None)
    assert "bears no soak" in said("never")
    assert "as far as the section bears it (15 minutes)" in said("limited", "15 minutes")
    assert "as far as the section bears it, and" in said("limited")
    for verdict in (None, "ok", "limited", "never"):
        assert "licensed professional" in said(verdict)
        assert "section that does not move" not in said(verdict)


@pytest.mark.parametrize(
    ("call", "low", "high"),
    [
        (lambda x: knockout_tool(x, 12, 14), 0, 8), (lambda x: knockout_tool(0, x, 14), 0.5, 14), (lambda x: knockout_tool(0.2, 0.6, x), 1, 15),
        (lambda x: knockout_tool(1.8, 4.2, 5.0, depth_mm=x), 0, 60), (lambda x: knockout_tool(1.8, 4.2, 5.0, clearance_mm=x), 0.02, 1),
    ],
)  # fmt: skip
def test_ranges(call, low, high):
    takes_only(call, low, high)


@pytest.mark.parametrize(("tail", "shoulder"), [(4.2, 1.8), (1.8, 1.8)])
def test_a_shoulder_stands_out_over_its_tail(tail, shoulder):
    with pytest.raises(InputError, match="mixed up"):
        knockout_tool(tail, shoulder, 5.0)
