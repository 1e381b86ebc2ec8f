"""Dates in words: a list of wordings with what they mean, every combination of limit, circa, part and date, and refusals."""

import datetime as dt
import itertools

import pytest

from pentools.calc.dating.interval import read_edtf
from pentools.calc.dating.phrases import THIRDS, read_date
from pentools.errors import InputError

# wording -> first and last day allowed, "" for an open end; reckoned by hand from the rules that `read_date` states
WORDINGS = {
    "1936": ("1936-01-01", "1936-12-31"), "in 1936": ("1936-01-01", "1936-12-31"), "1936.": ("1936-01-01", "1936-12-31"),
    "(1936)": ("1936-01-01", "1936-12-31"), "made 1936": ("1936-01-01", "1936-12-31"), "probably 1936": ("1936-01-01", "1936-12-31"),
    "May 1936": ("1936-05-01", "1936-05-31"), "Sept. 1936": ("1936-09-01", "1936-09-30"), "12 May 1936": ("1936-05-12", "1936-05-12"),
    "May 12, 1936": ("1936-05-12", "1936-05-12"), "12th of May 1936": ("1936-05-12", "1936-05-12"), "Q1 1941": ("1941-01-01", "1941-03-31"),
    "1941 Q4": ("1941-10-01", "1941-12-31"), "1930s": ("1930-01-01", "1939-12-31"), "in the 1930s": ("1930-01-01", "1939-12-31"),
    "the 1930's": ("1930-01-01", "1939-12-31"), "193x": ("1930-01-01", "1939-12-31"), "20th century": ("1901-01-01", "2000-12-31"),
    "19th c.": ("1801-01-01", "1900-12-31"), "unknown": ("", ""), "any date": ("", ""),
    # circa
    "c. 1936": ("1934-01-01", "1938-12-31"), "c1936": ("1934-01-01", "1938-12-31"), "ca. 1936": ("1934-01-01", "1938-12-31"),
    "circa 1936 ± 4": ("1932-01-01", "1940-12-31"), "about 1936 +/- 1 year": ("1935-01-01", "1937-12-31"), "1936 ± 3": ("1933-01-01", "1939-12-31"),
    "1936 (circa)": ("1934-01-01", "1938-12-31"), "roughly 1936": ("1934-01-01", "1938-12-31"), "c. 1936 to 1942": ("1934-01-01", "1944-12-31"),
    "c. 1936-1942 ± 1": ("1935-01-01", "1943-12-31"), "1936-1942 ± 3": ("1933-01-01", "1945-12-31"), "approx. May 1936 ± 1": ("1935-05-01", "1937-05-31"),
    "perhaps c. 1936": ("1934-01-01", "1938-12-31"), "between c. 1936 and 1942": ("1934-01-01", "1942-12-31"),
    # one limit
    "before 1942": ("", "1941-12-31"), "pre-1942": ("", "1941-12-31"), "prior to 1942": ("", "1941-12-31"), "< 1942": ("", "1941-12-31"),
    "earlier than 1942": ("", "1941-12-31"), "sometime before 1942": ("", "1941-12-31"), "until 1942": ("", "1942-12-31"), "till 1942": ("", "1942-12-31"),
    "by 1942": ("", "1942-12-31"), "up to 1942": ("", "1942-12-31"), "up to and including 1942": ("", "1942-12-31"), "not after 1942": ("", "1942-12-31"),
    "not later than 1942": ("", "1942-12-31"), "no later than 1942": ("", "1942-12-31"), "at the latest 1942": ("", "1942-12-31"),
    "1942 at the latest": ("", "1942-12-31"), "1942 or earlier": ("", "1942-12-31"), "1942 and before": ("", "1942-12-31"), "≤ 1942": ("", "1942-12-31"),
    "<=1942": ("", "1942-12-31"), "as late as 1942": ("", "1942-12-31"), "in or before 1942": ("", "1942-12-31"), "through 1942": ("", "1942-12-31"),
    "after 1936": ("1937-01-01", ""), "post-1936": ("1937-01-01", ""), "later than 1936": ("1937-01-01", ""), ">1936": ("1937-01-01", ""),
    "from 1936": ("1936-01-01", ""), "from 1936 on": ("1936-01-01", ""), "from 1936 onwards": ("1936-01-01", ""), "since 1936": ("1936-01-01", ""),
    "not before 1936": ("1936-01-01", ""), "not earlier than 1936": ("1936-01-01", ""), "not until 1936": ("1936-01-01", ""), "1936 or later": ("1936-01-01", ""),
    "1936 onward": ("1936-01-01", ""), "1936+": ("1936-01-01", ""), "1936 at the earliest": ("1936-01-01", ""), "≥1936": ("1936-01-01", ""),
    ">= 1936": ("1936-01-01", ""), "as early as 1936": ("1936-01-01", ""), "on or after 12 May 1936": ("1936-05-12", ""), "before 12 May 1936": ("", "1936-05-11"),
    "after May 1936": ("1936-06-01", ""), "before March 1936": ("", "1936-02-29"), "before the 1930s": ("", "1929-12-31"), "after 193X": ("1940-01-01", ""),
    "until 1941-34": ("", "1941-06-30"), "before 1941-34": ("", "1941-03-31"), "after the 19th century": ("1901-01-01", ""), "1930s or later": ("1930-01-01", ""),
    # circa inside a limit
    "after c. 1936": ("1935-01-01", ""), "before c. 1942": ("", "1943-12-31"), "not before c. 1936 ± 3": ("1933-01-01", ""), "until about 1942": ("", "1944-12-31"),
    "since circa May 1936": ("1934-05-01", ""), "1942~ or earlier": ("", "1944-12-31"),
    # introduced and dropped
    "introduced 1936": ("1936-01-01", ""), "introduced in May 1936": ("1936-05-01", ""), "introduced after 1936": ("1937-01-01", ""),
    "introduced c. 1936": ("1934-01-01", ""), "1936 introduced": ("1936-01-01", ""), "first seen 1936": ("1936-01-01", ""), "first 1936": ("1936-01-01", ""),
    "launched in 1936": ("1936-01-01", ""), "new in 1936": ("1936-01-01", ""), "dropped 1942": ("", "1942-12-31"), "dropped by 1942": ("", "1942-12-31"),
    "dropped before 1942": ("", "1941-12-31"), "1942 dropped": ("", "1942-12-31"), "discontinued c. 1942": ("", "1944-12-31"), "last seen in 1942": ("", "1942-12-31"),
    "last 1942": ("", "1942-12-31"), "withdrawn May 1942": ("", "1942-05-31"), "no longer made after 1942": ("", "1942-12-31"), "never seen before 1936": ("1936-01-01", ""),
    "introduced 1936, dropped 1942": ("1936-01-01", "1942-12-31"), "introduced 1936 and dropped before 1942": ("1936-01-01", "1941-12-31"),
    # parts of a year, decade or century
    "early 1930s": ("1930-01-01", "1933-12-31"), "mid 1930s": ("1933-01-01", "1936-12-31"), "mid-1930s": ("1933-01-01", "1936-12-31"),
    "late 1930s": ("1936-01-01", "1939-12-31"), "late 193X": ("1936-01-01", "1939-12-31"), "early 1936": ("1936-01-01", "1936-04-30"),
    "mid-1936": ("1936-05-01", "1936-08-31"), "late 1936": ("1936-09-01", "1936-12-31"), "early 20th century": ("1901-01-01", "1934-12-31"),
    "late 19th century": ("1867-01-01", "1900-12-31"), "end of 1936": ("1936-09-01", "1936-12-31"), "middle of 1936": ("1936-05-01", "1936-08-31"), "start of 1936": ("1936-01-01", "1936-04-30"),
    "1st half of 1936": ("1936-01-01", "1936-06-30"), "latter half of the 1930s": ("1935-01-01", "1939-12-31"), "2nd half of 1936": ("1936-07-01", "1936-12-31"), "beginning of the 1930s": ("1930-01-01", "1933-12-31"),
    "early to mid 1930s": ("1930-01-01", "1936-12-31"), "mid- to late-1930s": ("1933-01-01", "1939-12-31"), "first half of the 1930s": ("1930-01-01", "1934-12-31"),
    "second half of 1936": ("1936-07-01", "1936-12-31"), "c. late 1930s": ("1934-01-01", "1941-12-31"), "late 1930s?": ("1936-01-01", "1939-12-31"),
    "not before late 1936": ("1936-09-01", ""), "until early 1936": ("", "1936-04-30"), "before mid-1936": ("", "1936-04-30"), "after early 1936": ("1936-05-01", ""),
    "before late 1930s": ("", "1936-12-31"), "after the early 1930s": ("1933-01-01", ""), "after late 1930s": ("1940-01-01", ""), "before early 1930s": ("", "1929-12-31"),
    "late 1942 at the latest": ("", "1942-12-31"), "late 1930s onwards": ("1936-01-01", ""), "introduced late 1936": ("1936-09-01", ""),
    "by the end of 1942": ("", "1942-12-31"), "after c. late 1930s": ("1938-01-01", ""),
    # ranges
    "1936-1942": ("1936-01-01", "1942-12-31"), "1936–1942": ("1936-01-01", "1942-12-31"), "1936 to 1942": ("1936-01-01", "1942-12-31"),
    "1936-42": ("1936-01-01", "1942-12-31"), "1936/42": ("1936-01-01", "1942-12-31"), "1905–10": ("1905-01-01", "1910-12-31"),
    "between 1936 and 1942": ("1936-01-01", "1942-12-31"), "from 1936 to 1942": ("1936-01-01", "1942-12-31"), "from 1936-1942": ("1936-01-01", "1942-12-31"),
    "from 1936/1942": ("1936-01-01", "1942-12-31"), "1936 until late 1942": ("1936-01-01", "1942-12-31"), "1936 through May 1942": ("1936-01-01", "1942-05-31"),
    "since 1936 until 1942": ("1936-01-01", "1942-12-31"), "after 1936 and before 1942": ("1937-01-01", "1941-12-31"),
    "after 1936 but before 1942": ("1937-01-01", "1941-12-31"), "before 1942 but after 1936": ("1937-01-01", "1941-12-31"),
    "not before 1936, not after 1942": ("1936-01-01", "1942-12-31"), ">1936 <1942": ("1937-01-01", "1941-12-31"), "1936 to before 1942": ("1936-01-01", "1941-12-31"),
    "from c. 1936 to late 1942": ("1934-01-01", "1942-12-31"), "late 1930s to early 1940s": ("1936-01-01", "1943-12-31"),
    "in production 1936 to 1942": ("1936-01-01", "1942-12-31"), "Jan 1936-Mar 1936": ("1936-01-01", "1936-03-31"), "1936 or 1937": ("1936-01-01", "1937-12-31"),
    "late 1930s or early 1940s": ("1936-01-01", "1943-12-31"),
}  # fmt: skip


