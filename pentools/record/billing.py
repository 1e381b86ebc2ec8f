"""What a bench has set for its invoices: rate, tax, rounding, how they are numbered, how to pay; nothing is assumed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

from pentools.record.bench import Bench

__all__ = ["Billing", "billing_of"]


@dataclass(frozen=True, slots=True)
class Billing:
    """What a bench has set.

    Parameters
    ----------
    currency : str
        Its own currency, a code of ISO 4217.
    rate : Decimal
        For an hour's work, in `currency`; 0 where hours are not priced.
    tax_name : str
        What the tax is called; empty where none was named.
    tax_share : Decimal
        The tax's share, 0 to 1; 0 where there is none.
    tax_included : bool
        Whether rates and prices hold it already.
    each_line : bool
        Whether it is worked out and rounded line by line; otherwise on the total.
    tax_wording : str
        What the bench says of its tax, for the foot of the invoice.
    rounding : str
        A key of `pentools.money.ROUNDINGS`.
    pattern : str
        How a number is written: ``YYYY`` the year, a run of ``#`` the number.
    first : int
        Where the sequence begins.
    payment : tuple of str
        How to pay.
    """

    currency: str
    rate: Decimal
    tax_name: str = ""
    tax_share: Decimal = Decimal(0)
    tax_included: bool = False
    each_line: bool = False
    tax_wording: str = ""
    rounding: str = "half up"
    pattern: str = "YYYY-###"
    first: int = 1
    payment: tuple[str, ...] = ()

    @property
    def on_top(self) -> Decimal:
        """What the tax adds to rates and prices, as a share of them; 0 where they hold it already."""
        return Decimal(0) if self.tax_included else self.tax_share

    def number(self, place: int, year: int) -> str:
        """How the number at a place of the sequence is written."""
        text = self.pattern.replace("YYYY", str(year))
        return re.sub("#+", lambda run: str(place).zfill(len(run[0])), text)


def billing_of(bench: Bench) -> Billing:
    """What a bench has set for its invoices."""
    rate = bench.text("money", "tax_rate")
    facts = bench.facts.get("money", {})
    return Billing(
        currency=bench.currency,
        rate=Decimal(str(bench.rate_per_hour)),
        tax_name=bench.text("money", "tax_name").strip(),
        tax_share=Decimal(rate) / 100 if rate else Decimal(0),
        tax_included=facts.get("tax_included") is True,
        each_line=bench.text("money", "tax_on") == "each line",
        tax_wording=bench.text("money", "tax_wording").strip(),
        rounding=bench.text("money", "rounding") or "half up",
        pattern=bench.text("money", "invoice_number") or "YYYY-###",
        first=int(facts.get("first_invoice", 1)),
        payment=bench.strings("money", "payment"),
    )
