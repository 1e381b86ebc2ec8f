"""Price against what was agreed, care, and whom to ask: the last rows of the letter's first page."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from pentools.money import in_money
from pentools.record.spending import price_past_ceiling, spending_of
from pentools.record.stages.job.agree_kinds import ESTIMATE
from pentools.record.stages.job.care import care_of_mends, suggested_care
from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.makeshifts import come_back
from pentools.record.stages.job.work_kinds import MATERIAL
from pentools.writeup.letter.row import Row, up_to
from pentools.writeup.words import date_in_words

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["care_row", "contact_row", "price_row"]

_CARE_WORDS, _WATCH_WORDS = 90, 60
_MORE = "The rest of it stands in the record."


def price_row(job: Job) -> Row | None:
    """The price against the agreed most and the estimate; what was agreed alone while there is no price."""
    price, agreed = job.newest(RESULT).price, spending_of(job)
    most = _plain(agreed.ceiling, agreed.currency) if agreed.ceiling is not None else ""
    if price is None:
        if not most:
            return None
        ended = job.newest(RESULT).ending is not None
        return Row("Price", (f"{'No price was entered. ' if ended else ''}At most {most} was agreed.",))
    against = ""
    if most:
        past = price_past_ceiling(job, price)
        against = f"; {most} at most had been agreed" if past else f", of {most} agreed at most"
    text = f"{_money_text(job, price)}{against}."
    return Row("Price", (" ".join(part for part in (text, _covered(job), _estimated(job), _parts(job)) if part),))


def _covered(job: Job) -> str:
    """That a pen which came back is covered, where that was said."""
    return "It is covered by what was promised with the earlier work." if job.newest(RETURN).covered is True else ""


def _estimated(job: Job) -> str:
    estimate = job.newest(ESTIMATE)
    low, high = estimate.price_low, estimate.price_high
    if low is None and high is None:
        return ""
    if low is None or high is None:
        return f"The estimate was {'up to ' if low is None else 'from '}{_money_text(job, low or high or '')}."
    a, b = job.money(low), job.money(high)
    if a is None or b is None or a.currency != b.currency:
        return f"The estimate was {low} to {high}."
    return f"The estimate was {_plain(a.amount, a.currency).split()[0]} to {_plain(b.amount, b.currency)}."


def _parts(job: Job) -> str:
    """What parts and materials cost, where every cost can be read and is in one currency."""
    typed = [logged.values.cost for logged in job.log(MATERIAL) if logged.values.cost is not None]
    costs = [money for text in typed if (money := job.money(text)) is not None]
    if not costs or len(costs) < len(typed) or len({money.currency for money in costs}) > 1:
        return ""
    total = sum((money.amount for money in costs), Decimal(0))
    return f"Parts and materials came to {_plain(total, costs[0].currency)}." if total else ""


def _money_text(job: Job, text: str) -> str:
    money = job.money(text)
    return text if money is None else _plain(money.amount, money.currency)


def _plain(amount: Decimal, currency: str) -> str:
    """An amount of money; a whole one without decimals."""
    return f"{amount:.0f} {currency}" if amount == amount.to_integral_value() else in_money(amount, currency)


def care_row(job: Job) -> Row | None:
    """The restorer's words on care; where there are none, what is usual for its kind; of the parts mended always."""
    result = job.newest(RESULT)
    if result.care is not None:
        text, whole = up_to(result.care, _CARE_WORDS)
        more = care_of_mends(job, result.care)
        return Row("Care", (" ".join(part for part in (text, "" if whole else _MORE, *more) if part),))
    if result.ending not in ("done", "done with limits"):
        return None
    text, _ = up_to(suggested_care(job), _CARE_WORDS)
    told = " ".join(part for part in (text, *(line for line in care_of_mends(job) if line not in text)) if part)
    return Row("Care", (f"{told} (Common practice for a pen of its kind.)",)) if told else None


def contact_row(job: Job) -> Row | None:
    """What to watch for, how long the work is answered for, and whom to ask; None where none of it is known."""
    result, contact = job.newest(RESULT), job.bench.strings("bench", "contact")
    watch, whole = up_to(result.follow_up, _WATCH_WORDS) if result.follow_up else ("", True)
    later = come_back(job, result.follow_up or "") if result.ending is not None else ""
    until = result.promise_until
    answered = f"The work is answered for until {date_in_words(until)}." if until else ""
    ask = f"Ask {', '.join(contact)}" if contact else ""
    lines = (watch if whole else f"{watch} {_MORE}", later, " ".join(part for part in (answered, ask) if part))
    said = tuple(line for line in lines if line)
    return Row("If something comes up", said) if said else None