def day(text):
    return dt.date.fromisoformat(text).toordinal() if text else None


@pytest.mark.parametrize("wording", WORDINGS)
def test_what_a_wording_means(wording):
    read = read_date(wording)
    assert (read.first_day, read.last_day) == tuple(day(text) for text in WORDINGS[wording]), read.read_as
    assert read.typed == wording
    # what is shown as EDTF is what was read
    assert read_edtf(read.edtf, about_years=read.about_years or 2).spans == read.spans


def test_either_of_two_keeps_its_gap():
    assert read_date("1936 or 1938").meaning == "1936 or 1938"
    assert read_date("either 1936 or late 1938").edtf == "[1936,1938-09..1938]"


# --- every combination, reckoned in another way: years, months and thirds as plain numbers
LIMITS = {
    "{}": "=", "in {}": "=", "before {}": "<", "not later than {}": "≤", "until {}": "≤", "after {}": ">", "not before {}": "≥", "since {}": "≥",
    "introduced {}": "≥", "last seen {}": "≤", "≥ {}": "≥", "≤{}": "≤", "> {}": ">", "<{}": "<", "{} or later": "≥", "{} or earlier": "≤",
    "{} at the latest": "≤", "{} onwards": "≥", "dropped {}": "≤", "{} dropped": "≤",
}  # fmt: skip
CIRCAS = {"": 0, "c. ": 2, "about ": 2, "circa ": 2}
PARTS = {"": (0, 1), "early ": (0, 1 / 3), "mid ": (1 / 3, 2 / 3), "mid-": (1 / 3, 2 / 3), "late ": (2 / 3, 1)}
DATES = {
    "1936": (1936, 1),
    "1930s": (1930, 10),
    "193X": (1930, 10),
    "the 1940s": (1940, 10),
    "18XX": (1800, 100),
    "20th century": (1901, 100),
}


