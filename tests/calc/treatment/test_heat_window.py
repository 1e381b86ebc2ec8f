"""Heat windows: sealant against body, in figures and in words."""

import pytest

from pentools import tables
from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.calc.treatment.heat_window import HeatLimitRow, SealantRow, heat_window
from pentools.errors import InputError

LIMITS, SEALANTS = tables.read(HeatLimitRow, "heat_limits"), tables.read(SealantRow, "joint_sealants")


def window(body, sealant):
    return heat_window(body, sealant, LIMITS, SEALANTS)


def topics(result):
    return {finding.topic: finding.level for finding in result.findings}


def test_celluloid_with_shellac_in_words():
    found = window("celluloid", "shellac")
    for words in ("no margin", "warm", "test", "rest", "repeat", "each heating costs plasticiser"):
        assert words in found.verdict
    assert any(f.topic == "nitrate" and f.text.endswith(CLOSING_LINE) for f in found.findings)
    assert found.sources == ("wiki", "trade", "cool-shellac")
    assert found.certainty == "body: trade; sealant: primary"


@pytest.mark.parametrize("body", ["degrading celluloid", "cork", "latex"])
def test_what_is_never_warmed(body):
    found = window(body, "shellac")
    assert found.kind == "no heat"
    assert found.body_limit_c is None
    assert found.window_first_c is None
    assert topics(found)["window"] == "stop"


@pytest.mark.parametrize("body", ["unknown", "", "some resin nobody knows"])
def test_an_unnamed_body_gets_no_heat(body):
    found = window(body, "shellac")
    assert found.kind == "no heat"
    assert topics(found)["window"] == topics(found)["not-named"] == "stop"
    assert found.body_limit_c == min(r.value for r in LIMITS if r.rule == "working limit")


def test_words_follow_the_window():
    acrylic = window("acrylic", "shellac")
    assert "20 °C of margin to first softening, 5 °C to fully soft" in acrylic.verdict
    assert "10 °C of margin to first softening, 5 °C short of fully soft" in window("hard rubber", "shellac").verdict
    assert "20 °C short of softening, 40 °C short of fully soft" in window("celluloid", "rosin").verdict
    assert "15 °C short of fully soft" in window("celluloid", "shellac").verdict
    assert "never water" in window("casein", "shellac").verdict
    assert "plasticiser" not in acrylic.verdict


@pytest.mark.parametrize("body", sorted({row.material for row in LIMITS if row.rule == "working limit"} - {"unknown"}))
@pytest.mark.parametrize("typed", ["", "unknown", "chewing gum", "some glue", "brown stuff?"])
def test_a_sealant_that_is_not_named_is_taken_as_the_strictest(body, typed):
    found = window(body, typed)
    named = [window(body, row.sealant) for row in SEALANTS if row.property == "softens"]
    assert (found.sealant, found.taken_as) == ("unknown", "rosin")
    assert found.window_full_c == min(one.window_full_c for one in named)
    assert found.window_first_c == min(one.window_first_c for one in named if one.window_full_c == found.window_full_c)
    assert "unknown sealant" in found.verdict
    assert topics(found)["sealant-not-named"] == "warning"
    assert topics(found)["window"] == "warning"


@pytest.mark.parametrize("typed", ["none", "nothing", "silicone grease", "grease"])
def test_no_warming_where_nothing_holds(typed):
    found = window("celluloid", typed)
    assert (found.kind, found.sealant_first_c, found.window_first_c) == ("not needed", None, None)
    assert "it needs no heat" in found.verdict
    assert found.verdict.startswith("celluloid with ")
    assert "softening" not in found.verdict


@pytest.mark.parametrize("body", ["acrylic", "hard rubber", "bare metal", "celluloid"])
def test_epoxy_softens_and_does_not_let_go(body):
    found = window(body, "epoxy")
    assert not found.lets_go
    assert found.verdict.startswith(
        f"{body} with epoxy: epoxy softens and does not let go, so heat alone will not free it"
    )
    assert topics(found)["window"] == "warning"
    assert window(body, "shellac").lets_go


def test_a_weld_is_not_warmed():
    found = window("acrylic", "welded")
    assert (found.kind, found.lets_go, topics(found)["window"]) == ("no heat", False, "stop")
    assert "does not part it" in found.verdict


def test_the_gravest_finding_comes_first():
    found = window("celluloid", "grease")
    assert [f.level for f in found.findings] == ["warning", "note"]
    found = window("plastic", "unknown")
    assert [f.level for f in found.findings] == ["stop", "stop", "warning"]


def test_tables_without_what_is_needed_are_refused():
    with pytest.raises(InputError, match="rows"):
        heat_window("celluloid", "shellac", LIMITS, [])
    ajar = SealantRow("shellac", "softens", 60, None, "", "x", "judged")
    with pytest.raises(InputError, match="softening of shellac"):
        heat_window("celluloid", "shellac", LIMITS, [ajar])


# worked out by hand: body limit less first and less full softening, °C
BY_HAND = """
celluloid          0 -15   20 -5   -20 -40   -2 -4   14 -8    15 -5    -10 -40
hard rubber        10 -5   30 5    -10 -30   8 6     24 2     25 5     0 -30
casein             0 -15   20 -5   -20 -40   -2 -4   14 -8    15 -5    -10 -40
cellulose acetate  -5 -20  15 -10  -25 -45   -7 -9   9 -13    10 -10   -15 -45
acrylic            20 5    40 15   0 -20     18 16   34 12    35 15    10 -20
polystyrene        10 -5   30 5    -10 -30   8 6     24 2     25 5     0 -30
phenolic           30 15   50 25   10 -10    28 26   44 22    45 25    20 -10
nylon              30 15   50 25   10 -10    28 26   44 22    45 25    20 -10
bare metal         30 15   50 25   10 -10    28 26   44 22    45 25    20 -10
"""


def test_windows_worked_out_by_hand():
    named = ("shellac", "rosin and castor oil", "rosin", "beeswax", "paraffin", "epoxy", "cyanoacrylate")
    wrong = []
    for line in BY_HAND.strip().splitlines():
        words = line.split()
        body, figures = " ".join(words[:-14]), [float(word) for word in words[-14:]]
        for i, sealant in enumerate(named):
            found, (first, full) = window(body, sealant), figures[2 * i : 2 * i + 2]
            kind = "none" if first <= 0 else "open" if first >= 20 and full > 0 else "narrow"
            if (found.window_first_c, found.window_full_c, found.kind) != (first, full, kind):
                wrong.append((body, sealant, found.window_first_c, found.window_full_c, found.kind))
    assert wrong == []
