"""What is asked about before it is saved, because this job's own earlier entries make it unlikely; it is never refused."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from pentools.money import in_money
from pentools.numbers import plain
from pentools.record.forms import Form
from pentools.record.spending import counted, spending_of
from pentools.record.stages.closing.kinds import Round, Step
from pentools.record.stages.closing.work import doubts_of
from pentools.record.stages.job.ending_kinds import Result
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.work_kinds import MATERIAL, Work
from pentools.record.stages.seal.kinds import Measure
from pentools.record.stages.treatment.baths import past_limit
from pentools.record.stages.treatment.cleaning_kinds import Bath
from pentools.record.stages.treatment.heat import joint_heat
from pentools.record.stages.treatment.opening_kinds import HeatPass
from pentools.record.stages.weighing.kinds import WEIGHING, Dimensions, Weighing
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["doubt_of"]

ARRIVED_WITHIN_G = 3.0  # what of a pen may be off the pan: a cap is weighed on or off at will (judged)
MOST_INK_G = 8.0  # more than pens hold (judged)
LONGEST_MINUTES = 480.0  # a working day at one thing (judged)


def doubt_of(job: Job, form: Form) -> str:
    """What makes a filled form unlikely in this job.

    Parameters
    ----------
    form : Form
        The form as it is about to be saved.

    Returns
    -------
    str
        One sentence that ends in a question; empty where nothing speaks against it.
    """
    return next((asked(job, form) for kind, asked in _DOUBTS.items() if isinstance(form, kind)), "")


def _grams(value: float) -> str:
    return f"{plain(value, 5)} g"


def _weighing(job: Job, form: Weighing) -> str:
    if form.mass is None or form.state == "gain":
        return ""
    mass = form.mass.value
    weighed = [logged.values for logged in job.log(WEIGHING) if logged.values.mass is not None]
    empties = [w.mass.value for w in weighed if w.state in ("dry", "drained") and w.mass is not None]
    if form.state in ("dry", "drained"):
        return _empty(mass, empties, job.newest(ARRIVAL).mass_g)
    return _filled(mass, empties[-1]) if empties else ""


def _empty(mass: float, empties: list[float], arrived: Reading | None) -> str:
    known = empties or ([arrived.value] if arrived is not None else [])
    if not known or min(abs(mass - value) for value in known) <= (1.0 if empties else ARRIVED_WITHIN_G):
        return ""
    before = f"it weighed {_grams(known[-1])} empty" if empties else f"it arrived with {_grams(known[0])}"
    return f"{_grams(mass)} empty, and {before}: is that right?"


def _filled(mass: float, empty: float) -> str:
    if mass == empty:
        return f"{_grams(mass)} filled is what it weighed empty: was it filled?"
    if mass < empty or mass > empty + MOST_INK_G:
        return f"{_grams(mass)} filled, and it weighed {_grams(empty)} empty: is that right?"
    return ""


def _bore(job: Job, form: Measure | Dimensions) -> str:
    outside = job.newest(ARRIVAL).barrel_outside_mm
    if outside is None:
        return ""
    read: Any = form.bore
    bores = [r.value for r in (read if isinstance(read, tuple) else (read,)) if isinstance(r, Reading)]
    if bores and max(bores) >= outside.value:
        return (
            f"A bore of {plain(max(bores), 4)} mm in a barrel of {plain(outside.value, 4)} mm outside: is that right?"
        )
    return ""


def _heat(job: Job, form: HeatPass) -> str:
    heat = joint_heat(job, form.joint) if form.joint is not None else None
    if heat is None or heat.limit_c is None or form.surface is None or form.surface.value <= heat.limit_c:
        return ""
    return f"{plain(form.surface.value, 3)} °C is past the limit of {plain(heat.limit_c, 3)} °C for {heat.body}: was it so warm?"


def _bath(job: Job, form: Bath) -> str:
    if form.part is None or form.bath is None:
        return ""
    past = past_limit(job, form.part, form.bath, None if form.minutes is None else form.minutes.value)
    return "" if past is None or past.topic != "too-long" else f"{past.text} Was it so long?"


def _minutes(job: Job, form: Work) -> str:
    """Minutes that, at the bench's rate, go past the agreed most, or that nobody spends in one go."""
    if form.minutes is None:
        return ""
    minutes, money = form.minutes.value, spending_of(job)
    if minutes > LONGEST_MINUTES:
        return f"{plain(minutes, 4)} min at one thing: is that right?"
    cost = Decimal(str(minutes)) / 60 * Decimal(str(job.bench.rate_per_hour)) if money.hours_counted else Decimal(0)
    if not cost or money.past() or not money.past(cost):
        return ""  # what is past already was said when it went past
    return (
        f"With {plain(minutes, 4)} min at the bench’s rate this pen comes to {in_money(money.in_all(cost), money.currency)}, past the agreed "
        f"{in_money(money.ceiling or Decimal(0), money.currency)}: was so much time spent?"
    )


def _price(job: Job, form: Result) -> str:
    """A price below what the parts alone cost, where both are in one money."""
    money, price = spending_of(job), counted(job, form.price)
    parts = sum((counted(job, logged.values.cost) for logged in job.log(MATERIAL)), Decimal(0))
    if not price or price >= parts:
        return ""
    return f"A price of {form.price}, and the parts alone came to {in_money(parts, money.currency)}: is that right?"


_DOUBTS: dict[type[Form], Callable[[Job, Any], str]] = {
    Weighing: _weighing,
    Measure: _bore,
    Dimensions: _bore,
    HeatPass: _heat,
    Bath: _bath,
    Work: _minutes,
    Result: _price,
    Round: doubts_of,
    Step: doubts_of,
}
