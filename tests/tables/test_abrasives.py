"""The tables of abrasives against themselves."""

import itertools
import math
import re

import pytest

from pentools import tables
from pentools.tables.abrasives import catalogue, materials, media, surface_words, zones

CERTAINTIES = {"standard", "secondary", "common practice", "from memory", "judged"}
NAMES = [
    "abrasive_grades",
    "abrasive_materials",
    "abrasive_media",
    "removal_budgets",
    "polishing_pastes",
    "surface_words",
]


@pytest.mark.parametrize("name", NAMES)
def test_every_row_says_how_sure_it_is(name):
    assert {row["certainty"] for row in tables.rows(name)} <= CERTAINTIES


def test_no_fact_stands_twice():
    keys = [(r["scale"], r["grade"], r["figure"]) for r in tables.rows("abrasive_grades") if "also" not in r["figure"]]
    assert len(keys) == len(set(keys))


@pytest.mark.parametrize("scale", ["P", "F", "CAMI", "JIS electrical", "JIS sedimentation", "cushioned", "mesh"])
def test_a_higher_number_is_never_coarser(scale):
    by_number = sorted(catalogue().in_scale(scale), key=lambda g: int(g.name))
    pairs = list(itertools.pairwise(by_number))
    # P4000 and P5000 collide in the sources: both 5 um, and both rows say so
    assert [(a.label, b.label) for a, b in pairs if b.particle_um >= a.particle_um] == (
        [("P4000", "P5000")] if scale == "P" else []
    )
    assert all(b.finish_um <= a.finish_um for a, b in pairs)


def test_numbers_of_a_scale_follow_its_law():
    """Within 40 percent of size times number = constant, in each fine scale: catches a slipped digit."""
    for scale, low, high in (("P", 240, 2500), ("CAMI", 240, 600), ("JIS electrical", 240, 8000)):
        logs = [
            (math.log(int(g.name)), math.log(g.particle_um))
            for g in catalogue().in_scale(scale)
            if low <= int(g.name) <= high
        ]
        mean_x, mean_y = (sum(v[i] for v in logs) / len(logs) for i in (0, 1))
        slope = sum((x - mean_x) * (y - mean_y) for x, y in logs) / sum((x - mean_x) ** 2 for x, _ in logs)
        assert max(abs(y - mean_y - slope * (x - mean_x)) for x, y in logs) < math.log(1.4)


def test_cami_ends_at_600():
    assert max(int(g.name) for g in catalogue().in_scale("CAMI")) == 600


def test_the_cloth_is_a_curve_and_no_list():
    numbers = [int(g.name) for g in catalogue().in_scale("cushioned")]
    assert (numbers[0], numbers[-1]) == catalogue().cloth_numbers()
    assert not [n for n in numbers if n % 1000], "points of the curve are round numbers, nobody's grades"
    for g in catalogue().in_scale("cushioned"):
        assert (g.low_um, g.high_um) == pytest.approx((0.8 * g.particle_um, 1.2 * g.particle_um))
        assert (g.finish_low_um, g.finish_high_um) == pytest.approx((0.65 * g.finish_um, 1.35 * g.finish_um), abs=0.006)


def test_materials_hold_together():
    known = {row["material"] for row in tables.rows("abrasive_materials")}
    for name in known:
        material = materials()[name]
        assert 0 < material.scratch_share.low <= material.scratch_share.typical <= material.scratch_share.high < 1
        assert "ask a licensed professional" in material.caution
        assert material.wet_text
        assert material.zone in ("", *zones())
    assert materials()["unknown"].coarsest_um == 0
    dry = {name for name in known if not materials()[name].wet}
    assert dry == {"hard rubber", "faded hard rubber", "casein"}


def test_what_is_not_named_is_worked_in_no_way():
    unknown = materials()["unknown"]
    # judged: as wide as all plastics together; no water, since casein may be meant
    share = unknown.scratch_share
    assert (share.low, share.typical, share.high) == (0.05, 0.1, 0.2)
    assert (unknown.coarsest_um, unknown.wet, unknown.zone, unknown.density_g_ml, unknown.certainty) == (
        0,
        False,
        "",
        None,
        "judged",
    )
    assert not any(unknown.allows(medium) for medium in media())
    # of a material that only the other table knows it is the same, under its own name
    cork = materials()["cork"]
    assert (cork.name, cork.coarsest_um, cork.wet) == ("cork", 0, False)


def test_never_sanded_is_not_worked_at_all_unless_a_paste_is_provided_for():
    gold = materials()["gold-filled"]
    assert gold.never_text
    assert (gold.allows("paste"), gold.allows("film"), gold.coarsest_um) == (True, False, 3)
    assert materials()["plated metal"].coarsest_um == 0 or not materials()["plated metal"].allows("film")
    assert materials()["degrading celluloid"].coarsest_um == 0


def test_wet_and_dry_agree_with_the_compatibility_table():
    """Where its limit for sanding says wet or barely damp, the abrasives' table must say no other."""
    for row in tables.rows("compatibility"):
        if row["treatment"] == "wet sanding" and row["verdict"] != "never":
            material, limit = materials()[row["material"]], row["limit"]
            if "barely damp" in limit:
                assert not material.wet, row["material"]
            elif re.search(r"\bwet\b", limit):
                assert material.wet, row["material"]


@pytest.mark.parametrize("treatment", ["wet sanding", "buffing wheel"])
def test_the_compatibility_table_alone_says_what_may_be_done(treatment):
    for row in tables.rows("compatibility"):
        if row["treatment"] == treatment:
            material = materials()[row["material"]]
            if treatment == "wet sanding":
                assert bool(material.never_text) == (row["verdict"] == "never"), row["material"]
                assert not (material.never_text and material.allows("paper")), row["material"]
                assert row["reason"][1:] in material.sanding_text
            else:
                assert row["reason"][1:] in material.wheel_text
                assert ("never" in material.wheel_text) == (row["verdict"] == "never" or "never" in row["limit"])


def test_zones_and_what_they_can_spare():
    nothing = {name for name, zone in zones().items() if zone.budget_high_um == 0}
    assert nothing == {"imprint", "threads", "seat", "plating", "overlay", "aluminium"}
    assert {n: (z.budget_low_um, z.budget_high_um, z.coarsest_um) for n, z in zones().items() if n not in nothing} == {
        "plain barrel": (30, 50, None), "near an imprint": (5, 10, None), "gold-filled": (0, 0.5, 3), "silver": (0, 0.5, 3),
        "solid gold nib": (0, 5, 9), "steel nib": (0, 2, 9), "lacquer": (0, 1, 3), "bare metal": (5, 10, None),
    }  # fmt: skip


def test_media_cover_every_grade():
    assert {g.medium for g in catalogue().grades} <= set(media())
    assert all(1 < m.ratio_low < m.ratio_high and 0 < m.cut_share <= 1 for m in media().values())


def test_words_are_in_order():
    sizes = [size for _, size, _ in surface_words("defect").values()]
    assert sizes == sorted(sizes)
    assert all(low <= size <= high for low, size, high in surface_words("defect").values())
    finishes = list(surface_words("finish").values())
    assert finishes == sorted(finishes, reverse=True)
    assert all(low < size < high for low, size, high in finishes)
