"""Bands, findings and verdicts of one ring; what is offered with a reservation, and what never is."""

import itertools
from dataclasses import replace

import pytest

from pentools import tables
from pentools.calc.seal.gland import Gland, Ring, fit_ring
from pentools.calc.seal.judge import DUTIES, VERDICTS, Band, duties_from_bands, judge_fit
from pentools.errors import InputError
from pentools.tables.seals import duty

HAND = duty("hand-turned")
ROWS = tables.rows("seal_duties")


def judged(section, *, inside=4.55, width=2.4, head=None, half=0.0, kind="piston", inner=4.5, outer=7.4, spread=0.0):
    ring = Ring("x", inside, section, 0.0, spread)
    return judge_fit(fit_ring(ring, Gland(kind, inner, outer, width, head, half)), HAND)


@pytest.mark.parametrize(
    ("ring", "gland", "topic", "level", "verdict"),
    [
        (Ring("x", 4.5, 1.2), Gland("piston", 4.5, 7.4, 2.4), "no-contact", "stop", "does not fit"),
        (Ring("x", 4.5, 2.4), Gland("piston", 4.5, 7.4, 3.0), "squeeze-high", "stop", "does not fit"),
        (Ring("x", 4.5, 1.50, 0.0, 0.08), Gland("piston", 4.5, 7.4, 2.4), "contact-lost", "warning", "doubtful"),
        (Ring("x", 4.5, 1.55), Gland("piston", 4.5, 7.4, 2.4), "squeeze-low", "warning", "with a reservation"),
        (Ring("x", 4.5, 1.92), Gland("piston", 4.5, 7.4, 2.4), "squeeze-high", "warning", "with a reservation"),
        (Ring("x", 4.0, 1.78), Gland("piston", 4.5, 7.4, 2.4), "stretch", "stop", "does not fit"),
        (Ring("x", 4.2, 1.78), Gland("piston", 4.5, 7.4, 2.4), "stretch", "warning", "with a reservation"),
        (Ring("x", 4.35, 1.78), Gland("piston", 4.5, 7.4, 2.4), "stretch", "note", "fits"),
        (Ring("x", 4.55, 1.78), Gland("piston", 4.5, 7.4, 2.4), "loose", "note", "fits"),
        (Ring("x", 4.7, 1.78), Gland("piston", 4.5, 7.4, 2.4), "loose", "warning", "with a reservation"),
        (Ring("x", 5.0, 1.78), Gland("piston", 4.5, 7.4, 2.4), "loose", "stop", "does not fit"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 1.6), "fill", "stop", "does not fit"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 1.76), "fill", "warning", "with a reservation"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 1.88), "fill", "note", "fits"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 4.0), "fill", "note", "fits"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4), "fill", "note", "fits"),
        (Ring("x", 4.5, 1.7), Gland("piston", 4.5, 7.4, 2.4, 6.6), "eccentric", "warning", "doubtful"),
        (Ring("x", 3.02, 1.78), Gland("packing", 3.0, 6.2, 2.4), "outside", "note", "fits"),
        (Ring("x", 2.85, 1.5), Gland("packing", 3.0, 5.9, 2.4), "outside", "note", None),
    ],
)
def test_findings_in_words(ring, gland, topic, level, verdict):
    found = judge_fit(fit_ring(ring, gland), HAND)
    hits = [f for f in found.findings if f.topic == topic]
    assert [f.level for f in hits] == [level]
    assert len(hits[0].text) > 15
    assert verdict in (None, found.verdict)
    if verdict == "with a reservation":
        assert hits[0] in found.reservations
        assert found.excess_share > 0
    else:
        assert hits[0] not in found.reservations


# depth 1.45 mm, everything exact: squeeze = 1 - 1.45/section
@pytest.mark.parametrize(
    ("squeeze", "verdict", "topic"),
    [
        (0.049, "with a reservation", "squeeze-low"),
        (0.051, "fits", "squeeze"),
        (0.081, "fits", "squeeze"),
        (0.249, "fits", "squeeze"),
        (0.251, "does not fit", "squeeze-high"),
        (0.001, "with a reservation", "squeeze-low"),
        (-0.001, "does not fit", "no-contact"),
    ],
)
def test_the_bounds_of_squeeze(squeeze, verdict, topic):
    found = judged(1.45 / (1 - squeeze), width=3.0)
    assert found.verdict == verdict
    assert topic in {f.topic for f in found.findings}
    levels = {"squeeze": "ok" if 0.08 <= squeeze <= 0.15 else "note"}
    assert all(f.level == levels.get(topic, f.level) for f in found.findings if f.topic == topic)


@pytest.mark.parametrize(("most", "verdict"), [(0.299, "with a reservation"), (0.301, "doubtful")])
def test_the_worst_case_may_be_firm_up_to_a_bound(most, verdict):
    # section ± so that the worst case alone passes 25 %
    nominal, top = 1.45 / (1 - 0.20), 1.45 / (1 - most)
    assert judged(nominal, spread=top - nominal, width=4.0).verdict == verdict


