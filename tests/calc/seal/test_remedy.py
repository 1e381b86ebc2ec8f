"""What would make a ring fit: only changes that can be made, measured, and are called by their name."""

import pytest

from pentools.calc.seal.fit import seal_fit
from pentools.calc.seal.gland import Gland, Halves, Ring
from pentools.calc.seal.remedy import as_measured, nearest_remedies, wanted_ring
from pentools.errors import InputError
from pentools.tables.seals import duty, rings

HAND = duty("hand-turned")
AS568, METRIC = rings("as568"), rings("metric")
GLANDS = [
    (Gland("piston", 6.1, 8.0, 1.4), METRIC),
    (Gland("piston", 3.3, 6.3, 2.4), AS568),
    (Gland("piston", 3.3, 6.3, 2.4), METRIC),
    (Gland("packing", 3.0, 5.9, 2.4), AS568),
    (Gland("piston", 5.0, 8.0, 2.4), AS568),
]


@pytest.mark.parametrize(("gland", "ringlist"), GLANDS)
def test_every_remedy_makes_its_ring_fit_and_can_be_made(gland, ringlist):
    found = nearest_remedies(gland, ringlist, HAND, 50)
    assert found
    for remedy in found:
        groove, sleeve = remedy.groove_mm or gland.inner_mm, remedy.sleeve_mm or gland.outer_mm
        after = Gland(gland.kind, groove, sleeve, remedy.width_mm + 0.01)
        best = seal_fit(after, [as_measured(remedy.ring)], HAND).best
        assert HAND.low <= best.fit.nominal.squeeze_share <= HAND.high
        assert best.verdict == "fits"
        assert f"{remedy.groove_mm or remedy.sleeve_mm:.2f}" in remedy.sentence
        # two readings of 0.03 mm tell 0.06 mm; a sleeve's wall is 0.25 mm or more
        assert groove == gland.inner_mm or abs(groove - gland.inner_mm) >= 0.06
        assert sleeve >= gland.outer_mm + 0.06 or sleeve == gland.outer_mm or gland.outer_mm - sleeve >= 0.5
        if gland.kind == "packing":
            assert remedy.groove_mm is None, "a rod is never turned down"
        taken = groove < gland.inner_mm or sleeve > gland.outer_mm
        assert remedy.undoable is not taken
        assert ("cannot be undone" in remedy.sentence) is taken
        assert remedy.sentence == remedy.finding.text
    assert [r.change_mm for r in found] == sorted(r.change_mm for r in found)


def test_the_headline_is_never_a_hair():
    # 009 in 8.0/5.0 by a sleeve of 0.02 mm, or a groove turned by 0.01 mm, is no remedy
    for gland in (Gland("piston", 5.0, 8.0, 2.4), Gland("piston", 5.17, 8.12, 2.4)):
        for remedy in nearest_remedies(gland, AS568, HAND, 50):
            assert remedy.change_mm >= 0.06


def test_what_the_calliper_tells_decides_what_is_a_change():
    gland, ring = Gland("piston", 4.5, 7.4, half_width_mm=0.03), Ring("x", 4.45, 1.62, 0.05, 0.02)
    # the middle of the band wants a groove near 4.55: 0.05 mm more, which 0.03 mm cannot tell and 0.02 mm can
    assert nearest_remedies(gland, [ring], HAND) == ()
    (sharp,) = nearest_remedies(Gland("piston", 4.5, 7.4, half_width_mm=0.02), [ring], HAND)
    assert 0.04 <= sharp.groove_mm - 4.5 < 0.06
    assert sharp.undoable
    assert f"the groove were built up, or a new head made, to {sharp.groove_mm:.2f} mm (now 4.50)" in sharp.sentence
    blunt = Gland("piston", 4.5, 7.4, half_width_mm=0.02, halves=Halves(inner_mm=0.03))
    assert nearest_remedies(blunt, [ring], HAND) == ()