def bounds(start, years, part, sign, about):
    """First and last month allowed, counted from year 0; whole years, but for a single year, whose parts are months."""
    unit = 1 if years == 1 else 12
    low, high = (12 * start + 12 * years * share for share in part)

    def down(months):
        return int((months + 1e-6) // unit * unit)

    def up(months):
        return -down(-months)

    first, end = down(low), up(high)  # the end is the month after the last
    return {
        "=": (first - 12 * about, end - 1 + 12 * about), "≥": (first - 12 * about, None), "≤": (None, end - 1 + 12 * about),
        ">": (down(high) - 12 * about, None), "<": (None, up(low) - 1 + 12 * about),
    }[sign]  # fmt: skip


def months(read):
    first, last = (None if d is None else dt.date.fromordinal(d) for d in (read.first_day, read.last_day))
    for date, edge in ((first, 0), (last, 1)):
        assert date is None or (date + dt.timedelta(edge)).day == 1, "an end of a month"
    return tuple(None if date is None else 12 * date.year + date.month - 1 for date in (first, last))


def combinations():
    for limit, circa, part, date in itertools.product(LIMITS, CIRCAS, PARTS, DATES):
        phrase = (
            f"{circa}{part}{date}".replace("early the", "the early")
            .replace("mid the", "the mid")
            .replace("late the", "the late")
        )
        if "mid-the" not in phrase:
            yield limit.format(phrase), bounds(*DATES[date], PARTS[part], LIMITS[limit], CIRCAS[circa])


def test_every_combination_of_limit_circa_part_and_date():
    cases = list(combinations())
    assert len(cases) > 2000
    wrong = [(text, wanted, read.read_as) for text, wanted in cases if months(read := read_date(text)) != wanted]
    assert wrong == []


def test_a_limit_does_not_go_with_a_range():
    for limit, sign in LIMITS.items():
        for dates in ("1936-1942", "1936/1942"):
            if sign == "=":
                assert read_date(limit.format(dates)).meaning == "1936 to 1942"
            else:
                with pytest.raises(InputError, match="limit"):
                    read_date(limit.format(dates))
    assert read_date("1936 to 1942 at the latest").meaning == read_date("since 1936 to 1942").meaning == "1936 to 1942"
    with pytest.raises(InputError, match="limit"):
        read_date("1936 to 1942 or later")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("1930-35", "1930/1935 or Q3 1930"), ("1920-25", "Does it mean 1920/1925"), ("1936/05", "1936-05 .a month."), ("1900s", "190X.*19XX"),
        ("early 1900s", "190X.*19XX"), ("1935s", "ends in 0"), ("'30s", "in full"), ("thirties", "in full"), ("36", "in full"), ("1942–36", "years in full"),
        ("1936 to 1930", "Was 1930/1936 meant"), ("late 1936 to early 1936", "end comes after its start"), ("mai 1936", "“mai” is not understood"), ("", "Type it like"), ("yesterday", "“yesterday”"),
        ("12.5.1936", "Day or month"), ("spring 1936", "give the months"), ("shortly after 1936", "“shortly” has no agreed length"),
        ("introduced before 1936", "limits neither end"), ("dropped after 1942", "limits neither end"), ("before after 1942", "limited twice"),
        ("after 1936 or later", "limited twice"), ("before introduced 1936", "limited twice"), ("1936 and 1938", "a range or one of the two"), ("1936, 1938", "a range or one"),
        ("early May 1936", "a year, a decade or a century"), ("early", "“early” wants a date"), ("c.", "wants a date"), ("before", "“before” wants a date"),
        ("or later", "wants a date before it"), ("before or 1936", "does not belong there"), ("between 1936", "two dates"), ("between 1936 to 1942", "two dates"), ("1936 1942", "not one date"), ("± 3 1936", "± belongs behind"),
        ("1936 ± 2 to 1942 ± 3", "Two widths"), ("early mid late 1930s", "At most two parts"), ("January to March 1936", "wants its year"), ("after 9999", "within the years 1 to 9999"),
        ("before 0001", "within the years"), ("c. 0001", "1 to 9999"), ("0000", "calendar"), ("year 12345", "in a form known here"), ("from the 1930s", "then and later"), ("replaced 1950", "behind a comma"),
        ("1936 gold", "“gold” is not understood"), ("31 February 1936", "must be 1 to 29"), ("30 Feb 1936", "must be 1 to 29"), ("1936 to", "not one date, one limit"), ("x" * 200, "too long"),
    ],
)  # fmt: skip
def test_what_is_not_clear_is_asked_about(words, said):
    with pytest.raises(InputError, match=said) as error:
        read_date(words)
    assert error.value.got == (words if len(words) < 100 else words[:40] + "…")
    assert error.value.name == "date"


