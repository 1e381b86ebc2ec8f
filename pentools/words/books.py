"""What is said of what is known over many jobs: invoices, stock."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]

WORDS: Mapping[str, Template] = {
    # invoices
    "invoice-not-agreed": "Not agreed beforehand: {lines:and}. It is marked so on the invoice.",
    "invoice-price:more": "The invoice comes to {total}; the price said at the end was {said}, so it is {by} more. Say why, take something off, or correct the price.",
    "invoice-price:less": "The invoice comes to {total}; the price said at the end was {said}, so it is {by} less.",
    "invoice-no-most": "No agreed most is on record, so nothing could be held against it.",
    "invoice-limit": "The agreed most is the limit named at intake or of the estimate: no yes to a price is on record.",
    "invoice-open": "Not ended yet: {jobs:and}.",
    "invoice-money": "Received, but not counted, since it is in another currency or cannot be read: {amounts:and}.",
    # the drawer
    "stock-order": "Order {what}: {left:.0f} left, and there should be at least {least:.0f}.",
    "stock-unclear": "{what}: {pieces:.0f} more may be gone. The entries do not say from which lot: enter it there.",
    "stock-more": "{what}: {used:.0f} were used since the count, and {counted:.0f} were counted. Count again.",
    "stock-past:date": "{what}: its date was {day}.",
    "stock-past:keeps": "{what}: opened on {opened}, it keeps {months:.0f} months by your own word.",
    "stock-old": "{what}: opened on {opened}. After {months:.0f} months {kind} is tried first ({sure}): {then}.",
    "stock-no-day": "{what}: when it was opened is not said, so nobody knows whether it is too old.",
}
