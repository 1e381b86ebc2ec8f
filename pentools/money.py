"""The one reader of money: decimal amounts with a code or a sign, and British money before 1971; exact inside."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal, localcontext

from pentools.errors import InputError
from pentools.shillings import FARTHINGS_A_POUND, in_shillings, read_shillings

__all__ = ["CURRENCIES", "ROUNDINGS", "Money", "decimals_of", "in_money", "read_money", "rounded"]

CURRENCIES = frozenset((
    "AED", "AFN", "ALL", "AMD", "AOA", "ARS", "AUD", "AWG", "AZN", "BAM", "BBD", "BDT", "BGN", "BHD", "BIF", "BMD", "BND", "BOB", "BRL", "BSD",
    "BTN", "BWP", "BYN", "BZD", "CAD", "CDF", "CHF", "CLP", "CNY", "COP", "CRC", "CUP", "CVE", "CZK", "DJF", "DKK", "DOP", "DZD", "EGP", "ERN",
    "ETB", "EUR", "FJD", "FKP", "GBP", "GEL", "GHS", "GIP", "GMD", "GNF", "GTQ", "GYD", "HKD", "HNL", "HTG", "HUF", "IDR", "ILS", "INR", "IQD",
    "IRR", "ISK", "JMD", "JOD", "JPY", "KES", "KGS", "KHR", "KMF", "KPW", "KRW", "KWD", "KYD", "KZT", "LAK", "LBP", "LKR", "LRD", "LSL", "LYD",
    "MAD", "MDL", "MGA", "MKD", "MMK", "MNT", "MOP", "MRU", "MUR", "MVR", "MWK", "MXN", "MYR", "MZN", "NAD", "NGN", "NIO", "NOK", "NPR", "NZD",
    "OMR", "PAB", "PEN", "PGK", "PHP", "PKR", "PLN", "PYG", "QAR", "RON", "RSD", "RUB", "RWF", "SAR", "SBD", "SCR", "SDG", "SEK", "SGD", "SHP",
    "SLE", "SOS", "SRD", "SSP", "STN", "SVC", "SYP", "SZL", "THB", "TJS", "TMT", "TND", "TOP", "TRY", "TTD", "TWD", "TZS", "UAH", "UGX", "USD",
    "UYU", "UZS", "VES", "VND", "VUV", "WST", "XAF", "XCD", "XOF", "XPF", "YER", "ZAR", "ZMW", "ATS", "BEF", "CYP", "DEM", "EEK", "ESP", "FIM",
    "FRF", "GRD", "HRK", "IEP", "ITL", "LTL", "LUF", "LVL", "MTL", "NLG", "PTE", "SIT", "SKK", "CLF", "UYW", "XCG", "ZWG",
))  # fmt: skip
"""Codes of ISO 4217: money in use, then that which the euro replaced, units of account, and the newest."""
_DECIMALS = {
    **dict.fromkeys(("BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF"), 0),
    **dict.fromkeys(("ESP", "ITL", "LUF"), 0),  # replaced by the euro: the standard's list of old money gives no decimals, CLDR does
    **dict.fromkeys(("BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"), 3),
    **dict.fromkeys(("CLF", "UYW"), 4),
}  # fmt: skip
ROUNDINGS = {"half up": ROUND_HALF_UP, "half even": ROUND_HALF_EVEN}
"""What becomes of an amount that lies just between two: away from zero, or to the even one."""

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
_LONGEST = 12
_ACCEPTED = "an amount of money, such as 5.00 USD, €4.50, $2.75, £1 1s or 12/6"
_NUMBER = r"\d[\d., ']*\d|[.,]\d+|\d"
_DECIMAL = re.compile(
    rf"(?P<before>[^\d.,'+-]*?)\s*(?P<number>{_NUMBER})(?P<part>\s*½|\s+1/2)?(?P<none>[.,]-+)?\s*(?P<after>[^\d]*)"
)
_GROUPED = re.compile(r"\d{1,3}(?:(?P<group>[., '])\d{3})(?:(?P=group)\d{3})*(?:(?P<point>[.,])(?P<part>\d{1,4}))?")


def decimals_of(currency: str) -> int:
    """How many decimals amounts of a currency have: its minor unit by ISO 4217.

    Parameters
    ----------
    currency : str
        A code of `CURRENCIES`; of any other, 2.

    Notes
    -----
    CLDR, which shows money as people write it, gives 15 currencies fewer (such as none to the Hungarian forint): what can be
    owed and paid into an account counts here, and that is the standard's. Only where the standard is silent, for money
    the euro replaced, is it CLDR's.

    Examples
    --------
    >>> decimals_of("EUR"), decimals_of("JPY"), decimals_of("KWD")
    (2, 0, 3)
    """
    return _DECIMALS.get(currency, 2)


def rounded(amount: Decimal, currency: str, rule: str = "half up") -> Decimal:
    """An amount in whole minor units of its currency.

    Parameters
    ----------
    amount : Decimal
        In whole units of the currency; finite, of either sign, below 10³⁰.
    currency : str
        Code of ISO 4217; its decimals are those of `decimals_of`.
    rule : {"half up", "half even"}
        Where it lies just between two: away from zero, as is usual on invoices, or to the even one, which favours nobody
        over many amounts.

    Returns
    -------
    Decimal
        With just as many decimals as the currency has. Nothing is rounded further for cash: coins that are not struck any
        more are a matter of paying, not of owing.

    Raises
    ------
    KeyError
        For another rule.

    Examples
    --------
    >>> rounded(Decimal("0.125"), "EUR"), rounded(Decimal("0.125"), "EUR", "half even"), rounded(Decimal("0.5"), "JPY")
    (Decimal('0.13'), Decimal('0.12'), Decimal('1'))
    """
    with localcontext() as exact:
        exact.prec = 60
        return amount.quantize(Decimal(1).scaleb(-decimals_of(currency)), rounding=ROUNDINGS[rule])


def in_money(amount: Decimal, currency: str) -> str:
    """An amount with its currency's own decimals and code, such as ``4.50 EUR``; what is finer than them stands in full."""
    shown = rounded(amount, currency)
    return f"{shown if shown == amount else amount:f} {currency}"


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
        """The amount with its currency's own decimals and code, such as ``4.50 EUR``."""
        return in_money(self.amount, self.currency)


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
    Money of three decimals is written ``1.250 KWD``; there only a comma is asked about.

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
    own = decimals_of(currency)
    most = max(own, 2)  # where the money has no smaller one, printed prices of other times had
    if re.fullmatch(r"[1-9]\d{0,2}[.,]\d{3}", typed) and own and not (own == 3 and "." in typed):
        whole, part = re.split(r"[.,]", typed)
        sign = "comma" if "," in typed else "point"
        decimals = f"{whole}.{part}" if own == 3 else f"{whole}.{part}".rstrip("0").rstrip(".")
        raise InputError(
            name, _ACCEPTED, shown, f"Does the {sign} mean {decimals} or {whole}{part}? Type it without the thousands."
        )
    grouped = None if own == 3 and re.fullmatch(r"\d{1,3}\.\d{3}", typed) else _GROUPED.fullmatch(typed)
    if (
        grouped
        and grouped["group"] != grouped["point"]
        and not typed.startswith("0")
        and len(grouped["part"] or "") <= most
    ):
        whole = typed.removesuffix(f"{grouped['point']}{grouped['part']}") if grouped["point"] else typed
        return Decimal(re.sub(r"\D", "", whole) + (f".{grouped['part']}" if grouped["part"] else ""))
    if re.fullmatch(rf"\d*(?:[.,]\d{{1,{most}}})?", typed):
        return Decimal(typed.replace(",", "."))
    if re.fullmatch(r"\d*[.,]\d+", typed):
        raise InputError(name, _ACCEPTED, shown, f"At most {('two', 'three', 'four')[most - 2]} decimals.")
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