@pytest.mark.parametrize(
    ("stretch", "verdict", "level"),
    [
        (0.019, "fits", None), (0.021, "fits", "note"), (0.049, "fits", "note"), (0.051, "with a reservation", "warning"),
        (0.099, "with a reservation", "warning"), (0.101, "does not fit", "stop"),
    ],
)  # fmt: skip
def test_the_bounds_of_stretch(stretch, verdict, level):
    found = judged(1.75, inside=4.5 / (1 + stretch))
    assert found.verdict == verdict
    assert [f.level for f in found.findings if f.topic == "stretch"] == ([level] if level else [])


@pytest.mark.parametrize(
    ("loose", "verdict", "level"),
    [
        (0.019, "fits", "note"), (0.021, "with a reservation", "warning"), (0.079, "with a reservation", "warning"),
        (0.081, "does not fit", "stop"),
    ],
)  # fmt: skip
def test_the_bounds_of_looseness(loose, verdict, level):
    found = judged(1.70, inside=4.5 / (1 - loose))
    assert found.verdict == verdict
    (finding,) = [f for f in found.findings if f.topic == "loose"]
    assert finding.level == level
    assert f"{4.5 / (1 - loose) - 4.5:.2f} mm" in finding.text


def test_what_a_stretch_costs_by_two_curves():
    """4.35 x 1.78 on 4.50: 3.45 %; (4.35 + 1.78) · 1.78² = (4.50 + W) W² gives W = 1.761; 3.45/(315·e^-2.444 + 165 + 3.45) = 1.76 %."""
    (told,) = [f.text for f in judged(1.78, inside=4.35).findings if f.topic == "stretch"]
    assert (
        told
        == "Stretched 3.4\u202f% over the groove; it costs 1.1\u202f% of the section (1.8\u202f% by the aerospace curve)."
    )
    (much,) = [f.text for f in judged(1.78, inside=4.2).findings if f.topic == "stretch"]
    assert "7.1\u202f% over the groove, more than 5.0\u202f%" in much
    on_a_rod = judged(1.78, inside=2.9, kind="packing", inner=3.0, outer=6.15)
    assert "over the rod" in next(f.text for f in on_a_rod.findings if f.topic == "stretch")


@pytest.mark.parametrize(("housing", "words"), [(5.9, "together by 7.8\u202f%"), (6.29, ""), (6.41, "does not touch")])
def test_a_housing_presses_a_ring_and_that_is_said_only(housing, words):
    # 2.98 x 1.71 on 3.0: outside 6.40
    fit = fit_ring(Ring("x", 2.98, 1.71), Gland("packing", 3.0, housing, 2.4, half_width_mm=0.0))
    found = [f for f in judge_fit(fit, HAND).findings if f.topic == "outside"]
    assert [f.level for f in found] == (["note"] if words else [])
    assert not words or words in found[0].text


@pytest.mark.parametrize(
    ("fill", "verdict", "level"),
    [
        (0.59, "fits", "note"), (0.61, "fits", None), (0.84, "fits", None), (0.86, "fits", "note"),
        (0.89, "fits", "note"), (0.91, "with a reservation", "warning"), (0.99, "with a reservation", "warning"),
    ],
)  # fmt: skip
def test_the_bounds_of_fill(fill, verdict, level):
    section = 1.45 / 0.76
    width = 3.141592653589793 / 4 * section**2 / 1.45 / fill
    found = judged(section, width=width)
    assert found.verdict == verdict
    assert [f.level for f in found.findings if f.topic == "fill"] == ([level] if level else [])


def test_a_groove_that_only_the_worst_case_overfills_is_doubtful():
    ring, gland = Ring("x", 4.55, 1.88, 0.0, 0.03), Gland("piston", 4.5, 7.4, 1.95, half_width_mm=0.03)
    fit = fit_ring(ring, gland)
    assert fit.fill_share < 1 < fit.fill_most_share
    assert judge_fit(fit, HAND).verdict == "doubtful"


def test_a_head_on_the_wall_is_told_apart_by_what_was_read():
    # squeeze 8 % of 1.576 mm is 0.126: a gap of 0.12 keeps touch as read and may lose it in the worst case
    may = judged(1.576, head=7.16, half=0.01)
    assert may.verdict == "with a reservation"
    assert "may lose" in next(f.text for f in may.findings if f.topic == "eccentric")
    assert may.margin_share < 0
    loses = judged(1.576, head=7.14, half=0.01)
    assert loses.verdict == "doubtful"
    assert "loses" in next(f.text for f in loses.findings if f.topic == "eccentric")


def test_margin_is_the_nearest_bound_of_the_worst_case():
    # least 10 %, most 17 %: 5 % above the floor, 8 % below the ceiling
    section = 1.45 / 0.87
    spread = section - 1.45 / 0.90
    found = judged(section, spread=spread)
    fit = fit_ring(Ring("x", 4.55, section, 0.0, spread), Gland("piston", 4.5, 7.4, 2.4, half_width_mm=0.0))
    assert fit.least.squeeze_share == pytest.approx(1 - 1.45 / (2 * section - 1.45 / 0.90), abs=0.1)
    expected = min(fit.least.squeeze_share - 0.05, 0.25 - fit.most.squeeze_share)
    assert found.margin_share == pytest.approx(expected)
    assert 0 < found.margin_share < 0.25 - fit.nominal.squeeze_share


