"""Money in a job: what has been spent of the agreed most, from costs and hours as they were entered."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from pentools.money import Money, rounded
from pentools.record.billing import billing_of
from pentools.record.forms import Logged
from pentools.record.job import Job
from pentools.record.stages.job.agree import agreed_price, answers_of, consents
from pentools.record.stages.job.agree_kinds import ESTIMATE, Yes
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import REQUEST
from pentools.record.stages.job.money_kinds import BILL
from pentools.record.stages.job.work_kinds import MATERIAL
from pentools.record.stages.job.work_log import minutes_by_activity
from pentools.record.stages.repairs.kinds import BACK
from pentools.record.view import once_a_state

__all__ = ["Spending", "cost_of_parts", "counted", "price_past_ceiling", "spending_of", "unread_amounts"]


@dataclass(frozen=True, slots=True)
class Spending:
    """What was spent of the agreed most.

    Parameters
    ----------
    spent : Decimal
        Costs of materials and of work by others, postage, and hours at the bench's rate or the price of the work in their
        place, less what is taken off; in `currency`, before a tax that comes on top.
    ceiling : Decimal or None
        The agreed most; None where none was agreed.
    currency : str
        The currency of both.
    not_counted : tuple of str
        Costs as typed that could not be read, or are in another currency.
    on_top : Decimal
        What the bench's tax adds, as a share; 0 where there is none or prices hold it already.
    hours_counted : bool
        Whether hours are among what was spent: they have a rate, and it is in the same currency.
    """

    spent: Decimal
    ceiling: Decimal | None
    currency: str
    not_counted: tuple[str, ...] = ()
    on_top: Decimal = Decimal(0)
    hours_counted: bool = False

    def in_all(self, more: Decimal = Decimal(0)) -> Decimal:
        """What it comes to, or would with `more`, with the tax: this is held against the agreed most."""
        return rounded((self.spent + more) * (1 + self.on_top), self.currency)

    def past(self, more: Decimal = Decimal(0)) -> bool:
        """Whether it is past the ceiling, or would be with `more`."""
        return self.ceiling is not None and self.in_all(more) > self.ceiling


@once_a_state
def spending_of(job: Job) -> Spending:
    """What a job has cost so far, against what was agreed.

    Returns
    -------
    Spending
        In the ceiling's currency where there is a ceiling, else in the bench's. The ceiling is the price that the owner
        said yes to, or that of a later estimate, else the price limit named at intake; a ceiling above what the owner
        named counts only once the owner said yes to the proposal, so that a limit is never raised by the bench alone.
    """
    own = job.bench.currency
    limit = _ceiling(job)
    currency = own if limit is None else limit.currency
    spent, strange = Decimal(0), []
    bill = job.newest(BILL)
    costs = [*(bought.values.cost for bought in job.log(MATERIAL)), *(back.values.cost for back in job.log(BACK))]
    for typed, sign in (*((cost, 1) for cost in costs), (bill.postage, 1), (bill.work_price, 1), (bill.taken_off, -1)):
        if typed is None:
            continue
        cost = job.money(typed)
        if cost is None or cost.currency != currency:
            strange.append(typed)
        else:
            spent += sign * cost.amount
    set_by = billing_of(job.bench)
    hours = currency == own and set_by.rate > 0 and bill.work_price is None
    if hours:
        spent += Decimal(str(sum(minutes_by_activity(job).values()))) / 60 * set_by.rate
    most = None if limit is None else limit.amount
    return Spending(rounded(spent, currency), most, currency, tuple(strange), set_by.on_top, hours)


def cost_of_parts(job: Job) -> Decimal | None:
    """What parts, materials and work by others cost, as far as it was entered.

    Returns
    -------
    Decimal or None
        In the bench's own currency; 0 where nothing went in, None where something did and none of it has a cost that
        can be read in that currency.
    """
    bought = [logged.values.cost for logged in job.log(MATERIAL) if logged.values.way == "added"]
    bought += [back.values.cost for back in job.log(BACK)]
    read = [job.money(typed) for typed in bought if typed is not None]
    known = [money.amount for money in read if money is not None and money.currency == job.bench.currency]
    return sum(known, Decimal(0)) if known or not bought else None


def counted(job: Job, typed: str | None) -> Decimal:
    """An amount about to be entered, as far as it can be held against the ceiling; 0 where it cannot."""
    money = job.money(typed) if typed else None
    return money.amount if money is not None and money.currency == spending_of(job).currency else Decimal(0)


def price_past_ceiling(job: Job, typed: str | None) -> bool:
    """Whether a price asked at the end is more than was agreed; an amount in other money cannot be held against it."""
    ceiling = spending_of(job).ceiling
    return ceiling is not None and counted(job, typed) > ceiling


def unread_amounts(job: Job) -> tuple[str, ...]:
    """Amounts on record that cannot be held against the agreed most, as typed; none where nothing was agreed."""
    money = spending_of(job)
    if money.ceiling is None:
        return ()
    price = job.newest(RESULT).price
    strange = price is not None and getattr(job.money(price), "currency", None) != money.currency
    return (*money.not_counted, *([price] if price is not None and strange else []))


def _ceiling(job: Job) -> Money | None:
    yes, estimates = agreed_price(job), job.log(ESTIMATE)
    estimate = estimates[-1] if estimates else None
    asked = job.newest(REQUEST).price_limit if yes is None else yes.values.at_most
    limit = None if asked is None else job.money(asked)
    if yes is not None and estimate is not None and job.line_of(estimate.entry) < job.line_of(yes.entry):
        estimate = None  # the yes to a price was the later word
    typed = None if estimate is None else estimate.values.ceiling
    most = None if typed is None else job.money(typed)
    if most is None or limit is None:
        return most or limit
    raised = most.currency != limit.currency or most.amount > limit.amount
    return limit if raised and not _proposal_agreed(job, yes) else most


def _proposal_agreed(job: Job, since: Logged[Yes] | None) -> bool:
    """Whether the newest word on the proposal is a yes, given later than the price was agreed."""
    if since is None or consents(job).get("proposal") is not True:
        return consents(job).get("proposal") is True
    after = job.line_of(since.entry)
    return any(said.values.action == "proposal" and job.line_of(said.entry) > after for said in answers_of(job))
