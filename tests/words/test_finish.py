"""What is said of abrasives, where the sentence turns on its values."""

import pytest

from pentools.words import phrase

SLOW = {"grade": "P2000", "minutes": 40.0, "depth": 20.0, "limit": 18.0}
TOTAL = {"typical": 20.0, "low": 15.0, "high": 30.0, "zone": "barrel", "least": 30.0, "most": 50.0, "spent": 0.0, "wall": None, "certainty": "judged"}  # fmt: skip
SIZES = {"first": 9.0, "second": 12.0, "finish_before": 9.0, "finish_after": 7.0, "grain_before": 9.0, "grain_after": 8.0}  # fmt: skip
BRIDGE = {"name": "film 5 µm", "um": 5.0, "before": "P2000", "after": "film 3 µm"}
TAKES = "about 20 µm a side (15 to 30)"


@pytest.mark.parametrize(
    ("key", "values", "said"),
    [
        ("slow-start", {**SLOW, "why": "allowed", "faster": ["P800"]}, "P2000 needs about 40 min for 20 µm. P800 is at hand and allowed, and faster."),
        ("slow-start", {**SLOW, "why": "too coarse", "faster": ["P400", "P800"]}, "P2000 needs about 40 min for 20 µm. P400 and P800 would be faster, but are too coarse here (18 µm at most)."),
        ("slow-start", {**SLOW, "why": "none", "faster": []}, "P2000 needs about 40 min for 20 µm. Nothing faster is at hand."),
        ("missing-grade", {**BRIDGE, "at_hand": False}, "film 5 µm (5 µm, not at hand) would lie well between P2000 and film 3 µm."),
        ("missing-grade", {**BRIDGE, "at_hand": True}, "film 5 µm (5 µm, which is at hand) would lie well between P2000 and film 3 µm."),
        ("finish-not-reached", {"last": "P2000", "leaves": 10.3, "wanted": 3.0, "name": None, "um": None, "at_hand": False}, "P2000, the last that this ladder can use, leaves a finish like 10.3 µm; 3 µm was wanted."),
        ("trim-unmask", {"grade": "film 5 µm", "rest": 1}, "Unmask solid trim at film 5 µm and take it through this last step. Plated or unknown trim stays masked."),
        ("trim-unmask", {"grade": "film 5 µm", "rest": 3}, "Unmask solid trim at film 5 µm and take it through the last 3. Plated or unknown trim stays masked."),
        ("within-budget", TOTAL, f"The plan takes {TAKES}; “barrel” can spare 30 to 50 µm. Budgets are judged, no source; measure the wall."),
        ("within-budget", {**TOTAL, "wall": 0.5, "spent": 5.0}, f"The plan takes {TAKES}; “barrel” can spare 30 to 50 µm after the 5 µm already taken. A tenth of the wall at most."),
        ("over-budget", {**TOTAL, "least": 0.0, "most": 10.0}, f"Over budget: the plan takes {TAKES}, “barrel” can spare 10 µm. Reduce the defect, do not remove it."),
        ("goes-coarser", {**SIZES, "before": "A", "after": "B", "by": "grain", "why": ""}, "A to B goes coarser by grain: 9 µm to 12 µm. It puts scratches back that the step before took out."),
        ("goes-coarser", {**SIZES, "second": 9.0, "before": "A", "after": "B", "by": "finish", "why": "grain finer"}, "A to B does not go finer by finish: 9 µm to 9 µm. The grain is finer, 9 µm to 8 µm, but the scratch left is not."),
        ("removal-agrees", {"by_diameter": 4.0, "by_mass": 5.0}, "The two measurements agree: 4 µm a side by diameter, 5 µm by mass."),
        ("leave-alone:zone", {"zone": "imprint", "why": "it is shallow"}, "Leave the zone “imprint” alone: its budget is 0 µm. It is shallow."),
        ("too-small", {"stages": 1, "material": "acrylic"}, "1 measured stage on acrylic took less than the instrument can tell, and says nothing about a rate."),
        ("too-small", {"stages": 2, "material": "acrylic"}, "2 measured stages on acrylic took less than the instrument can tell, and say nothing about a rate."),
    ],
)  # fmt: skip
def test_said(key, values, said):
    assert phrase(f"finish.{key}", values) == said


def test_mass_against_diameter():
    both = {"by_diameter": 4.0, "by_mass": 8.0}
    assert phrase("finish.removal-differs:more", both).startswith(
        "Mass says more than diameter: 4 µm a side by diameter, 8 µm by mass."
    )
    assert phrase("finish.removal-differs:less", both).startswith(
        "Mass says less than diameter: 4 µm a side by diameter, 8 µm by mass."
    )
