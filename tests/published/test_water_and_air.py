"""Densities and Z against print and against reference libraries."""

import pytest

from pentools.calc.weighing.density import (
    air_density_cipm_2007,
    air_density_simple,
    saturation_vapour_pressure_kpa,
    water_density,
    water_density_air_saturated,
    z_factor,
)
from pentools.errors import InputError


@pytest.mark.parametrize(("t", "printed"), [(15, 999.10257), (20, 998.20675), (25, 997.04702), (30, 995.64880)])
def test_tanaka_equation(t, printed):
    # Tanaka et al., Metrologia 38 (2001) 301: its equation at whole degrees, five decimals
    assert water_density(t) == pytest.approx(printed, abs=5e-6)


def test_a_measured_density():
    # a published measurement of purified water: 998.9468(6) kg/m³ at 16 °C; the equation lies 0.9 ppm below
    assert water_density(16) == pytest.approx(998.9468, abs=2 * 0.0006)


@pytest.mark.parametrize("t", [1, 5, 10, 15, 17.5, 20, 22, 25, 30, 35])
def test_water_against_iapws_95(t):
    # the reference library CoolProp, IAPWS-95 formulation
    props = pytest.importorskip("CoolProp.CoolProp", reason="CoolProp is in the test extra")
    other = props.PropsSI("D", "T", t + 273.15, "P", 101325, "Water")
    assert water_density(t) == pytest.approx(other, rel=1e-6)


@pytest.mark.parametrize("t", [15, 20, 25, 30])
def test_water_against_teos_10(t):
    # the reference library gsw, TEOS-10, fresh water at zero sea pressure
    gsw = pytest.importorskip("gsw", reason="gsw is in the test extra")
    assert water_density(t) == pytest.approx(float(gsw.rho_t_exact(0, t, 0)), rel=1e-6)


@pytest.mark.parametrize(
    ("t", "p_hpa", "rh", "printed"),
    [(20, 1013.25, 50, 1.199314), (15, 1013.25, 50, 1.221631), (25, 1013.25, 50, 1.177315), (20, 950, 50, 1.124096), (20, 800, 50, 0.945728), (20, 1013.25, 0, 1.204557), (20, 1013.25, 100, 1.194087)],
)  # fmt: skip
def test_full_moist_air(t, p_hpa, rh, printed):
    # CIPM-2007 (Picard et al., Metrologia 45 (2008) 149), computed by an independent public implementation
    assert air_density_cipm_2007(t, p_hpa / 10, rh / 100) == pytest.approx(printed, abs=1e-6)


@pytest.mark.parametrize(
    ("t", "mmhg", "rh", "printed", "within"),
    # test values of a public statistics package's suite for CIPM-2007; that suite compares to 1e-4
    [(10, 730, 40, 1.19569, 1e-5), (40, 760, 40, 1.11497, 1e-4)],
)
def test_moist_air_of_a_public_suite(t, mmhg, rh, printed, within):
    assert air_density_cipm_2007(t, mmhg * 0.133322387415, rh / 100) == pytest.approx(printed, abs=within)


@pytest.mark.parametrize("rh", [0.0, 0.5, 0.9])
@pytest.mark.parametrize("t", [15, 20, 25, 30])
def test_simple_moist_air_against_a_library(t, rh):
    # CoolProp's humid air (a real-gas model): the short formula stays within 2e-4
    props = pytest.importorskip("CoolProp.CoolProp", reason="CoolProp is in the test extra")
    volume = props.HAPropsSI("Vha", "T", t + 273.15, "P", 101325, "R", rh)
    assert air_density_simple(t, 101.325, rh) == pytest.approx(1 / volume, rel=2e-4)


@pytest.mark.parametrize("rh", [0.0, 0.5, 1.0])
@pytest.mark.parametrize(("t", "p"), [(15, 101.325), (20, 101.325), (20, 90.0), (27, 105.0)])
def test_full_moist_air_against_a_library(t, p, rh):
    # CoolProp's humid air (the real-gas model of ASHRAE RP-1485) against CIPM-2007: two models, 1e-4 apart at most
    props = pytest.importorskip("CoolProp.CoolProp", reason="CoolProp is in the test extra")
    volume = props.HAPropsSI("Vha", "T", t + 273.15, "P", 1000 * p, "R", rh)
    assert air_density_cipm_2007(t, p, rh) == pytest.approx(1 / volume, rel=1e-4)


