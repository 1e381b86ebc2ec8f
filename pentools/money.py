"""The one reader of money: decimal amounts with a code or a sign, and British money before 1971; exact inside."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

from pentools.errors import InputError
from pentools.shillings import FARTHINGS_A_POUND, in_shillings, read_shillings

__all__ = ["CURRENCIES", "Money", "read_money"]

CURRENCIES = frozenset((
    "AED", "AFN", "ALL", "AMD", "AOA", "ARS", "AUD", "AWG", "AZN", "BAM", "BBD", "BDT", "BGN", "BHD", "BIF", "BMD", "BND", "BOB", "BRL", "BSD",
    "BTN", "BWP", "BYN", "BZD", "CAD", "CDF", "CHF", "CLP", "CNY", "COP", "CRC", "CUP", "CVE", "CZK", "DJF", "DKK", "DOP", "DZD", "EGP", "ERN",
    "ETB", "EUR", "FJD", "FKP", "GBP", "GEL", "GHS", "GIP", "GMD", "GNF", "GTQ", "GYD", "HKD", "HNL", "HTG", "HUF", "IDR", "ILS", "INR", "IQD",
    "IRR", "ISK", "JMD", "JOD", "JPY", "KES", "KGS", "KHR", "KMF", "KPW", "KRW", "KWD", "KYD", "KZT", "LAK", "LBP", "LKR", "LRD", "LSL", "LYD",
    "MAD", "MDL", "MGA", "MKD", "MMK", "MNT", "MOP", "MRU", "MUR", "MVR", "MWK", "MXN", "MYR", "MZN", "NAD", "NGN", "NIO", "NOK", "NPR", "NZD",
    "OMR", "PAB", "PEN", "PGK", "PHP", "PKR", "PLN", "PYG", "QAR", "RON", "RSD", "RUB", "RWF", "SAR", "SBD", "SCR", "SDG", "SEK", "SGD", "SHP",
    "SLE", "SOS", "SRD", "SSP", "STN", "SVC", "SYP", "SZL", "THB", "TJS", "TMT", "TND", "TOP", "TRY", "TTD", "TWD", "TZS", "UAH", "UGX", "USD",
    "UYU", "UZS", "VES", "VND", "VUV", "WST", "XAF", "XCD", "XOF", "XPF", "YER", "ZAR", "ZMW", "ATS", "BEF", "CYP", "DEM", "EEK", "ESP", "FIM",
    "FRF", "GRD", "HRK", "IEP", "ITL", "LTL", "LUF", "LVL", "MTL", "NLG", "PTE", "SIT", "SKK",
))  # fmt: skip
"""Codes of ISO 4217: money in use, then that which the euro replaced."""

# a sign or word -> the currencies it may stand for, the first where the bench's own is none of them; "" asks
_WORDS: dict[str, tuple[str, ...]] = {
    "$": ("USD", "CAD", "AUD", "NZD", "SGD", "HKD", "TWD", "MXN", "ARS", "CLP", "COP"), "us$": ("USD",), "ca$": ("CAD",), "c$": ("CAD",),
    "can$": ("CAD",), "au$": ("AUD",), "a$": ("AUD",), "nz$": ("NZD",), "hk$": ("HKD",), "s$": ("SGD",), "r$": ("BRL",),
    "€": ("EUR",), "euro": ("EUR",), "euros": ("EUR",), "£": ("GBP",), "stg": ("GBP",), "sterling": ("GBP",), "l": ("GBP",),
    "us dollar": ("USD",), "us dollars": ("USD",), "pounds sterling": ("GBP",), "¥": ("JPY", "CNY"), "yen": ("JPY",), "yuan": ("CNY",),
    "kr": ("", "DKK", "NOK", "SEK", "ISK"), "kr.": ("", "DKK", "NOK", "SEK", "ISK"), "fr": ("", "CHF", "FRF", "BEF", "LUF"),
    "fr.": ("", "CHF", "FRF", "BEF", "LUF"), "sfr": ("CHF",), "sfr.": ("CHF",), "zł": ("PLN",), "kč": ("CZK",), "ft": ("HUF",), "₹": ("INR",),
    "rs": ("INR", "PKR", "LKR", "NPR"), "₩": ("KRW",), "₽": ("RUB",), "₺": ("TRY",), "₪": ("ILS",), "₴": ("UAH",), "dm": ("DEM",), "lei": ("RON",),
}  # fmt: skip
_WORDS |= {"dollar": _WORDS["$"], "dollars": _WORDS["$"], "pound": ("GBP",), "pounds": ("GBP",)}
_WORDS |= {"kroner": _WORDS["kr"], "kronor": _WORDS["kr"], "franc": _WORDS["fr"], "francs": _WORDS["fr"]}
_CENTS = (*_WORDS["$"], "EUR", "ZAR")
_HUNDREDTHS: dict[str, tuple[str, ...]] = {
    **dict.fromkeys(("c", "¢", "ct", "cts", "cent", "cents"), _CENTS),
    **dict.fromkeys(("p", "new pence", "new penny"), ("GBP",)),
}
_WHOLE_ONLY = frozenset({"JPY", "KRW", "CLP", "ISK", "VND", "XAF", "XOF", "XPF", "PYG", "UGX", "ITL"})
_LONGEST = 12
_ACCEPTED = "an amount of money, such as 5.00 USD, €4.50, $2.75, £1 1s or 12/6"
_NUMBER = r"\d[\d., ']*\d|[.,]\d+|\d"
_DECIMAL = re.compile(
    rf"(?P<before>[^\d.,'+-]*?)\s*(?P<number>{_NUMBER})(?P<part>\s*½|\s+1/2)?(?P<none>[.,]-+)?\s*(?P<after>[^\d]*)"
)
_GROUPED = re.compile(r"\d{1,3}(?:(?P<group>[., '])\d{3})(?:(?P=group)\d{3})*(?:(?P<point>[.,])\d{1,2})?")


@dataclass(frozen=True, slots=True)
class Money:
    """An amount of money.

    Parameters
    ----------
    amount : Decimal
        The amount, in whole units of the currency, 0 or more.
    currency : str
        Code of ISO 4217, such as ``EUR``.
    typed : str
        The text as it was typed.
    assumed : bool
        Whether no currency was typed and the bench's own was taken.
    old : bool
        Whether it was written in pounds, shillings and pence.
    """

    amount: Decimal
    currency: str
    typed: str = ""
    assumed: bool = False
    old: bool = False

    @property
    def read_as(self) -> str:
        """How it was taken, such as ``12s 6d``, ``2.75 USD`` or ``30.00 EUR (the bench's own money)``."""
        if self.old:
            return in_shillings(round(self.amount * FARTHINGS_A_POUND))
        return f"{self}{' (the bench’s own money)' if self.assumed else ''}"

    def __str__(self) -> str:
        """The amount with two decimals and its code, such as ``4.50 EUR``."""
        digits = 0 if self.currency in _WHOLE_ONLY else 2
        return f"{self.amount if round(self.amount, digits) != self.amount else round(self.amount, digits)} {self.currency}"


def read_money(text: str, own: str = "", *, name: str = "amount", zero: bool = True, old: bool = True) -> Money:
    """Read one amount of money as typed.

    Parameters
    ----------
    text : str
        An amount with a code of ISO 4217 or a sign before or after it (``4.50 EUR``, ``€ 4,50``, ``1.250,00 €``,
        ``$2.75``, ``50 cents``), or British money before 1971 (`pentools.shillings.read_shillings`).
    own : str
        Code of the bench's own money, taken where none is typed; empty where a bare number is not enough.
    name : str
        What it is for, used in the error's sentence.
    zero : bool
        Whether nothing is an amount too.
    old : bool
        Whether pounds, shillings and pence are money here.

    Returns
    -------
    Money
        The amount, exact, its currency, and whether that is the bench's own for want of another.

    Raises
    ------
    InputError
        If it is not one clear amount of known money; the sentence says what is wrong with it.

    Notes
    -----
    ``$`` and ``cents`` are the bench's own where its money is a dollar, else those of the United States. A comma or point
    before three last digits could part thousands or decimals and is asked about; ``1,250.00`` and ``1 250`` are clear.

    Examples
    --------
    >>> str(read_money("€ 4,50")), read_money("30", "EUR").read_as, read_money("12/6").amount
    ('4.50 EUR', '30.00 EUR (the bench’s own money)', Decimal('0.625'))
    """
    shown = text.strip() if len(text) <= 60 else f"{text[:40].strip()}…"
    clean = _tidy(text)
    if not clean:
        raise InputError(name, _ACCEPTED, shown, "Nothing was typed.")
    if re.search(r"[^\D0-9]", clean):
        raise InputError(name, _ACCEPTED, shown, "Type it with the figures 0 to 9.")
    if len(text) > 80 or re.search(rf"\d{{{_LONGEST + 1}}}", clean):
        raise InputError(name, _ACCEPTED, shown, f"It is too long: at most {_LONGEST} digits.")
    if re.match(r"(?:[^\d\s]+\s*)?[-+]\s*\d", clean) and not re.match(r"£\s*-\s*/", clean):
        raise InputError(name, _ACCEPTED, shown, "Leave the plus or minus sign out.")
    farthings = read_shillings(re.sub(r"(?i)\s*\bgbp$|^gbp\b\s*", "", clean), name)
    if farthings is not None:
        if not old:
            raise InputError(
                name, "an amount in today's money", shown, "Shillings and pence ended in 1971. Such as 4.50 EUR."
            )
        money = Money(Decimal(farthings) / FARTHINGS_A_POUND, "GBP", text.strip(), old=True)
    else:
        money = _decimal(clean, own.upper(), name, shown)
    if not zero and money.amount == 0:
        raise InputError(name, "above zero", shown)
    return money


def _tidy(text: str) -> str:
    """One kind of space, dash, stroke and apostrophe."""
    clean = re.sub(r"[–—−‒‐]", "-", text.replace("⁄", "/").replace("∕", "/"))
    return re.sub(r"\s+", " ", re.sub(r"[’‘ʼ´`]", "'", clean)).strip()


def _decimal(clean: str, own: str, name: str, shown: str) -> Money:
    found = None if "/" in clean.replace("1/2", "") else _DECIMAL.fullmatch(clean.lower().removesuffix("."))
    if found is None:
        raise InputError(name, _ACCEPTED, shown, _what_is_wrong(clean))
    words = [word.strip() for word in (found["before"], found["after"]) if word.strip()]
    if found["none"] and words == ["-"]:
        words = []
    hundredths = [word for word in words if word in _HUNDREDTHS]
    if found["part"] and not hundredths:
        raise InputError(name, _ACCEPTED, shown, "Type the part as decimals, such as 1.50.")
    currencies = {_currency(word, own, name, shown) for word in words}
    if len(currencies) > 1:
        raise InputError(name, _ACCEPTED, shown, f"Two currencies stand there: {' and '.join(sorted(currencies))}.")
    if not words and not own:
        raise InputError(name, _ACCEPTED, shown, "The currency is missing.")
    currency = currencies.pop() if words else own
    amount = _number(found["number"], currency, name, shown) + (Decimal("0.5") if found["part"] else 0)
    return Money(amount / 100 if hundredths else amount, currency, shown, assumed=not words)


def _currency(word: str, own: str, name: str, shown: str) -> str:
    code = word.upper()
    if code in CURRENCIES:
        return code
    meant = _WORDS.get(word) or _HUNDREDTHS.get(word) or _WORDS.get(word.rstrip("."))
    if meant is None:
        typed = re.search(re.escape(word), shown, re.IGNORECASE)
        raise InputError(
            name,
            _ACCEPTED,
            shown,
            f"“{typed[0] if typed else word}” is no money known here: use a three-letter code, such as EUR.",
        )
    if own and own in meant:
        return own
    if not meant[0]:
        raise InputError(
            name, _ACCEPTED, shown, f"“{word}” could be {', '.join(meant[1:-1])} or {meant[-1]}: type the code."
        )
    return meant[0]


def _number(typed: str, currency: str, name: str, shown: str) -> Decimal:
    """A decimal number, its thousands parted in any clear way."""
    if re.fullmatch(r"[1-9]\d{0,2}[.,]\d{3}", typed) and currency not in _WHOLE_ONLY:
        whole, part = re.split(r"[.,]", typed)
        sign = "comma" if "," in typed else "point"
        decimals = f"{whole}.{part}".rstrip("0").rstrip(".")
        raise InputError(
            name, _ACCEPTED, shown, f"Does the {sign} mean {decimals} or {whole}{part}? Type it without the thousands."
        )
    grouped = _GROUPED.fullmatch(typed)
    if grouped and grouped["group"] != grouped["point"] and not typed.startswith("0"):
        plain = re.sub(r"[., '](?=\d{3}(?!\d))", "", typed)
        return Decimal(plain.replace(",", "."))
    if re.fullmatch(r"\d*(?:[.,]\d{1,2})?", typed):
        return Decimal(typed.replace(",", "."))
    if re.fullmatch(r"\d*[.,]\d+", typed):
        raise InputError(name, _ACCEPTED, shown, "At most two decimals.")
    raise InputError(
        name, _ACCEPTED, shown, "More than one number stands there, or its thousands are not parted in threes."
    )


# what a text that is no amount in any form shows, and what to say of it
_WRONG: tuple[tuple[str, str], ...] = (
    (r"\A\D*\Z", "There is no number in it: type the amount in figures."),
    (r"\d\s*(?:-|to\b|or\b)\s*[^\d\s]?\s*\d", "One amount, not a range."),
    (r"\d\s*[£$€]\s*\d", "A sign of money stands in the middle: put it first, such as £12."),
    (r"/.*(?P<code>\b[A-Z]{3}\b|[€$¥])", "Shillings and pence are British money: {code} does not go with them."),
    (r"/|\d\s*[sd]\b", "Pounds, shillings and pence stand once each, in that order and alone, such as 12/6, 21/- or £1 1s 2d."),
    (r"[-+]\s*\d", "Leave the plus or minus sign out."),
)  # fmt: skip


def _what_is_wrong(clean: str) -> str:
    """The sentence for a text that is no amount in any form."""
    for pattern, told in _WRONG:
        if found := re.search(pattern, clean):
            return told.format(**found.groupdict())
    return "It is not one amount in any form known here."
