"""Blurred edges fitted: by the error function of the standard library."""

import math

import numpy as np
import pytest

from pentools.calc.nib.edge_model import Expected, fit_edges, normal_share

ACROSS = np.arange(-5, 8, 0.5)


def readings(edge, width, blur, ink, bare=0.0, slope=0.0):
    def share(z):
        return 0.5 * (1 + math.erf(z / math.sqrt(2)))

    def one(x):
        u = (x - edge) / blur
        ramp = blur * (u * share(u) + math.exp(-u * u / 2) / math.sqrt(2 * math.pi))
        return bare + ink * (share(u) - share((x - width + edge) / blur)) + slope * ramp

    found = np.array([one(x) for x in ACROSS])
    return np.where(width / 2 >= ACROSS, found, np.nan)[None, :]


def fitted(data, width, blur=1.0, pale=False):
    known = Expected(np.array([blur]), np.array([0.5]), np.array([0.9]), np.array([np.inf]), np.array([pale]))
    return fit_edges(ACROSS, data, np.array([width]), known)


@pytest.mark.parametrize("width", [4.0, 6.0, 12.0, 40.0])
@pytest.mark.parametrize("edge", [-0.6, 0.0, 0.8])
def test_edge_blur_and_ink_come_back(width, edge):
    fit = fitted(readings(edge, width, 0.9, 0.93, bare=0.01), width)
    assert fit.inward[0] == pytest.approx(edge, abs=0.002 if width > 5 else 0.01)
    assert fit.blur[0] == pytest.approx(0.9, abs=0.01)
    assert fit.ink[0] + fit.bare[0] == pytest.approx(0.94, abs=0.01)
    assert fit.residual[0] < 1e-3


def test_ink_that_pales_inwards_is_taken_at_its_edge():
    data = readings(0.3, 14.0, 0.9, 0.93, slope=-0.04)
    assert fitted(data, 14.0, pale=True).inward[0] == pytest.approx(0.3, abs=0.05)
    assert abs(fitted(data, 14.0, pale=False).inward[0] - 0.3) > 0.08


def test_the_normal_share_against_the_library():
    z = np.linspace(-5, 5, 101)
    assert normal_share(z) == pytest.approx([0.5 * (1 + math.erf(v / math.sqrt(2))) for v in z], abs=1e-7)
