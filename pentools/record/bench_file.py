"""Reading ``bench.toml``: what cannot be used is said by its place and passed by, and the rest is used."""

from __future__ import annotations

import math
import re
import tomllib
from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path
from typing import Any

from pentools.calc.weighing.balance import FIGURES
from pentools.errors import InputError
from pentools.money import ROUNDINGS
from pentools.units import read_quantity

__all__ = ["BENCH_TEMPLATE", "read_facts"]

_BALANCE = "\n".join(f'{figure.name} = "{"0.01 g" if figure.name == "readability" else ""}"' for figure in FIGURES)
BENCH_TEMPLATE = f"""\
# Facts about this bench. Every line may be left out; what is missing is asked for or taken from the defaults shown.

[bench]
name = ""                       # heads the pages you send out
contact = []                    # whom the owner asks, on the letter and the record, one string each
language = "en"                  # of the pages; English is the only one so far
decimal_sign = "."              # "." or "," in what is shown
date_order = ""                 # "day first" or "month first": what 3/4/2026 means; empty: such a day is asked about
paper = "A4"                    # or "Letter"
large_type = false              # bigger letters and buttons, for reading at arm's length

[money]
currency = "EUR"
rate_per_hour = 0.0             # 0 = hours are counted but not priced
tax_name = ''                   # what your tax is called; where neither name nor rate stands, none is charged and none is named
tax_rate = ""                   # in per cent, such as "19 %"
tax_included = false            # true: your rate and prices hold the tax already
tax_on = "total"                # or "each line": on what it is worked out and rounded
tax_wording = ""                # a line for the foot of the invoice, in your own words
rounding = "half up"            # or "half even": what becomes of half a cent
invoice_number = "YYYY-###"     # YYYY becomes the year, ### the number: one sequence, which no new year begins again
first_invoice = 1               # the number that the sequence begins with
payment = []                    # how to pay, on the invoice, one string each

[balance]                       # from the balance's own sheet, with units; what is left empty is taken as usual for its readability
{_BALANCE}
port = ""                       # of a balance on a cable: its serial line; then its print key makes the weighing
speed = 9600                    # of that line, bits a second
pattern = ""                    # only for a balance that prints in its own way: (?P<value>…), with sign, unit, unstable

[caliper]
uncertainty = "0.02 mm"         # one standard uncertainty of a reading

[room]
temperature = "20 °C"
pressure = "1013 hPa"
humidity = "50 %"

[stock]                         # sizes in the drawer; a whole drawer, with lots and counts, goes into stock.csv: pentools stock --start
rings = []                      # measured rings, "section x inside", such as "1.78 mm x 5.28 mm"
abrasives = []                  # grades with their scale, such as "P400", "film 9 um", or your own cloth with its
                                # figures, "cushioned cloth 4000 = 9 um, finish 7 um"
sacs = []                       # such as "latex 16", or by its measured outside, "latex 6.40 mm"
washers = []                    # such as "washer 8.5 x 1.5 mm", "cork 9.6 x 4.2 mm", "sheet 0.64 mm"
"""

MOST_LINES = 100  # that one statement takes, and that are passed by before the whole file is given up
_AT_LINE = re.compile(r"at line (\d+)")
_QUANTITIES = {
    **{("balance", figure.name): "g" for figure in FIGURES}, ("caliper", "uncertainty"): "mm",
    ("room", "temperature"): "degC", ("room", "pressure"): "kPa", ("room", "humidity"): "1",
}  # fmt: skip
Fact = Any  # whatever TOML can hold


def read_facts(path: Path) -> tuple[dict[str, Any], tuple[str, ...]]:
    """The facts of a bench over the usual ones.

    Parameters
    ----------
    path : Path
        ``bench.toml``; a missing one leaves the usual facts.

    Returns
    -------
    facts : dict
        Table to key to value, each of a form that can be used; unknown tables and keys are kept.
    problems : tuple of str
        What was passed by, a sentence each, by its place in the file.
    """
    facts: dict[str, Any] = tomllib.loads(BENCH_TEMPLATE)
    try:
        if not path.is_file():
            return facts, (f"{path} is no file, so nothing of it is used.",) if path.exists() else ()
        text = path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        return facts, (f"{path} is not text in UTF-8, so nothing of it is used. Save it again as UTF-8.",)
    except OSError as error:
        return facts, (f"{path} cannot be read ({error.strerror or error}), so nothing of it is used.",)
    given, problems = _tables(text, path.name)
    for table, content in given.items():
        usual = facts.get(table)
        if usual is None:
            facts[table] = content
        elif isinstance(content, dict):
            facts[table] = {**usual, **_usable(table, content, usual, path.name, problems)}
        else:
            problems.append(f"{path.name}: [{table}] must be a table of its own. It is passed by.")
    return facts, tuple(problems)


def _tables(text: str, name: str) -> tuple[dict[str, Any], list[str]]:
    """What TOML makes of a text, without the lines that it makes nothing of."""
    lines = text.split("\n")
    problems: list[str] = []
    for attempt in range(MOST_LINES):
        try:
            return tomllib.loads("\n".join(lines)), problems
        except (ValueError, RecursionError) as error:  # numbers of thousands of digits, lists thousands deep
            place = _AT_LINE.search(str(error))
            if attempt == 0:
                problems += [_leave_out(lines, bad, name) for bad in _unreadable(lines)]
            elif place is not None and int(place[1]) <= len(lines) and lines[int(place[1]) - 1].strip():
                problems.append(_leave_out(lines, int(place[1]) - 1, name))  # such as a key that stands twice
            else:
                break
    return {}, [f"{name} cannot be read, so nothing of it is used. Mend it, or move it away to start afresh."]


