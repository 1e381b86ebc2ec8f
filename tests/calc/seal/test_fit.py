"""Ranking rings: verdicts, order, remedies, and the path for many bores at once."""

import itertools

import pytest

from pentools.calc.seal.fit import VERDICTS, seal_fit
from pentools.calc.seal.gland import Gland, Ring, fit_ring
from pentools.calc.seal.judge import judge_fit
from pentools.calc.seal.many import seal_fit_many
from pentools.calc.seal.remedy import as_measured, nearest_remedies
from pentools.errors import InputError
from pentools.tables.seals import duty, rings

HAND = duty("hand-turned")
AS568, METRIC = rings("as568"), rings("metric")


def topics(findings):
    return {f.topic for f in findings}


def test_the_ring_that_fits_comes_first_and_says_so():
    found = seal_fit(Gland("piston", 4.5, 7.4, 2.4), AS568, HAND)
    assert found.best.designation == "008"
    assert found.best.verdict == "fits"
    assert found.remedies == ()
    assert len(found.candidates) == 349
    assert found.best.fit.least.squeeze_share >= HAND.floor
    assert found.best.fit.most.squeeze_share <= HAND.ceiling


def test_verdicts_are_in_order_and_margins_fall_among_those_that_fit():
    own = [Ring(f"own {i}", 4.45, 1.70 + 0.02 * i, 0.05, 0.02, measured=True) for i in range(8)]
    found = seal_fit(Gland("piston", 4.5, 7.4, 2.4), own, HAND)
    places = [VERDICTS.index(c.verdict) for c in found.candidates]
    assert places == sorted(places)
    margins = [c.judgement.margin_share for c in found.fitting]
    assert len(margins) > 2
    assert all(a >= b - 0.005 for a, b in itertools.pairwise(margins))


def test_a_thin_ring_by_the_table_is_to_be_measured():
    # 6 x 1.0 of class B in a groove of 6.10 and a bore of 8.00 spans -8 to +15 %
    found = seal_fit(Gland("piston", 6.1, 8.0, 1.4), METRIC, HAND)
    thin = next(c for c in found.candidates if c.designation == "6x1.0")
    measure = next(f for f in thin.findings if f.topic == "measure-ring")
    assert "−8 to +15" in measure.text
    assert thin.verdict != "fits"


def test_a_ring_that_only_its_tolerance_spoils_fits_once_it_is_measured():
    gland = Gland("piston", 6.1, 7.85, 1.4)
    by_table = next(c for c in seal_fit(gland, METRIC, HAND).candidates if c.designation == "6x1.0")
    assert by_table.verdict == "measure it"
    measured = seal_fit(gland, [Ring("mine", 6.0, 1.0, 0.05, 0.02, measured=True)], HAND).best
    assert measured.verdict == "fits"
    assert "measure-ring" not in topics(measured.findings)
    # and a measured ring that is thinner than the table says does not
    assert seal_fit(gland, [Ring("thin", 6.0, 0.92, 0.05, 0.02, measured=True)], HAND).best.verdict != "fits"


def test_measuring_never_widens_a_tolerance():
    ring = Ring("x", 4.0, 1.0, 0.01, 0.005)
    assert as_measured(ring) == ring


