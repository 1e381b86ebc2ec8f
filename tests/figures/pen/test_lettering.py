"""Lines of text: how wide, where they break, how a length is written."""

import pytest

from pentools.figures.pen.lettering import format_length, text_width_mm, wrap


def test_text_is_never_wider_than_was_reckoned():
    font_manager = pytest.importorskip("matplotlib.font_manager")
    image_font = pytest.importorskip("PIL.ImageFont")
    try:
        path = font_manager.findfont("Liberation Sans", fallback_to_default=False)
    except ValueError:
        pytest.skip("a face with the widths of the drawings' stack is not installed")
    font = image_font.truetype(path, 1000)
    for words in (
        "pressure bar",
        "nib",
        "WAVY illimitable",
        "converter or cartridge",
        "8.40 mm (0.331 in)",
        "Größe fjord",
    ):
        real = font.getlength(words) / 1000.0 * 3.2
        assert real <= text_width_mm(words) <= real * 1.25


def test_lines_break_at_spaces_only_and_long_words_are_cut():
    assert wrap("bore 8.40\u202fmm\u00a0(0.331\u202fin)", 12.0)[0] == "bore"
    assert "".join(wrap("x" * 300, 30.0)) == "x" * 300
    assert max(text_width_mm(line) for line in wrap("x" * 300 + " y", 30.0)) <= 30.0
    assert wrap("", 30.0) == ("",)


def test_lengths_are_shown_in_both_units():
    assert format_length(11.9126).replace("\u202f", " ").replace("\u00a0", " ") == "11.91 mm (0.469 in)"
    assert format_length(136.525, ",").replace("\u202f", " ").replace("\u00a0", " ") == "136,5 mm (5,375 in)"


def test_width_goes_with_size_and_weight():
    assert text_width_mm("bore", 6.4) == pytest.approx(2 * text_width_mm("bore", 3.2))
    assert text_width_mm("bore", bold=True) == pytest.approx(1.07 * text_width_mm("bore"))
    # b o r e: 570 + 570 + 333 + 570 thousandths of the size, 5 % on the safe side
    assert text_width_mm("bore", 10.0) == pytest.approx(2.043 * 10 * 1.05)
    assert text_width_mm("漢", 10.0) == pytest.approx(10.5)


def test_a_long_word_is_cut_into_the_fewest_pieces():
    lines = wrap("m" * 100, 30.0)
    room = int(30.0 / text_width_mm("m"))
    assert [len(line) for line in lines] == [room] * (100 // room) + [100 % room] * bool(100 % room)
    assert wrap("ab", 0.1) == ("a", "b")  # a letter at least


def test_words_fill_a_line_before_the_next():
    wide = text_width_mm("one two") + 0.01
    assert wrap("one two three", wide) == ("one two", "three")
    assert wrap("one  two\nthree", wide) == ("one two", "three")


def test_inches_have_three_places_and_hundreds_one():
    assert format_length(99.999).startswith("100.00")
    assert format_length(100.0).startswith("100.0\u202f")
    assert "(0.039" in format_length(1.0)
