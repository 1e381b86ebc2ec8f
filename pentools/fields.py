"""A field: one thing a person is asked for, with its unit, range and wording.

The same declaration stands behind a box in a panel, an option of the command line and a value in the record,
so a label, a unit and a range are written once.
"""

from __future__ import annotations

import datetime as dt
import functools
import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from pentools.days import read_day
from pentools.digits import reading_in_words
from pentools.errors import InputError
from pentools.money import read_money
from pentools.numbers import plain
from pentools.units import (
    Reading,
    format_reading,
    may_be_negative,
    read_number,
    read_quantity,
    with_last_unit,
)

__all__ = ["Audience", "Field", "FieldKind", "Value", "ask"]

FieldKind = Literal[
    "quantity",
    "quantities",
    "number",
    "count",
    "text",
    "long text",
    "choice",
    "ticks",
    "yes-no",
    "date",
    "photo",
    "items",
    "money",
]
Audience = Literal["bench", "owner", "everybody"]
Value = Reading | tuple[Reading, ...] | float | int | str | bool | tuple[str, ...] | None


MOST = 1e15
"""No figure of a bench is larger; whole numbers are exact up to here."""
LONGEST_TYPED = 120
"""No measurement takes more letters."""
_CONTROL = re.compile(r"[\x00-\x08\x0e-\x1f\x7f-\x9f]")  # what no keyboard types; the white space between them may stay
_PHOTO = re.compile(r"[\w][\w .,;’'&+=@#!()\[\]-]*\.(jpe?g?|png|webp|tiff?|gif|hei[cf]|hif)", re.IGNORECASE)
_HALF = re.compile(r"[\ud800-\udfff]")