@pytest.mark.parametrize(
    ("ring", "gland", "topic", "level"),
    [
        (Ring("x", 4.5, 1.2), Gland("piston", 4.5, 7.4, 2.4), "no-contact", "stop"),
        (Ring("x", 4.5, 2.4), Gland("piston", 4.5, 7.4, 3.0), "squeeze-high", "stop"),
        (Ring("x", 4.5, 1.50, 0.0, 0.08), Gland("piston", 4.5, 7.4, 2.4), "contact-lost", "warning"),
        (Ring("x", 4.5, 1.55), Gland("piston", 4.5, 7.4, 2.4), "squeeze-low", "warning"),
        (Ring("x", 4.5, 1.92), Gland("piston", 4.5, 7.4, 2.4), "squeeze-high", "warning"),
        (Ring("x", 4.0, 1.78), Gland("piston", 4.5, 7.4, 2.4), "stretch", "stop"),
        (Ring("x", 4.2, 1.78), Gland("piston", 4.5, 7.4, 2.4), "stretch", "warning"),
        (Ring("x", 4.35, 1.78), Gland("piston", 4.5, 7.4, 2.4), "stretch", "note"),
        (Ring("x", 4.55, 1.78), Gland("piston", 4.5, 7.4, 2.4), "loose", "note"),
        (Ring("x", 4.7, 1.78), Gland("piston", 4.5, 7.4, 2.4), "loose", "warning"),
        (Ring("x", 5.0, 1.78), Gland("piston", 4.5, 7.4, 2.4), "loose", "stop"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 1.6), "fill", "stop"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 1.76), "fill", "warning"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 1.88), "fill", "note"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 4.0), "fill", "note"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4), "fill", "note"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 2.4, 6.6), "eccentric", "warning"),
        (Ring("x", 3.1, 1.78), Gland("packing", 3.0, 6.2, 2.4), "outside", "warning"),
        (Ring("x", 2.85, 1.5), Gland("packing", 3.0, 5.9, 2.4), "outside", "note"),
    ],
)
def test_findings_in_words(ring, gland, topic, level):
    judged = judge_fit(fit_ring(ring, gland), HAND)
    hits = [f for f in judged.findings if f.topic == topic]
    assert [f.level for f in hits] == [level]
    assert len(hits[0].text) > 15
    expected = {"stop": "does not fit", "warning": "doubtful"}.get(level)
    if expected:
        worst = {f.level for f in judged.findings}
        assert judged.verdict == ("does not fit" if "stop" in worst else "doubtful")
        assert judged.excess_share > 0 or topic == "fill"


def test_bands_differ_by_duty():
    gland = Gland("piston", 4.5, 7.4, 2.4)
    own = [Ring("mine", 4.45, 1.70, 0.05, 0.02, measured=True)]
    assert seal_fit(gland, own, HAND).best.verdict == "fits"
    assert seal_fit(gland, own, duty("low-friction")).best.verdict != "fits"
    firm = [Ring("firm", 4.45, 1.90, 0.05, 0.02, measured=True)]
    assert seal_fit(gland, firm, duty("static")).best.verdict == "fits"
    assert seal_fit(gland, firm, HAND).best.verdict != "fits"


def test_dash_sizes_that_a_chart_leaves_out_are_noted_for_moving_seals_only():
    gland = Gland("piston", 9.3, 12.2, 2.4)
    moving = next(c for c in seal_fit(gland, AS568, HAND).candidates if c.designation == "013")
    still = next(c for c in seal_fit(gland, AS568, duty("static")).candidates if c.designation == "013")
    assert "dash-range" in topics(moving.findings)
    assert "dash-range" not in topics(still.findings)


def test_drag_stands_beside_suction():
    found = seal_fit(Gland("piston", 4.5, 7.4, 2.4), AS568, HAND, shore_a=80, friction_coefficient=0.4)
    assert found.suction_n == pytest.approx(4.36, abs=0.01)
    assert found.best.friction.running_n > found.suction_n
    assert "will not spring back" in next(f.text for f in found.best.findings if f.topic == "drag")


def test_an_oval_bore_is_said():
    assert "ovality" in topics(seal_fit(Gland("piston", 4.5, 7.4, 2.4, ovality_mm=0.08), AS568, HAND).findings)


@pytest.mark.parametrize(
    ("gland", "ringlist"),
    [
        (Gland("piston", 6.1, 8.0, 1.4), METRIC),
        (Gland("piston", 3.3, 6.3, 2.4), AS568),
        (Gland("piston", 3.3, 6.3, 2.4), METRIC),
        (Gland("packing", 3.0, 5.9, 2.4), AS568),
    ],
)
def test_every_remedy_makes_its_ring_fit(gland, ringlist):
    found = seal_fit(gland, ringlist, HAND)
    assert found.best.verdict not in ("fits", "measure it")
    assert found.remedies
    for remedy in found.remedies:
        assert remedy.groove_mm is not None or remedy.sleeve_mm is not None
        after = Gland(
            gland.kind, remedy.groove_mm or gland.inner_mm, remedy.sleeve_mm or gland.outer_mm, remedy.width_mm + 0.01
        )
        best = seal_fit(after, [as_measured(remedy.ring)], HAND).best
        assert HAND.low <= best.fit.nominal.squeeze_share <= HAND.high
        assert best.verdict == "fits"
        if gland.kind == "packing":
            assert remedy.groove_mm is None, "a rod is never turned down"
        assert f"{remedy.groove_mm or remedy.sleeve_mm:.2f}" in remedy.sentence


