"""From codes to light."""

import numpy as np
import pytest

from pentools.calc.nib.tone import FULL, decoding, light_of


@pytest.mark.parametrize(("tone", "middle"), [("srgb", 0.2158605), ("linear", 128 / 255), (2.2, (128 / 255) ** 2.2)])
def test_grey_128(tone, middle):
    assert decoding(tone, 255)[128] == pytest.approx(middle, abs=1e-6)
    assert light_of(np.array([[0, 128, 255]], np.uint8), tone).tolist()[0] == [0, round(middle * FULL), FULL]


def test_sixteen_bits():
    light = light_of(np.array([[0, 32896, 65535]], np.uint16), "srgb")
    assert abs(int(light[0, 1]) - round(0.2158605 * FULL)) <= 1


def test_a_coloured_ink_is_read_where_it_is_dark():
    codes = np.full((200, 200, 3), 240, np.uint8)
    codes[95:105] = (230, 40, 40)  # red ink: paper-white in the first channel
    light = light_of(codes, "srgb").astype(float)
    assert light[100, 100] < 0.12 * light[10, 10]
