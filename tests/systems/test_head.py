"""The piston head: a seal that fills its groove and reaches the bore."""

import pytest
from systems.building import box, built


@pytest.mark.parametrize("system", ["piston", "syringe"])
def test_head_groove_and_seal_have_their_measured_sizes(system):
    pen, _, _ = built(system, head_diameter=8.3, head_length=6.0, groove_diameter=5.0, groove_width=2.4, bore=8.6)
    head, seal = box(pen, "piston-head"), box(pen, "head-seal")
    assert head[2] - head[0] == pytest.approx(6.0)
    assert head[3] == pytest.approx(4.15)
    assert seal[2] - seal[0] == pytest.approx(2.4 - 0.08)
    assert seal[3] == pytest.approx(4.3)
    assert seal[0] - head[0] == pytest.approx(head[2] - seal[2])
    names = ("head_diameter", "head_length", "groove_diameter", "groove_width")
    assert [pen.spans[name].size for name in names] == pytest.approx([8.3, 6.0, 5.0, 2.4])
    bottom = min(abs(y) for p in pen.pieces if p.part == "head-seal" for _, y in p.points)
    assert bottom == pytest.approx(2.5)