def test_excess_adds_what_is_passed_and_counts_looseness_twice():
    assert judged(1.70).excess_share == 0
    light = judged(1.45 / 0.98)
    assert light.excess_share == pytest.approx(0.03)
    loose = judged(1.70, inside=4.5 / 0.95)
    assert loose.excess_share == pytest.approx(2 * (0.05 - 0.02), abs=1e-9)
    stretched = judged(1.75, inside=4.5 / 1.07)
    assert stretched.excess_share == pytest.approx(0.02, abs=1e-9)


def test_bands_differ_by_duty():
    fit = fit_ring(Ring("mine", 4.45, 1.70, 0.05, 0.02, measured=True), Gland("piston", 4.5, 7.4, 2.4))
    assert judge_fit(fit, HAND).verdict == "fits"
    assert judge_fit(fit, duty("low-friction")).verdict != "fits"
    firm = fit_ring(Ring("firm", 4.45, 1.90, 0.05, 0.02, measured=True), Gland("piston", 4.5, 7.4, 2.4))
    assert judge_fit(firm, duty("static")).verdict == "fits"
    assert judge_fit(firm, HAND).verdict != "fits"


SQUEEZE = Band("hand-turned", "squeeze", 0.0, 0.05, 0.08, 0.15, 0.25, 0.30, "judged: here")
EVERY = [
    Band("every", "stretch", None, None, None, 0.02, 0.05, 0.10),
    Band("every", "looseness", None, None, None, 0.0, 0.02, 0.08),
    Band("every", "gland fill", None, None, 0.60, 0.85, 0.90, 1.0),
]


def test_duties_of_the_table():
    for key in DUTIES:
        found = duty(key)
        assert found.source, key
        assert found.middle == pytest.approx((found.low + found.high) / 2)
        assert found.moves is (key != "static")
    assert (HAND.offered_from, HAND.floor, HAND.low, HAND.high, HAND.ceiling, HAND.offered_to) == (
        0,
        0.05,
        0.08,
        0.15,
        0.25,
        0.3,
    )
    fill, stretch = HAND.limits.fill, HAND.limits.stretch
    assert (fill.low, fill.good, fill.fits, fill.offered) == (0.6, 0.85, 0.9, 1.0)
    assert (stretch.low, stretch.good, stretch.fits, stretch.offered) == (0, 0.02, 0.05, 0.1)


def test_duties_from_bands_that_are_out_of_order_are_refused():
    assert duties_from_bands([SQUEEZE, *EVERY])["hand-turned"].source == "judged: here"
    for wrong in ({"floor": 0.2}, {"offered_to": 0.24}, {"offered_from": 0.06}, {"high": 0.08}, {"offered_to": 1.0}):
        with pytest.raises(InputError, match="in order"):
            duties_from_bands([replace(SQUEEZE, **wrong), *EVERY])
    for wrong in ({"ceiling": 0.2}, {"low": 0.03}, {"high": 0.06}):
        with pytest.raises(InputError, match="in order"):
            duties_from_bands([SQUEEZE, replace(EVERY[0], **wrong), *EVERY[1:]])
    with pytest.raises(InputError, match="no stretch"):
        duties_from_bands([SQUEEZE, *EVERY[1:]])


def test_every_band_has_its_source_or_is_judged():
    sources = {source["key"] for source in tables.sidecar("seal_duties")["sources"]}
    for row in ROWS:
        assert {key.strip() for key in row["source"].split(";")} <= sources, row
        assert row["certainty"], row
        assert row["note"], row


def test_verdicts_run_from_best_to_worst():
    sections = [1.70, 1.46, 1.40]
    found = [VERDICTS.index(judged(section).verdict) for section in sections]
    assert all(a < b for a, b in itertools.pairwise(found))


@pytest.mark.parametrize(
    ("squeeze", "words"),
    [
        (0.07, "Light, but within bounds: squeeze 7.0%, at worst 7.0% to 7.0%; 8.0% to 15.0% is the band."),
        (0.20, "Firm, but within bounds: squeeze 20.0%, at worst 20.0% to 20.0%; 8.0% to 15.0% is the band."),
    ],
)
def test_a_squeeze_beside_the_band_is_told_with_the_band_from_low_to_high(squeeze, words):
    found = judged(1.45 / (1 - squeeze), width=3.0)
    assert [f.text.replace("\u202f", "").replace(" %", "%") for f in found.findings if f.topic == "squeeze"] == [words]


def test_the_worst_case_is_told_from_least_to_most():
    nominal = 1.45 / (1 - 0.20)
    found = judged(nominal, spread=0.02, width=4.0)
    least, most = 1 - 1.45 / (nominal - 0.02), 1 - 1.45 / (nominal + 0.02)
    [text] = [f.text.replace("\u202f", "").replace(" %", "%") for f in found.findings if f.topic == "squeeze"]
    assert f"squeeze 20.0%, at worst {least:.1%} to {most:.1%};" in text
