"""A material and a zone in words, and the surface that the planner gets."""

import pytest

from pentools.calc.treatment.limits import CompatibilityRow, Overrule, treatment_limits
from pentools.sums.finish.surface import known_materials, read_surface
from pentools.tables import read


def test_the_bench_s_own_decision_goes_before_the_table():
    may = Overrule("limited", "a dent filled with silver", limit="on the mend only")
    sanding = treatment_limits("silver", "wet sanding", read(CompatibilityRow, "compatibility"), overrule=may)
    wheel = treatment_limits("silver", "buffing wheel", read(CompatibilityRow, "compatibility"))
    material = read_surface("silver", sanding=sanding, wheel=wheel).material
    assert material.allows("film")
    assert "on the mend only" in material.sanding_text
    assert not read_surface("silver").material.allows("film")


@pytest.mark.parametrize(
    ("material", "zone", "name", "held", "low", "high"),
    [
        ("ebonite", "", "hard rubber", "not said", 0, 0), ("ebonite", "plain barrel", "hard rubber", "plain barrel", 30, 50),
        ("gold filled", "", "gold-filled", "gold-filled", 0, 0.5), ("gold filled", "plain barrel", "gold-filled", "gold-filled", 0, 0.5),
        ("gold filled", "threads", "gold-filled", "threads", 0, 0), ("chromed steel", "plain barrel", "plated metal", "plating", 0, 0),
        ("lacquered aluminium", "", "lacquer", "lacquer", 0, 1), ("lacquer with silver overlay", "", "metal overlay", "overlay", 0, 0),
        ("brass", "near an imprint", "brass", "near an imprint", 5, 10),
    ],
)  # fmt: skip
def test_coat_and_place(material, zone, name, held, low, high):
    surface = read_surface(material, zone)
    assert (surface.material.name, surface.zone.name) == (name, held)
    assert (surface.zone.budget_low_um, surface.zone.budget_high_um) == (low, high)
    assert surface.findings == ()


@pytest.mark.parametrize("material", ["", "plastic", "cheese", "perhaps celluloid", "blue stuff"])
def test_what_is_not_named_takes_nothing(material):
    surface = read_surface(material, "plain barrel")
    assert not any(surface.material.allows(medium) for medium in ("paper", "film", "cushioned", "paste", "powder"))
    assert [(f.level, f.topic) for f in surface.findings] == [
        ("stop", "material-not-named"),
        ("note", "materials-known"),
    ]
    assert (material or "not named") in surface.findings[0].text


def test_a_material_that_no_abrasive_may_touch_is_not_offered():
    assert not {"unknown", "cork", "latex", "plated metal", "degrading celluloid"} & set(known_materials())
    assert {"celluloid", "hard rubber", "gold-filled", "silver"} <= set(known_materials())
