"""The converter pen: the converter on its nipple, its own seal and knob within it."""

import pytest
from systems.building import box, built

from pentools.systems.parts import drawn_part


def test_the_converter_has_its_measured_size_and_sits_on_the_nipple():
    pen, _full, s = built("cartridge-converter", cartridge_length=55.0, cartridge_diameter=7.4, barrel_length=75.0)
    assert pen.spans["cartridge_length"].size == pytest.approx(55.0)
    assert pen.spans["cartridge_diameter"].size == pytest.approx(7.4)
    body, knob = box(pen, "converter"), box(pen, "knob")
    assert body[0] == pytest.approx(s.tenon + 0.6)
    assert knob[2] - body[0] == pytest.approx(55.0)
    assert body[2] == pytest.approx(body[0] + 0.8 * 55.0)
    assert box(pen, "nipple")[2] > body[0]


def test_ink_stands_in_front_of_the_converters_own_seal():
    pen, _full, _s = built("cartridge-converter")
    ink, seal, rod = box(pen, "converter", "ink"), box(pen, "head-seal"), box(pen, "rod")
    assert ink[2] == pytest.approx(seal[0])
    assert rod[2] > seal[2]
    assert seal[3] == pytest.approx(ink[3])


def test_a_mark_on_the_filler_or_the_end_is_shown_where_it_belongs():
    assert drawn_part("cartridge-converter", "filler") == "converter"
    assert drawn_part("cartridge-converter", "blind-cap") == "barrel"
