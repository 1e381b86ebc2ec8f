"""What pneumatic fillers share: sac, protector, tube, ring and port, one in the other."""

import pytest
from systems.building import box, built


@pytest.mark.parametrize("system", ["pneumatic-down-stroke", "pneumatic-extending-tube"])
def test_sac_protector_tube_and_barrel_lie_one_in_the_other(system):
    pen, _, s = built(system, tube_diameter=8.8, sac_outside=6.4, nipple=5.0, bore=9.2, barrel_diameter=12.4)
    sac, guard, tube = (box(pen, part) for part in ("sac", "sac-protector", "pneumatic-tube"))
    assert sac[3] == pytest.approx(3.2)
    assert 3.2 < guard[3] < tube[3] == pytest.approx(4.4)
    assert tube[3] < s.bore
    assert sac[2] < guard[2] < tube[2] < s.total
    assert tube[2] > s.end
    assert pen.spans["tube_diameter"].size == pytest.approx(8.8)


@pytest.mark.parametrize("system", ["pneumatic-down-stroke", "pneumatic-extending-tube"])
def test_the_ring_seals_on_the_tube_behind_the_port(system):
    pen, _, s = built(system, tube_diameter=8.8, bore=9.2, barrel_diameter=12.4)
    ring, port = box(pen, "tube-ring"), box(pen, "port")
    lowest = min(abs(y) for p in pen.pieces if p.part == "tube-ring" for _, y in p.points)
    assert lowest == pytest.approx(4.4)
    assert 4.4 < ring[3] < s.tail
    assert port[2] < ring[0] < ring[2] < s.end
    assert port[3] == pytest.approx(4.4)
    assert port[2] - port[0] == pytest.approx(1.6)