def test_remedies_come_smallest_change_first_and_a_head_still_passes():
    gland = Gland("piston", 6.1, 8.0, 1.4, 7.8)
    found = nearest_remedies(gland, METRIC, HAND)
    changes = [r.change_mm for r in found]
    assert changes == sorted(changes)
    assert all((r.sleeve_mm or 8.0) > 7.8 for r in found)
    with pytest.raises(InputError, match="1 or more"):
        nearest_remedies(gland, METRIC, HAND, 0)


def test_no_rings_is_refused():
    with pytest.raises(InputError, match="at least one"):
        seal_fit(Gland("piston", 4.5, 7.4, 2.4), [], HAND)


@pytest.mark.parametrize("kind", ["piston", "packing"])
def test_many_bores_at_once_agree_with_one_by_one(kind):
    inners = [4.3, 4.5, 5.3, 5.5, 6.2]
    outers = [7.2, 7.35, 8.3, 8.45, 9.1]
    many = seal_fit_many(outers, inners, AS568[:60], HAND, width_mm=2.4, ovality_mm=0.02, kind=kind)
    for row, (inner, outer) in enumerate(zip(inners, outers, strict=True)):
        gland = Gland(kind, inner, outer, 2.4, ovality_mm=0.02)
        for column, ring in enumerate(AS568[:60]):
            fit = fit_ring(ring, gland)
            got = (
                many.least[row, column],
                many.nominal[row, column],
                many.most[row, column],
                many.stretch[row, column],
            )
            assert got == pytest.approx(
                (fit.least.squeeze_share, fit.nominal.squeeze_share, fit.most.squeeze_share, fit.stretch_share),
                abs=1e-9,
            )
            assert many.excess[row, column] == pytest.approx(judge_fit(fit, HAND).excess_share, abs=1e-9)
        one = seal_fit(gland, AS568[:60], HAND)
        if one.best.verdict == "fits":
            assert many.designations()[row] == one.best.designation
    if kind == "piston":
        assert any(many.designations())


def test_many_refuses_what_does_not_match():
    with pytest.raises(InputError, match="as many as the bores"):
        seal_fit_many([7.4, 7.5], [4.5, 4.6, 4.7], AS568, HAND)
    with pytest.raises(InputError, match="at least one"):
        seal_fit_many([], 4.5, AS568, HAND)
    with pytest.raises(InputError, match="below the bores"):
        seal_fit_many([4.4], 4.5, AS568, HAND)


def test_among_rings_that_do_not_fit_the_least_wrong_comes_first():
    # 006 is 13.8 % stretched, 007 is loose by 10 % and would fold: the stretched one is the lesser evil
    found = seal_fit(Gland("piston", 3.3, 6.3, 2.4), AS568, HAND)
    assert [c.designation for c in found.candidates[:2]] == ["006", "007"]
    bad = [c.judgement.excess_share for c in found.candidates if c.verdict == "does not fit"]
    assert all(a <= b + 0.001 for a, b in itertools.pairwise(bad))


def test_what_a_lathe_cannot_take_off_counts_twice():
    gland = Gland("piston", 6.1, 8.0, 1.4)
    sleeve = next(
        r for r in nearest_remedies(gland, METRIC, HAND, 50) if r.sleeve_mm is not None and r.groove_mm is None
    )
    assert sleeve.change_mm == pytest.approx(2 * (8.0 - sleeve.sleeve_mm))
    turned = next(
        r
        for r in nearest_remedies(gland, METRIC, HAND, 50)
        if r.groove_mm is not None and r.groove_mm < 6.1 and r.sleeve_mm is None
    )
    assert turned.change_mm == pytest.approx(6.1 - turned.groove_mm)