@pytest.mark.parametrize("t", [1, 10, 20, 30, 40])
def test_vapour_pressure_against_iapws_95(t):
    # the reference library CoolProp, IAPWS-95: the saturation term of CIPM-2007 stays within 0.1 %
    props = pytest.importorskip("CoolProp.CoolProp", reason="CoolProp is in the test extra")
    assert saturation_vapour_pressure_kpa(t) == pytest.approx(
        props.PropsSI("P", "T", t + 273.15, "Q", 0, "Water") / 1000, rel=1e-3
    )


@pytest.mark.parametrize(("p_hpa", "t"), [(900, 10), (950, 20), (1013.25, 15), (1013.25, 30), (1100, 25)])
def test_the_short_formula_stays_by_the_full_one(p_hpa, t):
    # OIML R 111-1 states 2e-4 for its formula over 900 to 1100 hPa, 10 to 30 °C, up to 80 %
    assert air_density_simple(t, p_hpa / 10, 0.5) == pytest.approx(air_density_cipm_2007(t, p_hpa / 10, 0.5), rel=2e-4)


@pytest.mark.parametrize(("t", "printed"), [(15, 1.71), (20, 2.34), (25, 3.17), (30, 4.25)])
def test_vapour_pressure(t, printed):
    # steam tables (IAPWS), two decimals
    assert saturation_vapour_pressure_kpa(t) == pytest.approx(printed, abs=0.005)


@pytest.mark.parametrize(
    ("t", "printed"),
    # ISO 8655-6 table of Z at 101.3 kPa, as reprinted in a pipette maker's manual; four decimals
    [(15.0, 1.0020), (20.0, 1.0029), (25.0, 1.0040), (30.0, 1.0054)],
)
def test_z_table(t, printed):
    assert z_factor(water_density_air_saturated(t), air_density_simple(t, 101.3, 0.5)) == pytest.approx(
        printed, abs=5.1e-5
    )
    assert z_factor(water_density(t), air_density_simple(t, 101.3, 0.5)) == pytest.approx(printed, abs=5.6e-5)


@pytest.mark.parametrize(
    ("t", "p_hpa", "rh", "printed"),
    # Z printed on three accredited calibration certificates
    [(19.35, 984, 0.6335, 1.00267), (18.75, 986, 0.5929, 1.00258), (20.42, 979, 0.6225, 1.0029)],
)
def test_z_of_certificates(t, p_hpa, rh, printed):
    assert z_factor(water_density(t), air_density_simple(t, p_hpa / 10, rh)) == pytest.approx(printed, abs=3e-5)


@pytest.mark.parametrize(("t", "wrong"), [(25.0, 1.0045), (30.0, 1.0062)])
def test_a_wrong_public_table_is_not_matched(t, wrong):
    # a public tool's table drifts to 1.0045 at 25 °C; the right value is 1.0040
    assert abs(z_factor(water_density(t), air_density_simple(t, 101.3, 0.5)) - wrong) > 4e-4


def test_a_misprinted_denominator_is_not_matched():
    # Kell's formula with its denominator printed as 16.897850e-3 in a web text: 997.936 at 20 °C, 270 ppm low
    t = 20.0
    top = (
        999.83952
        + 16.945176 * t
        - 7.9870401e-3 * t**2
        - 46.170461e-6 * t**3
        + 105.56302e-9 * t**4
        - 280.54253e-12 * t**5
    )
    misprinted, right = top / (1 + 16.897850e-3 * t), top / (1 + 16.879850e-3 * t)
    assert misprinted == pytest.approx(997.936, abs=0.005)
    assert abs(misprinted / water_density(t) - 1) > 200e-6
    # the temperature scale of 1968 and its age leave 3 ppm
    assert right == pytest.approx(water_density(t), rel=4e-6)


@pytest.mark.parametrize(
    "call",
    [
        lambda: water_density(-1),
        lambda: water_density(41),
        lambda: air_density_simple(20, 1013, 0.5),
        lambda: air_density_cipm_2007(20, 101, 50),
        lambda: z_factor(1.0, 1.2),
    ],
)
def test_out_of_range_is_refused(call):
    with pytest.raises(InputError):
        call()
