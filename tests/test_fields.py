"""A field reads its own kind and says in words what it cannot use."""

from dataclasses import replace

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
        (Field("p", "Photo", "photo"), "cap & clip, 2 (owner’s).HEIC", "cap & clip, 2 (owner’s).HEIC"),
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


CELSIUS = Field("t", "Room", "quantity", unit="degC")
KEPT = Field("m", "Masses", "quantities", unit="g")
COUNT = Field("n", "Strokes", "count", low=1, high=60)


def kept(value=8.5, unit="mm", u=None, typed="8.5 mm"):
    return {"value": value, "unit": unit, "u": u, "typed": typed}


@pytest.mark.parametrize(
    ("field", "data", "value"),
    [
        (BORE, kept(), Reading(8.5, "mm", None, "8.5 mm")),
        (BORE, kept(u=0), Reading(8.5, "mm", 0.0, "8.5 mm")),
        (BORE, kept(0), Reading(0.0, "mm", None, "8.5 mm")),
        (BORE, {"value": 8, "unit": "mm"}, Reading(8.0, "mm", None, "")),
        (BORE, kept(typed="8.5 mm" + " " * 114), Reading(8.5, "mm", None, "8.5 mm" + " " * 114)),
        (CELSIUS, kept(-5, "degC"), Reading(-5.0, "degC", None, "8.5 mm")),
        (KEPT, [kept(1, "g", typed="1 g")], (Reading(1.0, "g", None, "1 g"),)),
        (Field("x", "X", "number"), 1e15, 1e15), (Field("x", "X", "number"), -1e15, -1e15),
        (COUNT, 60.0, 60), (COUNT, 1, 1), (Field("i", "Pieces", "items"), ["cap"], ("cap",)),
        (Field("y", "Dry", "yes-no"), False, False), (Field("d", "Date", "date"), "2026-02-28", "2026-02-28"),
        (Field("t", "Text"), "a\ttab\nand a line", "a\ttab\nand a line"), (BORE, None, None),
    ],
)  # fmt: skip
def test_back_from_the_record(field, data, value):
    assert field.from_json(data) == value


@pytest.mark.parametrize(
    ("field", "data", "said"),
    [
        (BORE, 8.5, "a quantity in mm"), (BORE, kept(unit="in"), "a quantity in mm"), (BORE, kept(typed=8.5), "a quantity in mm"),
        (BORE, kept(True), "a quantity in mm"), (BORE, kept("8.5"), "a quantity in mm"), (BORE, kept(None), "a quantity in mm"),
        (BORE, kept(-0.001), "zero or more"), (BORE, kept(u=-0.1), "an uncertainty of zero or more"), (BORE, kept(u=True), "with an uncertainty"),
        (BORE, kept(float("nan")), "fifteen digits"), (BORE, kept(float("inf")), "fifteen digits"), (BORE, kept(1.1e15), "fifteen digits"),
        (BORE, kept(typed="8" * 121), "at most 120 letters"), (BORE, kept(typed="8\x07"), "control characters"),
        (KEPT, kept(), "a list"), (Field("i", "Pieces", "items"), "cap", "a list"), (Field("i", "Pieces", "items"), [1], "a text"),
        (Field("x", "X", "number"), True, "a number"), (Field("x", "X", "number"), "1", "a number"), (Field("x", "X", "number"), 10**400, "fifteen digits"),
        (COUNT, 2.5, "a whole number"), (COUNT, 0, "at least 1 and at most 60"), (COUNT, 61, "at least 1 and at most 60"), (Field("n", "N", "count"), -1, "at least 0"),
        (Field("y", "Dry", "yes-no"), "yes", "true or false"), (Field("y", "Dry", "yes-no"), 1, "true or false"),
        (Field("c", "Liquid", "choice", choices=(("water", "Water"), ("ink", "Ink"))), "Water", "one of: water, ink"),
        (Field("d", "Date", "date"), "2026-02-30", "year-month-day"), (Field("d", "Date", "date"), "20260228", "year-month-day"),
        (Field("p", "Photo", "photo"), "../a.jpg", "file name"), (Field("t", "Text"), "a\x00b", "control characters"), (Field("t", "Text"), 3, "a text"),
    ],
)  # fmt: skip
def test_what_another_program_wrote_is_refused_in_words(field, data, said):
    with pytest.raises(InputError, match=f"{field.label} must be") as caught:
        field.from_json(data)
    assert said in str(caught.value)


