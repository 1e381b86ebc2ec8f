"""A field reads its own kind and says in words what it cannot use."""

import pytest

from pentools.errors import InputError
from pentools.fields import Field
from pentools.units import Reading

BORE = Field("bore", "Bore", "quantity", unit="mm", low=2, high=20)


@pytest.mark.parametrize(
    ("field", "text", "value"),
    [
        (BORE, "8.5 mm", 8.5),
        (Field("n", "Strokes", "count"), "7", 7),
        (Field("n", "Year", "number"), "1936", 1936.0),
        (Field("c", "Liquid", "choice", choices=(("water", "Water"), ("ink", "Ink"))), "WATER", "water"),
        (Field("y", "Dry", "yes-no"), "Yes", True),
        (Field("y", "Dry", "yes-no"), "n", False),
        (Field("d", "Date", "date"), "2026-03-14", "2026-03-14"),
        (Field("d", "Date", "date"), "27.11.2026", "2026-11-27"),
        (Field("d", "Date", "date"), "3 Sept 2026", "2026-09-03"),
        (Field("p", "Photo", "photo"), "side before.jpg", "side before.jpg"),
        (Field("i", "Pieces", "items"), "cap; barrel ;", ("cap", "barrel")),
        (Field("t", "Text"), " words ", "words"),
    ],
)
def test_reads_its_kind(field, text, value):
    got = field.read(text)
    assert (got.value if isinstance(got, Reading) else got) == value
    assert field.from_json(field.to_json(got)) == got
    assert field.read(field.typed(got)) == got


def test_several_quantities():
    field = Field("m", "Masses", "quantities", unit="g")
    got = field.read("8.92 g; 8,93 g")
    assert [r.value for r in got] == [8.92, 8.93]
    assert field.from_json(field.to_json(got)) == got


def test_the_last_unit_counts_for_those_before_it():
    field = Field("b", "Bore", "quantities", unit="mm", low=2, high=30)
    assert [r.value for r in field.read("9,10; 9,10; 9,05 mm")] == [9.1, 9.1, 9.05]
    assert [r.value for r in field.read("0.36 in; 9,05 mm")] == [9.144, 9.05]
    assert [r.value for r in field.read("9.10; 9.05 ± 0.02 mm")] == [9.1, 9.05]
    with pytest.raises(InputError, match="unit is missing"):
        field.read("9.10 mm; 9.05")


SYSTEMS = Field("system", "Filling system", "choice", choices=(("plunger-vacuum", "plunger, filled by vacuum"), ("lever-sac", "lever sac filler"), ("lever", "lever"), ("a-b", "one"), ("ab", "two")))  # fmt: skip


@pytest.mark.parametrize("text", ["plunger-vacuum", "Plunger-Vacuum", "plunger vacuum", "PLUNGER_VACUUM", "plungervacuum", "Plunger, filled by vacuum"])  # fmt: skip
def test_a_choice_forgives_capitals_spaces_and_hyphens(text):
    assert SYSTEMS.read(text) == "plunger-vacuum"


def test_a_choice_that_is_not_clear_is_refused_with_keys_and_labels():
    assert SYSTEMS.read("lever") == "lever"
    assert SYSTEMS.read("ab") == "ab"
    for text in ("a b", "plunger", "-"):
        with pytest.raises(
            InputError,
            match=r"plunger-vacuum \(plunger, filled by vacuum\), lever-sac \(lever sac filler\), lever, a-b \(one\)",
        ):
            SYSTEMS.read(text)


@pytest.mark.parametrize(
    ("field", "text"),
    [
        (BORE, "300 mm"),
        (Field("n", "Strokes", "count"), "2.5"),
        (Field("n", "Strokes", "count"), "-1"),
        (Field("n", "Strokes", "count", high=60), "61"),
        (Field("c", "Liquid", "choice", choices=(("water", "Water"),)), "oil"),
        (Field("y", "Dry", "yes-no"), "perhaps"),
        (Field("d", "Date", "date"), "3/4/2026"),
        (Field("d", "Date", "date"), "31.2.2026"),
        (Field("d", "Date", "date"), "3 Smarch 2026"),
        (Field("p", "Photo", "photo"), "../secret.jpg"),
        (Field("p", "Photo", "photo"), "/etc/x.jpg"),
        (Field("p", "Photo", "photo"), "script.svg"),
        (Field("t", "Owner", required=True), "  "),
    ],
)
def test_refuses_in_words(field, text):
    with pytest.raises(InputError, match=f"{field.label} must be"):
        field.read(text)


def test_empty_is_not_measured_and_never_zero():
    assert BORE.read("") is None
    assert BORE.shown(None) == "not measured"
    assert BORE.to_json(None) is None


def test_shown_with_both_units_of_the_trade():
    assert BORE.shown(BORE.read("0.469 in")) == "11.91\u202fmm (0.469\u202fin)"


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("128.5 mm", "128.5\u202fmm (5.059\u202fin)"),
        ("12.60 mm", "12.60\u202fmm (0.496\u202fin)"),
        ("1.5 mm", "1.5\u202fmm"),
    ],
)
def test_as_many_decimals_as_were_typed(text, shown):
    field = Field("length", "Length", "quantity", unit="mm")
    assert field.shown(field.read(text)) == shown