def test_a_new_bore_is_told_by_its_own_half_width():
    # 2.95 x 1.8 on 3.0 wants 3.0 + 2 · 0.885 · 1.788 = 6.165
    found = nearest_remedies(Gland("packing", 3.0, 5.9, 2.4), [Ring("x", 2.95, 1.8, 0.05, 0.02)], HAND)
    assert found[0].sleeve_mm == pytest.approx(3.0 + 2 * 0.885 * 1.7883, abs=0.01)
    assert "the housing were bored out to 6.17 mm (now 5.90)" in found[0].sentence
    assert (found[0].squeeze_share, found[0].stretch_share) == pytest.approx((0.115, 0.05 / 2.95))
    assert nearest_remedies(Gland("packing", 3.0, 6.12, 2.4), [Ring("x", 2.95, 1.8, 0.05, 0.02)], HAND) == ()
    assert nearest_remedies(Gland("packing", 3.0, 6.7, 2.4), [Ring("x", 2.95, 1.8, 0.05, 0.02)], HAND)[0].undoable


def test_a_head_still_passes():
    found = nearest_remedies(Gland("piston", 6.1, 8.0, 1.4, 7.8), METRIC, HAND, 50)
    assert all((r.sleeve_mm or 8.0) > 7.8 for r in found)
    assert all((r.groove_mm or 6.1) < 7.8 for r in found)
    with pytest.raises(InputError, match="1 or more"):
        nearest_remedies(Gland("piston", 6.1, 8.0, 1.4, 7.8), METRIC, HAND, 0)


def test_what_a_lathe_cannot_take_off_counts_twice():
    # 4.5 + 2 · 0.885 · 1.776 = 7.64 mm inside
    sleeve = nearest_remedies(Gland("piston", 4.5, 8.2, 2.4), [Ring("008", 4.47, 1.78, 0.13, 0.08)], HAND, 50)[0]
    assert sleeve.sleeve_mm == pytest.approx(7.644, abs=0.001)
    assert sleeve.change_mm == pytest.approx(2 * (8.2 - sleeve.sleeve_mm))
    assert (
        "008 (4.47 × 1.78 mm) would fit if the bore were sleeved to 7.64 mm inside (a wall of 0.28 mm)"
        in sleeve.sentence
    )
    found = nearest_remedies(Gland("piston", 6.1, 8.0, 1.4), METRIC, HAND, 50)
    turned = next(r for r in found if r.groove_mm is not None and r.groove_mm < 6.1 and r.sleeve_mm is None)
    assert turned.change_mm == pytest.approx(6.1 - turned.groove_mm)


def test_the_width_is_cut_for_the_thickest_ring():
    (remedy,) = nearest_remedies(
        Gland("piston", 4.5, 7.4, half_width_mm=0.02), [Ring("x", 4.45, 1.62, 0.05, 0.02)], HAND
    )
    tight = (7.4 - 0.02 - remedy.groove_mm - 0.02) / 2
    assert remedy.width_mm == pytest.approx(3.141592653589793 / 4 * 1.64**2 / (0.85 * tight) + 0.02)


def test_a_wall_and_a_core_that_can_be_made():
    """A sleeve's wall of 0.25 mm, a groove's core of 1 mm: judged, what a home lathe and a thin tube allow."""
    ring = Ring("008", 4.47, 1.78, 0.05, 0.02)  # wants 7.6444 mm inside
    for bore, made in ((8.15, True), (8.14, False)):
        assert bool([r for r in nearest_remedies(Gland("piston", 4.5, bore, 2.4), [ring], HAND) if r.sleeve_mm]) is made
    thin = Ring("x", 1.0, 1.0, 0.02, 0.01)
    for bore, made in ((2.80, True), (2.74, False)):  # grooves of about 1.03 and 0.97 mm
        grooves = [
            r.groove_mm
            for r in nearest_remedies(Gland("piston", 1.3, bore, half_width_mm=0.005), [thin], HAND)
            if r.groove_mm
        ]
        assert bool(grooves) is made, (bore, grooves)


def test_measuring_never_widens_a_tolerance():
    ring = Ring("x", 4.0, 1.0, 0.01, 0.005)
    assert as_measured(ring) == ring
    wide = as_measured(Ring("x", 4.0, 1.0, 0.2, 0.1))
    assert (wide.inside_half_width_mm, wide.section_half_width_mm) == (0.05, 0.02)


def test_the_ring_to_look_for():
    # 2 % stretched on 4.5: 4.41, to 0.05; 11.5 % of the section on the seat with 1.45 of room: 1.638, free 1.65
    assert wanted_ring(Gland("piston", 4.5, 7.4, 2.4), HAND) == (4.4, 1.65)
    assert wanted_ring(Gland("piston", 4.5, 7.4, 1.2), HAND) is None
    assert wanted_ring(Gland("piston", 6.5, 7.1, 2.4), HAND) is None