def test_an_odd_value_is_repeated_in_forty_signs_at_most():
    for text, shown in (("x" * 40, "x" * 40), ("x" * 41, "x" * 37 + "…")):
        with pytest.raises(InputError) as caught:
            Field("y", "Dry", "yes-no").from_json(text)
        assert f"“{shown}”" in str(caught.value)


@pytest.mark.parametrize(
    ("field", "value", "typed", "shown"),
    [
        (BORE, None, "", "not measured"), (Field("t", "Text"), None, "", "not said"), (Field("m", "M", "quantities", unit="g"), None, "", "not measured"),
        (COUNT, None, "", "not measured"), (BORE, Reading(8.5, "mm"), "8.5\u202fmm", "8.50\u202fmm (0.335\u202fin)"),
        (BORE, Reading(8.5, "mm", None, "8.5 mm"), "8.5 mm", None), (Field("i", "Pieces", "items"), ("cap", "clip"), "cap; clip", "cap; clip"),
        (Field("y", "Dry", "yes-no"), True, "yes", "yes"), (Field("y", "Dry", "yes-no"), False, "no", "no"), (COUNT, 7, "7", "7"),
        (Field("x", "X", "number"), 0.7 + 0.1, "0.8", "0.8"), (Field("x", "X", "number"), 1234567.5, "1234567.5", "1234567.5"),
        (Field("x", "X", "number"), 123456789012345.0, "123456789012345", "123456789012345"),
        (Field("c", "Liquid", "choice", choices=(("water", "Clean water"),)), "water", "water", "Clean water"),
    ],
)  # fmt: skip
def test_typed_again_and_shown(field, value, typed, shown):
    assert field.typed(value) == typed
    assert shown is None or field.shown(value) == shown


def test_a_number_and_a_count_keep_to_their_range():
    for text, value in (("1", 1), ("60", 60)):
        assert COUNT.read(text) == value
    for text in ("0", "61"):
        with pytest.raises(InputError, match="at least 1 and at most 60"):
            COUNT.read(text)
    assert Field("x", "X", "number").read("-3") == -3
    with pytest.raises(InputError, match="at least 0"):
        Field("n", "N", "count").read("-1")
    # a default is the kit's own text, whatever decimal sign the bench has
    assert Field("x", "X", "number", default="1.234").read("1.234", decimal_sign=",") == 1.234
    with pytest.raises(InputError, match="Does the point mean"):
        Field("x", "X", "number").read("1.234", decimal_sign=",")


def test_an_amount_without_its_currency_takes_the_bench_s_own():
    cost = Field("cost", "Cost", "money")
    assert cost.read("4.50", "EUR") == "4.50 EUR"
    assert cost.read("4.50 USD", "EUR") == "4.50 USD"
    with pytest.raises(InputError, match="Cost"):
        cost.read("4.50")


KINDS = Field(
    "kind", "Kind", "choice", by_words=True,
    choices=(("lever-sac", "lever sac filler"), ("tube-long", "air filler with a long tube"), ("tube-short", "air filler, short tube")),
)  # fmt: skip


@pytest.mark.parametrize(
    ("text", "key"),
    [("lever", "lever-sac"), ("Lever filler", "lever-sac"), ("the lever pen", "lever-sac"), ("long air", "tube-long")],
)
def test_a_choice_may_be_named_by_its_words_where_only_one_has_them(text, key):
    assert KINDS.read(text) == key


@pytest.mark.parametrize("text", ["tube", "air filler", "filler", "lever tube", "levers", "pen"])
def test_words_that_several_have_or_none_are_refused(text):
    with pytest.raises(InputError, match="one of: lever-sac"):
        KINDS.read(text)
    with pytest.raises(InputError):
        replace(KINDS, by_words=False).read("lever")
