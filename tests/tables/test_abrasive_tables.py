"""The tables of abrasives against themselves."""

import itertools
import math

import pytest

from pentools import tables
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, gold_density_g_ml, materials, media, surface_words, zones

CERTAINTIES = {"standard", "secondary", "common practice", "from memory", "judged"}
NAMES = [
    "abrasive_grades",
    "abrasive_materials",
    "abrasive_media",
    "removal_budgets",
    "polishing_pastes",
    "surface_words",
    "gold_alloys",
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


def test_interpolated_finish_figures_follow_from_their_neighbours():
    rows = {
        r["grade"]: r for r in tables.rows("abrasive_grades") if r["scale"] == "cushioned" and r["figure"] == "finish"
    }
    grain = {g.name: g.particle_um for g in catalogue().in_scale("cushioned")}
    made = [name for name, row in rows.items() if row["source"] == "interpolated"]
    assert made == ["3600", "4000", "6000"]
    coarse, fine = float(rows["3200"]["size_um"]), float(rows["8000"]["size_um"])
    for name in made:
        share = math.log(grain["3200"] / grain[name]) / math.log(grain["3200"] / grain["8000"])
        assert float(rows[name]["size_um"]) == pytest.approx(coarse * (fine / coarse) ** share, rel=0.01)
        assert rows[name]["certainty"] == "judged"


def test_the_nine_cloths_are_there():
    assert [g.name for g in catalogue().in_scale("cushioned")] == [
        "1500",
        "1800",
        "2400",
        "3200",
        "3600",
        "4000",
        "6000",
        "8000",
        "12000",
    ]


def test_materials_and_zones():
    for material in materials().values():
        k = material.scratch_share
        assert 0 < k.low <= k.typical <= k.high < 1, "brittle factors have no place on a pen"
        assert "ask a licensed professional" in material.caution
        assert material.wet_text
        assert material.wheel_text
    assert [m for m, v in materials().items() if not v.wet] == ["hard rubber", "casein"]
    assert {z for z, v in zones().items() if v.budget_high_um == 0} == {"imprint", "threads", "seat", "plating"}
    assert zones()["gold-filled"].budget_high_um == 0.5
    assert all(z.budget_low_um <= z.budget_high_um for z in zones().values())


def test_media_cover_every_grade():
    assert {g.medium for g in catalogue().grades} <= set(media())
    assert all(1 < m.ratio_low < m.ratio_high and 0 < m.cut_share <= 1 for m in media().values())


def test_words_are_in_order():
    sizes = [size for _, size, _ in surface_words("defect").values()]
    assert sizes == sorted(sizes)
    assert all(low <= size <= high for low, size, high in surface_words("defect").values())
    finishes = [size for _, size, _ in surface_words("finish").values()]
    assert finishes == sorted(finishes, reverse=True)


def test_gold_density():
    assert gold_density_g_ml(12) == 12.7
    assert 12.7 < gold_density_g_ml(13) < 13.3
    with pytest.raises(InputError):
        gold_density_g_ml(24)