@dataclass(frozen=True, slots=True)
class Field:
    """One thing asked for.

    Parameters
    ----------
    name : str
        Key in the record and, with hyphens, the option of the command line; with the unit at its end where
        the value is a plain number.
    label : str
        What stands above the box and is its accessible name.
    kind : FieldKind
        quantity (number with unit) / quantities (several, separated by ``;``) / number / count / text /
        long text / choice / ticks (several choices, separated by ``;``) / yes-no / date / photo (file name in the job's photos folder) / items
        (several texts, separated by ``;``) / money (kept as a text with its currency, such as ``4.50 EUR``).
    unit : str
        The unit a quantity is kept in.
    hint : str
        One short line under the box, with an example in the right unit.
    low, high : float or None
        Plausible range [`unit`]; for number and count a hard range.
    choices : tuple of (key, label)
        For a choice and for ticks: what may be chosen.
    required : bool
        Whether an entry without it is refused.
    audience : {"bench", "owner", "everybody"}
        Who may read an entry's value: the bench alone, its owner too, or everybody; the owner unless said.
        It has no meaning for a sum's own fields.
    default : str
        Text that a fresh box or a missing option starts from.
    negative : bool or None
        Whether a quantity may be below nought; by its range unless said.
    by_words : bool
        Whether a choice may be named by some of its words, where only one choice has them all.
    """

    name: str
    label: str
    kind: FieldKind = "text"
    unit: str = ""
    hint: str = ""
    low: float | None = None
    high: float | None = None
    choices: tuple[tuple[str, str], ...] = ()
    required: bool = False
    audience: Audience = "owner"
    default: str = ""
    negative: bool | None = None
    by_words: bool = False

    @property
    def option(self) -> str:
        """The field's name on the command line."""
        return "--" + self.name.replace("_", "-")

    def read(self, text: str, own_money: str = "", decimal_sign: str = ".", date_order: str = "") -> Value:  # noqa: C901, PLR0911 - one line a kind of field
        """Read what was typed.

        Parameters
        ----------
        text : str
            The text in the box.
        own_money : str
            Code of the currency that an amount without one is in; empty where none may be left out.
        decimal_sign : {".", ","}
            The bench's own: where it is the comma, ``1.234 mm`` is asked about like ``1,234 mm``.
        date_order : {"", "day first", "month first"}
            The bench's own way with ``3/4/2026``, as for `read_day`.

        Returns
        -------
        Value
            A value of the field's kind; None for an empty box (not measured).

        Raises
        ------
        InputError
            If the text cannot be used, or is empty though the field is required.
        """
        clean = _CONTROL.sub("", text).strip()
        if _HALF.search(clean):
            raise InputError(self.label, "made of whole characters", _HALF.sub("\ufffd", text), "Type it again.")
        if not clean:
            if self.required:
                raise InputError(self.label, "filled in", text, f"{self.hint}".strip())
            return None
        sign = "." if text == self.default else decimal_sign
        match self.kind:
            case "quantity":
                return self._quantity(clean, sign)
            case "quantities":
                return tuple(self._quantity(part, sign) for part in with_last_unit(clean.split(";")))
            case "items":
                return tuple(part.strip() for part in clean.split(";") if part.strip())
            case "number" | "count":
                return self._number(clean, sign)
            case "choice":
                return self._choice(clean)
            case "ticks":
                return tuple(dict.fromkeys(self._choice(part.strip()) for part in clean.split(";") if part.strip()))
            case "yes-no":
                return self._yes_no(clean)
            case "date":
                return read_day(clean, self.label, order=date_order)
            case "photo":
                return self._photo(clean)
            case "money":
                money = read_money(clean, own_money, name=self.label, old=False)
                return f"{clean} {money.currency}" if money.assumed else clean
            case _:
                return clean

    def _quantity(self, text: str, sign: str) -> Reading:
        return read_quantity(
            text, self.unit, name=self.label, low=self.low, high=self.high, negative=self.negative, decimal_sign=sign
        )

    def _number(self, text: str, sign: str) -> float | int:
        value = read_number(text, self.label, sign)
        if self.kind == "count" and value != int(value):
            raise InputError(self.label, "a whole number", text)
        if accepted := self._out_of_range(value):
            raise InputError(self.label, accepted, text)
        return int(value) if self.kind == "count" else value

    def _out_of_range(self, value: float) -> str:
        """The range of a number or count that a value lies outside of, in words; empty where it lies in it."""
        low = self.low if self.low is not None else (0 if self.kind == "count" else None)
        if (low is None or value >= low) and (self.high is None or value <= self.high):
            return ""
        parts = [] if low is None else [f"at least {plain(low, 6)}"]
        parts += [] if self.high is None else [f"at most {plain(self.high, 6)}"]
        return " and ".join(parts)

    def _choice(self, text: str) -> str:
        """The choice meant: its key or its label, whatever its capitals, spaces, hyphens and underscores."""
        bare = _bare(text)
        for wanted, same in ((text, str), (text.casefold(), str.casefold), (bare, _bare)):
            keys = {key for key, label in self.choices if wanted and wanted in (same(key), same(label))}
            if len(keys) == 1:
                return keys.pop()
        if self.by_words and (key := self._named_by(text)):
            return key
        offered = ", ".join(key if _bare(label) == _bare(key) else f"{key} ({label})" for key, label in self.choices)
        raise InputError(self.label, f"one of: {offered}", text)

    def _named_by(self, text: str) -> str:
        """The one choice that has all the words of a text, beside those that say no more than that it is a pen; else empty."""
        words = _words(text) - _SAYS_NOTHING
        found = [key for key, label in self.choices if words and words <= _words(f"{key} {label}")]
        return found[0] if len(found) == 1 else ""

    def _yes_no(self, text: str) -> bool:
        word = text.casefold()
        if word in ("yes", "y", "true"):
            return True
        if word in ("no", "n", "false"):
            return False
        raise InputError(self.label, "yes or no", text)

    def _photo(self, text: str) -> str:
        if not _PHOTO.fullmatch(text) or ".." in text:
            raise InputError(
                self.label,
                "the file name of a picture in the job's photos folder",
                text,
                "Put the picture into photos/ and type its name, like barrel-before.jpg.",
            )
        return text

    def to_json(self, value: Value) -> Any:
        """A value of this field as the record keeps it."""
        if isinstance(value, Reading):
            return value.as_json()
        if isinstance(value, tuple):
            return [v.as_json() if isinstance(v, Reading) else v for v in value]
        return value

    def from_json(self, data: object) -> Value:  # noqa: C901, PLR0911 - one line a kind of field
        """A value of this field back from the record, where another program may have written it.

        Parameters
        ----------
        data : object
            What the line of the record holds.

        Returns
        -------
        Value
            A value of the field's kind; None for a missing one.

        Raises
        ------
        InputError
            If it is not of the field's kind: another type, a choice that is not offered, a number that is not
            finite, has hundreds of digits, is out of a hard range or below zero where that makes no sense, a text with
            signs that no keyboard types.
        """
        if data is None:
            return None
        match self.kind:
            case "quantity":
                return self._kept_reading(data)
            case "quantities":
                return tuple(self._kept_reading(item) for item in self._kept_list(data))
            case "items":
                return tuple(self._kept_text(item) for item in self._kept_list(data))
            case "number" | "count":
                value = self._kept_number(data)
                if self.kind == "count" and value != int(value):
                    raise self._odd("a whole number", data)
                if accepted := self._out_of_range(value):
                    raise self._odd(accepted, data)
                return int(value) if self.kind == "count" else value
            case "yes-no":
                if not isinstance(data, bool):
                    raise self._odd("true or false", data)
                return data
            case "choice":
                return self._kept_choice(data)
            case "ticks":
                return tuple(self._kept_choice(item) for item in self._kept_list(data))
            case "date":
                return self._kept_date(data)
            case "photo":
                return self._photo(self._kept_text(data))
            case _:
                return self._kept_text(data)

    def _odd(self, accepted: str, data: object) -> InputError:
        shown = str(data)
        return InputError(self.label, accepted, shown if len(shown) <= 40 else shown[:37] + "…")

    def _kept_number(self, data: object, *, accepted: str = "a number") -> float:
        if isinstance(data, bool) or not isinstance(data, (int, float)):
            raise self._odd(accepted, data)
        if not -MOST <= data <= MOST or not math.isfinite(data):
            raise self._odd(f"{accepted} of at most fifteen digits", "hundreds of digits")
        return float(data)

    def _kept_reading(self, data: object) -> Reading:
        accepted = f"a quantity in {self.unit}"
        if not isinstance(data, Mapping):
            raise self._odd(accepted, data)
        unit, u, typed = data.get("unit"), data.get("u"), data.get("typed", "")
        if unit != self.unit or not isinstance(typed, str):
            raise self._odd(accepted, unit if unit != self.unit else typed)
        if len(self._kept_text(typed)) > LONGEST_TYPED:
            raise self._odd(f"{accepted}, typed in at most {LONGEST_TYPED} letters", typed)
        value = self._kept_number(data.get("value"), accepted=accepted)
        if value < 0 and not may_be_negative(self.unit, self.negative):
            raise self._odd(f"{accepted}, zero or more", f"{plain(value, 6)} {self.unit}")
        spread = None if u is None else self._kept_number(u, accepted=f"{accepted} with an uncertainty")
        if spread is not None and spread < 0:
            raise self._odd(f"{accepted} with an uncertainty of zero or more", spread)
        return Reading(value, self.unit, spread, typed)

    def _kept_list(self, data: object) -> Sequence[object]:
        if not isinstance(data, (list, tuple)):
            raise self._odd("a list", data)
        return data

    def _kept_text(self, data: object) -> str:
        if not isinstance(data, str):
            raise self._odd("a text", data)
        if control := _CONTROL.search(data):
            raise self._odd("a text without control characters", f"U+{ord(control[0]):04X} in it")
        return data

    def _kept_choice(self, data: object) -> str:
        key = self._kept_text(data)
        if key not in dict(self.choices):
            raise self._odd("one of: " + ", ".join(choice for choice, _ in self.choices), key)
        return key

    def _kept_date(self, data: object) -> str:
        text = self._kept_text(data)
        if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
            raise self._odd("a date as year-month-day", text)
        try:
            return dt.date.fromisoformat(text).isoformat()
        except ValueError:
            raise self._odd("a date as year-month-day", text) from None

    def typed(self, value: Value) -> str:
        """The text that would give this value again: what a correction starts from."""
        if value is None:
            return ""
        if isinstance(value, Reading):
            return value.typed or format_reading(value)
        if isinstance(value, tuple):
            return "; ".join(v.typed if isinstance(v, Reading) else str(v) for v in value)
        if isinstance(value, bool):
            return "yes" if value else "no"
        return plain(value, 15) if isinstance(value, float) else str(value)

    def shown(self, value: Value) -> str:
        """The value in words for a table; "not measured" or "not said" for a missing one."""
        if value is None:
            return "not measured" if self.kind in ("quantity", "quantities", "number", "count") else "not said"
        if isinstance(value, Reading):
            return reading_in_words(value)
        if self.kind == "ticks" and isinstance(value, tuple):
            return ", ".join(dict(self.choices).get(str(key), str(key)) for key in value)
        if isinstance(value, tuple):
            return "; ".join(reading_in_words(v) if isinstance(v, Reading) else str(v) for v in value)
        if self.kind == "choice":
            return dict(self.choices).get(str(value), str(value))
        return self.typed(value)


ask = functools.partial(Field, "")
"""A field without its name, for a form: there the attribute is the name."""


_SAYS_NOTHING = frozenset(("filler", "fillers", "filling", "filled", "fill", "pen", "system", "a", "an", "the", "with"))


def _words(text: str) -> frozenset[str]:
    return frozenset(re.findall(r"[a-z]+", text.casefold()))


def _bare(text: str) -> str:
    return re.sub(r"[\s_-]+", "", text.casefold())