def test_what_could_be_mistaken_is_pointed_out():
    assert "1905/1910" in read_date("1905-10").note
    assert read_date("1905-05").note == read_date("1936/1942").note == read_date("not before 1936").note == ""
    assert read_date("before 1942").note == "“before 1942” was taken as 1941 or earlier, without the year named."
    assert "without the date named" in read_date("after May 1936").note
    assert read_date("late 1930s").note == THIRDS
    assert read_date("first half of 1936").note == ""


def test_marks_and_widths():
    assert [read_date(t).uncertain for t in ("probably 1936", "before 1942?", "perhaps c. 1936", "c. 1936")] == [
        True,
        True,
        True,
        False,
    ]
    assert [read_date(t).approximate for t in ("probably 1936", "after c. 1936", "perhaps c. 1936", "1936 ± 0")] == [
        False,
        True,
        True,
        True,
    ]
    assert read_date("after c. 1936", about_years=5).first_day == day("1932-01-01")
    assert read_date("after c. 1936 ± 1", about_years=5).about_years == 1
    assert read_date("c. 1936 to 1942").edtf == "1936~/1942~"
    assert read_date("c. 1936 to 1942?").edtf == "1936~/1942?"
    assert read_date("from c. 1936 to 1942").edtf == "1936~/1942"
