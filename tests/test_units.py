"""What people type, read or refused: one table of strings each way."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ranges import takes_only

from pentools.errors import InputError
from pentools.units import (
    UNIT_WORDS,
    Reading,
    convert,
    dimension_of,
    format_reading,
    may_be_negative,
    read_number,
    read_quantity,
    with_last_unit,
)

READ = [
    # text, unit, value, standard uncertainty
    ("8.92 g", "g", 8.92, None),
    ("8.92g", "g", 8.92, None),
    ("  8.92   g ", "g", 8.92, None),
    ("8.92 grams", "g", 8.92, None),
    ("8920 mg", "g", 8.92, None),
    ("0.5 oz", "g", 14.174761562, None),
    ("0.469 in", "mm", 11.9126, None),
    ("0.469 inch", "mm", 11.9126, None),
    ("0.469 in.", "mm", 11.9126, None),
    ("5 3/8 in", "mm", 136.525, None),
    ("5-3/8 in", "mm", 136.525, None),
    ("5 3/8 inches", "mm", 136.525, None),
    ("4 7/8 in", "mm", 123.825, None),
    ("4-7/8 in", "mm", 123.825, None),
    ("4 - 7/8 in", "mm", 123.825, None),
    ("1 3/4 in", "mm", 44.45, None),
    ('3/8"', "mm", 9.525, None),
    ("3/8 in", "mm", 9.525, None),
    ("9/32 in", "mm", 7.14375, None),
    ('5"', "mm", 127.0, None),
    ("5″", "mm", 127.0, None),
    ("5½ in", "mm", 139.7, None),
    ("½ in", "mm", 12.7, None),
    ("11,9 mm", "mm", 11.9, None),
    ("0,125 mm", "mm", 0.125, None),
    (".5 mm", "mm", 0.5, None),
    (",5 mm", "mm", 0.5, None),
    ("1.78 mm", "mm", 1.78, None),
    ("1,78 mm", "mm", 1.78, None),
    ("12 mm", "mm", 12.0, None),
    ("12 MM", "mm", 12.0, None),
    ("9/8 in", "mm", 28.575, None),
    ("10/4 in", "mm", 63.5, None),
    ("5 MPa", "kPa", 5000.0, None),
    ("5 MPA", "kPa", 5000.0, None),
    ("1.2 cm", "mm", 12.0, None),
    ("25 thou", "mm", 0.635, None),
    ("25 mil", "mm", 0.635, None),
    ("40 µm", "um", 40.0, None),
    ("40 um", "um", 40.0, None),
    ("0.04 mm", "um", 40.0, None),
    ("40 micron", "mm", 0.04, None),
    ("21 °C", "degC", 21.0, None),
    ("21°C", "degC", 21.0, None),
    ("21 C", "degC", 21.0, None),
    ("21 degC", "degC", 21.0, None),
    ("-5 °C", "degC", -5.0, None),
    ("−5 °C", "degC", -5.0, None),
    ("70 F", "degC", 21.1111111111, None),
    ("70 °F", "degC", 21.1111111111, None),
    ("294.15 K", "degC", 21.0, None),
    ("1.5 ml", "ml", 1.5, None),
    ("1.5 mL", "ml", 1.5, None),
    ("1.5 cc", "ml", 1.5, None),
    ("1500 µl", "ml", 1.5, None),
    ("0.0015 l", "ml", 1.5, None),
    ("1013 hPa", "kPa", 101.3, None),
    ("1013 mbar", "kPa", 101.3, None),
    ("760 mmHg", "kPa", 101.3250144354, None),  # 133.322387415 Pa each, by convention
    ("25 min", "min", 25.0, None),
    ("1.5 h", "min", 90.0, None),
    ("90 s", "min", 1.5, None),
    ("2 d", "h", 48.0, None),
    ("998.2 kg/m3", "g/ml", 0.9982, None),
    ("1.005 g/ml", "g/ml", 1.005, None),
    ("55 %", "1", 0.55, None),
    ("55 percent", "1", 0.55, None),
    ("60°", "deg", 60.0, None),
    ("2 N", "N", 2.0, None),
    ("10.22 ± 0.01 g", "g", 10.22, 0.01),
    ("10.22 g ± 0.01 g", "g", 10.22, 0.01),
    ("10.22±0.01 g", "g", 10.22, 0.01),
    ("10.22 +/- 0.01 g", "g", 10.22, 0.01),
    ("10.22 g +- 0.01", "g", 10.22, 0.01),
    ("10,22 ± 0,01 g", "g", 10.22, 0.01),
    ("0.469 ± 0.001 in", "mm", 11.9126, 0.0254),
    ("5 3/8 ± 0.01 in", "mm", 136.525, 0.254),
    ("70 F ± 2", "degC", 21.1111111111, 1.1111111111),
]

REFUSED = [
    # text, unit, words that must stand in the answer
    ("nan mm", "mm", "leave the field empty"),
    ("NaN", "mm", "leave the field empty"),
    ("inf g", "g", "leave the field empty"),
    ("-inf g", "g", "leave the field empty"),
    ("infinity mm", "mm", "leave the field empty"),
    ("", "mm", "Nothing was typed"),
    ("   ", "g", "Nothing was typed"),
    ("8.92", "g", "unit is missing"),
    ("0,5", "mm", "unit is missing"),
    ("5 3/8", "mm", "unit is missing"),
    ("10.22 ± 0.01", "g", "unit is missing"),
    ("mm", "mm", "Type it like"),
    ("5 in 3", "mm", "“in 3” is not known"),
    ("5 mm 3 in", "mm", "not known"),
    ("5 'mm'", "mm", "not known"),
    ("5 parsnips", "mm", "not known"),
    ("1e3 mm", "mm", "not known"),
    ("2 x 3 mm", "mm", "not known"),
    ("1.2.3 mm", "mm", "Type it like"),
    ("1.234,5 mm", "mm", "Type it like"),
    ("1,234.5 mm", "mm", "Type it like"),
    ("3 -4 mm", "mm", "Type it like"),
    ("--3 mm", "mm", "Type it like"),
    ("1,234 mm", "mm", "1.234 or 1234"),
    ("11,900 g", "g", "11.900 or 11900"),
    ("-3 mm", "mm", "minus sign"),
    ("-0.5 g", "g", "minus sign"),
    ("8.92 mm", "g", "“mm” is a unit of length"),
    ("55 %", "mm", "“%” is a share"),
    ("0.5", "1", "a number with a % sign"),
    ("21 °C", "mm", "unit of temperature"),
    ("8 g", "ml", "unit of mass"),
    ("1/0 in", "mm", "bottom above 0"),
    ("5 9/8 in", "mm", "proper fraction"),
    ("5 ± 1 ± 2 mm", "mm", "Type it like"),
    ("5 ± mm", "mm", "Type it like"),
    ("5 g ± 1 mg", "g", "same unit"),
    ("twelve mm", "mm", "Type it like"),
    ("53/8 in", "mm", "5 3/8 or 6 5/8"),
    ("11/8 in", "mm", "1 1/8 or 1 3/8"),
    ("16/8 in", "mm", "1 6/8 or 2"),
    ("5 mPa", "kPa", "MPa or mPa"),
    ("5 Mg", "g", "mg or Mg"),
    ("5 Mb", "kPa", "mbar or Mbar"),
    ("1.5 Ml", "ml", "ml or Ml"),
    ("12 Mm", "mm", "mm or Mm"),
    ("1/" + "9" * 5000, "mm", "too long"),
    ("1/" + "9" * 60 + " in", "mm", "fraction of ordinary numbers"),
    ("9" * 400 + " mm", "mm", "too long"),
]


@pytest.mark.parametrize(("text", "unit", "value", "spread"), READ)
def test_read(text, unit, value, spread):
    reading = read_quantity(text, unit)
    assert reading.value == pytest.approx(value, rel=1e-9)
    assert reading.unit == unit
    assert reading.typed == text.strip()
    assert reading.standard_uncertainty == (None if spread is None else pytest.approx(spread, rel=1e-9))


@pytest.mark.parametrize(("text", "unit", "words"), REFUSED)
def test_refused_in_words(text, unit, words):
    with pytest.raises(InputError, match="bore must be") as caught:
        read_quantity(text, unit, name="bore")
    assert words in str(caught.value)
    assert isinstance(caught.value, ValueError)


def test_there_are_enough_strings():
    assert len(READ) + len(REFUSED) >= 60


@pytest.mark.parametrize(
    ("text", "hint"), [("8.92 in", "perhaps 8.92 mm"), ("200 mm", "another unit"), ("0.3 mm", "another unit")]
)
def test_out_of_range_asks_for_the_unit(text, hint):
    with pytest.raises(InputError, match="typed in another unit") as caught:
        read_quantity(text, "mm", name="bore", low=2, high=20)
    assert hint in str(caught.value)


@pytest.mark.parametrize(
    ("text", "unit", "low", "high", "said", "unsaid"),
    [
        ("300 g", "g", 0, 200, "at most 200 g", "ug"),
        ("300 g", "g", 0, 200, "perhaps 300 gr", "mg"),
        ("14.2 oz", "g", 0, 200, "perhaps 14.2 g", "ug"),
        ("18214 g", "g", 0, 200, "perhaps 18214 mg", "e+"),
        ("120 %", "1", 0, 1, "at least 0 % and at most 100 %", "1 1"),
        ("70 °C", "degC", 5, 35, "perhaps 70 °F", "degC"),
        ("30 hPa", "kPa", 60, 110, "at least 60 kPa and at most 110 kPa", "perhaps"),
        ("0.3 mm", "um", 0, 200, "at most 200 µm", "um"),
    ],
)
def test_advice_is_what_a_person_may_have_meant(text, unit, low, high, said, unsaid):
    with pytest.raises(InputError) as caught:
        read_quantity(text, unit, name="value", low=low, high=high)
    words = str(caught.value).replace(f"“{text}”", "")
    assert said in words
    assert unsaid not in words


def test_an_error_repeats_no_more_than_can_be_read():
    with pytest.raises(InputError) as caught:
        read_quantity("1/" + "9" * 5000, "mm")
    assert len(str(caught.value)) < 400


def test_a_reading_is_a_quantity_of_the_unit_library_too():
    assert read_quantity("12.7 mm", "mm").quantity().to("inch").magnitude == pytest.approx(0.5)


def test_shown_plainly():
    assert format_reading(Reading(1234567.0, "mm")) == "1234570\u202fmm"
    assert format_reading(Reading(-0.001, "degC"), 1) == "0.0\u202f°C"
    assert format_reading(Reading(140.0, "um", 25.0)) == "140 ± 25\u202fµm"


def test_a_plausible_range_holds_its_edges():
    takes_only(lambda mm: read_quantity(f"{mm:.9f} mm", "mm", low=2, high=20), 2, 20)
    assert read_quantity("20.1 mm!", "mm", low=2, high=20).value == 20.1
    assert read_quantity("-5 °C", "degC", low=-5).value == -5


def test_how_long_a_number_may_be():
    assert read_number("9" * 15) == 999999999999999
    assert read_number("0" * 16 + "1.5") == 1.5  # noughts before a figure say nothing
    with pytest.raises(InputError, match="at most 15 figures"):
        read_number("1" + "0" * 15)
    assert read_number("0." + "1" * 118) == pytest.approx(1 / 9)
    with pytest.raises(InputError, match="too long"):
        read_number("0." + "1" * 119)
    assert read_quantity("1" + " " * 117 + "mm", "mm").value == 1
    with pytest.raises(InputError, match="too long"):
        read_quantity("1" + " " * 118 + "mm", "mm")


@pytest.mark.parametrize(
    ("parts", "read"),
    [
        (("9,10", "9,10", "9,05 mm"), ("9,10 mm", "9,10 mm", "9,05 mm")), (("9.10 cm", "9.05 mm"), ("9.10 cm", "9.05 mm")),
        (("9.10", "9.05 ± 0.02 mm"), ("9.10 mm", "9.05 ± 0.02 mm")), (("9.10", "300 mm!"), ("9.10 mm", "300 mm!")), (("9.10", "9.05"), ("9.10", "9.05")),
        (("1/2", "3/4 in"), ("1/2", "3/4 in")), (("", "9.05 mm", " "), ("9.05 mm",)), ((), ()), ((" ",), ()),
    ],
)  # fmt: skip
def test_the_last_unit_is_that_of_the_numbers_before_it(parts, read):
    assert with_last_unit(parts) == read


def test_what_may_lie_below_nought():
    assert [may_be_negative(unit) for unit in ("degC", "degF", "mm", "g")] == [True, True, False, False]
    assert may_be_negative("mm", said=True)
    assert not may_be_negative("degC", said=False)


def test_an_exclamation_mark_means_it():
    assert read_quantity("8.92 in !", "mm", low=2, high=20).value == pytest.approx(226.568)


def test_negative_can_be_allowed():
    assert read_quantity("-0.5 g", "g", negative=True).value == -0.5
    with pytest.raises(InputError):
        read_quantity("-5 °C", "degC", negative=False)


@given(st.floats(0.001, 999), st.sampled_from(["mm", "in", "cm", "thou", "um"]))
def test_any_plain_decimal_is_read_back(number, unit):
    text = f"{number:.4f} {unit}"
    assert read_quantity(text, unit).value == pytest.approx(float(text.partition(" ")[0]), rel=1e-12)


@given(st.text(max_size=20))
def test_no_text_makes_it_fail_otherwise(text):
    try:
        reading = read_quantity(text, "mm")
    except InputError:
        return
    assert reading.value >= 0


def test_there_and_back_in_json():
    reading = read_quantity("10.22 ± 0.01 g", "g")
    assert Reading.from_json(reading.as_json()) == reading


def test_numbers_without_unit():
    assert read_number("12,5") == 12.5
    with pytest.raises(InputError):
        read_number("12 g")


def test_dimensions_and_conversions():
    assert dimension_of("µm") == "length"
    assert convert(25.4, "mm", "in") == pytest.approx(1.0)
    with pytest.raises(InputError):
        convert(1.0, "mm", "g")
    with pytest.raises(InputError):
        dimension_of("furlong")


def test_shown_with_a_thin_space():
    assert format_reading(read_quantity("12.31 mm", "mm"), 2) == "12.31\u202fmm"
    assert format_reading(read_quantity("1.5 ml", "ml")) == "1.5\u202fmL"


def test_every_spelling_of_every_unit_is_read_in_every_way_of_writing_a_number():
    ways = {"12.5": 12.5, "12,5": 12.5, ".5": 0.5, "5 3/8": 5.375, "5-3/8": 5.375, "3/4": 0.75, "½": 0.5, "2½": 2.5, "7": 7.0, "+3": 3.0, "12.5 ± 0.1": 12.5}  # fmt: skip
    base = {"length": "mm", "mass": "g", "volume": "ml", "temperature": "degC", "pressure": "kPa", "time": "min", "density": "g/ml", "share": "%", "angle": "deg", "force": "N", "mass rate": "mg/h"}  # fmt: skip
    texts = [(f"{way}{gap}{word}", value, unit) for word, unit in UNIT_WORDS.items() if word != "1" for way, value in ways.items() for gap in ("", " ")]  # fmt: skip
    wrong = [text for text, value, unit in texts if read_quantity(text, base[dimension_of(unit)]).value != pytest.approx(convert(value, unit, base[dimension_of(unit)]))]  # fmt: skip
    assert wrong == []
    assert len(texts) > 2000