def _unreadable(lines: list[str]) -> list[int]:
    """Where a statement begins that cannot be read by itself, over as many lines as it may take."""
    found, number = [], 0
    while number < len(lines):
        last = next(
            (end for end in range(number, min(number + MOST_LINES, len(lines))) if _reads(lines[number : end + 1])),
            None,
        )
        if last is None:
            found.append(number)
        number = number + 1 if last is None else last + 1
    return found


def _reads(lines: list[str]) -> bool:
    try:
        tomllib.loads("\n".join(lines))
    except (ValueError, RecursionError):
        return False
    return True


def _leave_out(lines: list[str], bad: int, name: str) -> str:
    """Blank a line; with the head of a table all that stands under it, since nobody knows where that belongs."""
    head = lines[bad].lstrip().startswith("[")
    lines[bad] = ""
    if not head:
        return f"{name}, line {bad + 1} cannot be read and is passed by. The rest is used."
    for number in range(bad + 1, len(lines)):
        if lines[number].startswith("["):
            break
        lines[number] = ""
    return (
        f"{name}, line {bad + 1} cannot be read and is passed by, and so is all up to the next table. The rest is used."
    )


def _usable(
    table: str, given: Mapping[str, Any], usual: Mapping[str, Any], name: str, problems: list[str]
) -> dict[str, Any]:
    """The facts of a table that are of a form that can be used."""
    found = {}
    for key, value in given.items():
        try:
            found[key] = _checked(table, key, value, usual.get(key))
        except InputError as error:
            problems.append(f"{name}: {error} It is passed by.")
        except ValueError:  # a whole number of thousands of digits has no text
            problems.append(f"{name}: [{table}] {key} cannot be read. It is passed by.")
    return found


def _checked(table: str, key: str, value: Fact, usual: Fact) -> Fact:
    where = f"[{table}] {key}"
    if (table, key) in _QUANTITIES:
        return _quantity(where, value, _QUANTITIES[table, key])
    if (table, key) in _CHOICES:
        return _one_of(where, value, _CHOICES[table, key])
    if (table, key) in _MONEY:
        return _MONEY[table, key](where, value)
    if isinstance(usual, bool):
        return _yes_no(where, value)
    if isinstance(usual, list):
        return _texts(where, value)
    return _text(where, value) if isinstance(usual, str) else value


_CHOICES = {("money", "tax_on"): ("total", "each line"), ("money", "rounding"): tuple(ROUNDINGS), ("bench", "decimal_sign"): (".", ","), ("bench", "paper"): ("A4", "Letter"), ("bench", "date_order"): ("", "day first", "month first")}  # fmt: skip


def _quantity(where: str, value: Fact, unit: str) -> str:
    if not isinstance(value, str):
        raise InputError(where, "a text with its unit, in quotes", value)
    if value:
        read_quantity(value, unit, name=where)
    return value


def _one_of(where: str, value: Fact, choices: tuple[str, ...]) -> str:
    for choice in choices:
        if isinstance(value, str) and value.strip().casefold() == choice.casefold():
            return choice
    raise InputError(where, " or ".join(f"“{choice}”" for choice in choices), value)


def _rate(where: str, value: Fact) -> float:
    number = isinstance(value, (int, float)) and not isinstance(value, bool)
    if not number or not 0 <= value < 1e9 or not math.isfinite(value):
        raise InputError(where, "a number, zero or more", value)
    return float(value)


def _per_cent(where: str, value: Fact) -> str:
    """A share in per cent as a text without its sign; empty where none is given."""
    text = "" if isinstance(value, bool) else str(value).strip()
    number = text.removesuffix("%").strip().replace(",", ".")
    if not number:
        return ""
    if not re.fullmatch(r"\d{1,2}(\.\d{1,4})?|100", number):
        raise InputError(where, "a share in per cent from 0 to 100, such as “19 %”", value)
    if 0 < Decimal(number) < 1 and not text.endswith("%"):
        raise InputError(
            where, "in per cent", value, f"Write “{Decimal(number) * 100:f} %”, or “{number} %” if so little is meant."
        )
    return number


def _number_pattern(where: str, value: Fact) -> str:
    text = value.strip() if isinstance(value, str) else ""
    if len(re.findall("#+", text)) != 1 or len(text) > 40 or re.search(r"[\x00-\x1f;|]", text):
        raise InputError(where, "a text with one run of #, such as “YYYY-###”", value)
    return text


def _first(where: str, value: Fact) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not 1 <= value <= 1_000_000:
        raise InputError(where, "a whole number from 1 on", value)
    return value


_MONEY = {
    ("money", "rate_per_hour"): _rate,
    ("money", "tax_rate"): _per_cent,
    ("money", "invoice_number"): _number_pattern,
    ("money", "first_invoice"): _first,
}  # fmt: skip


def _yes_no(where: str, value: Fact) -> bool:
    if not isinstance(value, bool):
        raise InputError(where, "true or false, without quotes", value)
    return value


def _text(where: str, value: Fact) -> str:
    if isinstance(value, (list, dict, bool)):
        raise InputError(where, "a text in quotes", value)
    return str(value)


def _texts(where: str, value: Fact) -> list[str]:
    if isinstance(value, str):
        return [value] if value.strip() else []
    if not isinstance(value, list) or any(isinstance(item, (list, dict, bool)) for item in value):
        raise InputError(where, 'texts in square brackets, such as ["one", "two"]', value)
    return [str(item) for item in value]
