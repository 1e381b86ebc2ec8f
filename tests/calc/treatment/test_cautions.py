"""Which cautions apply, each with hazard, control and the closing line."""

import pytest

from pentools import tables
from pentools.calc.treatment.cautions import CLOSING_LINE, CautionRow, cautions_for
from pentools.errors import InputError

ROWS = tables.read(CautionRow, "cautions")


def keys(materials, actions, **more):
    return [caution.key for caution in cautions_for(materials, actions, ROWS, **more)]


@pytest.mark.parametrize(
    ("materials", "actions", "some", "none"),
    [
        (["celluloid"], ["dry heat"], {"nitrate-fire", "nitrate-heat", "hot-air", "open-flame", "closed-pen"}, {"latex", "formaldehyde", "ammonia-air"}),
        (["celluloid"], ["wet sanding"], {"nitrate-dust", "nitrate-waste", "dust"}, {"rubber-pigments", "nitrate-heat"}),
        (["degrading celluloid"], ["storing"], {"nitrate-degrading", "nitrate-store"}, {"nitrate-heat"}),
        (["brass"], ["flush mix soak"], {"ammonia-brass", "ammonia-bleach", "ammonia-air"}, {"ammonia-silver", "nitrate-fire"}),
        (["coloured hard rubber"], ["buffing wheel"], {"rubber-pigments", "rubber-sulfur", "wheel"}, {"nitrate-dust"}),
        (["acrylic"], ["acetone"], {"acetone-fire", "bleach-alcohol"}, {"nitrate-fire", "ammonia-air"}),
        (["latex"], ["sac work"], {"latex", "perished-rubber", "blades"}, {"nitrate-fire"}),
    ],
)  # fmt: skip
def test_what_applies(materials, actions, some, none):
    found = set(keys(materials, actions))
    assert some <= found
    assert not none & found


def test_each_ends_with_the_closing_line():
    every = {action for row in ROWS for action in row.actions} - {"any"}
    found = cautions_for(["unknown"], every, ROWS)
    assert len(found) == len(ROWS)
    for caution in found:
        assert caution.text.endswith(CLOSING_LINE)
        assert caution.hazard.endswith(".")
        assert caution.control.endswith(".")


@pytest.mark.parametrize("materials", [[], ["unknown"], ["celluloid", "unknown"]])
def test_an_unnamed_material_gets_every_materials_cautions(materials):
    found = set(keys(materials, ["dry heat"]))
    assert {"nitrate-heat", "formaldehyde", "rubber-sulfur", "unknown-plastic"} <= found


def test_an_acknowledged_one_is_left_out():
    assert "nitrate-fire" not in keys(["celluloid"], ["dry heat"], acknowledged=["nitrate-fire"])


def test_a_misspelt_action_hides_nothing():
    with pytest.raises(InputError, match="action"):
        keys(["celluloid"], ["dry haet"])
    with pytest.raises(InputError):
        keys(["celluloid"], [])
