"""Back together on a page: the order as it was kept, what each test showed, and how it left."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.closing.order import ClosingStep
from pentools.numbers import capital, in_words
from pentools.record.stages.closing.closing import grave_findings
from pentools.record.stages.closing.kinds import STEP, WRITING
from pentools.record.stages.closing.proofs import owed_now
from pentools.record.stages.closing.work import action_of, closing_of, put_on, step_values
from pentools.record.stages.seal.kinds import SEALANTS
from pentools.writeup.blocks import Audience, Block, Details, Findings, Lead, Section, Table
from pentools.writeup.sections.generic import kind_table, releases_of
from pentools.writeup.sections.job.pictures import photos_beside

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["closed_in_words", "section"]

_STATES = {"done": "✓ passed", "untested": "not tested", "failed": "✗ did not pass"}


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """How it went together.

    Parameters
    ----------
    stage : Stage
        The stage of closing.
    audience : {"owner", "everybody"}
        Who will see the page; all of it is for everybody.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    order = closing_of(job)
    if not job.record.live(stage.key) or order is None:
        return Section(stage.key, stage.title)
    blocks: list[Block] = []
    if words := closed_in_words(job):
        blocks.append(Lead(words))
    if grave := grave_findings(job):
        blocks.append(Findings(grave))
    told = [step for step in order.steps if step.state in _STATES]
    rows = tuple((str(step.row.step), capital(step.row.part), _done(job, step), _STATES[step.state], capital(step.row.passes)) for step in told)  # fmt: skip
    if rows:
        table = Table("The order, and what each test showed", ("Step", "Part", "What was done", "Test", "A sound one shows"), rows)  # fmt: skip
        blocks.append(Details("The order, step by step", (table,)))
    blocks += kind_table(job, STEP, audience, without=("photo",), caption="Steps told apart")
    blocks += _proofs(job)
    blocks += kind_table(job, WRITING, audience, caption="Writing after a night")
    blocks += photos_beside(job, audience, ((logged.values.photo, "") for logged in job.log(STEP)))
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, stage.title, tuple(blocks))


def closed_in_words(job: Job) -> str:
    """How it went together, in one sentence without a claim that was not entered; empty where nothing was done."""
    order = closing_of(job)
    if order is None:
        return ""
    done = [step for step in order.steps if step.state in ("done", "untested", "failed")]
    if not done:
        return ""
    tested = sum(step.state == "done" for step in done)
    steps = "1 step" if len(done) == 1 else f"{len(done)} steps"
    if tested == len(done) and order.next_step is None:
        return f"It went together in {steps}, each with its own test passed."
    return f"So far {steps} of putting it together {'is' if len(done) == 1 else 'are'} done, {tested} of them with {'its' if tested == 1 else 'their'} test passed."


def _done(job: Job, step: ClosingStep) -> str:
    """What was done, with what was measured and what holds it."""
    more = [step_values(job)[step.row.value]] if step.row.value in step_values(job) else []
    said = put_on(job, step.row.clock) if step.row.clock else None
    more += [dict(SEALANTS)[said[0]]] if said else []
    action = action_of(job, step.row)
    return f"{action} ({', '.join(more)})" if more else action


def _proofs(job: Job) -> list[Block]:
    proofs = owed_now(job)
    passed = [proof.row.label for proof in proofs if proof.state == "passed"]
    failed = [proof.row.label for proof in proofs if proof.state == "failed"]
    rows = [("Passed", capital(in_words(passed)))] if passed else []
    rows += [("Did not pass", capital(in_words(failed)))] if failed else []
    return [Table("Tests before it left", ("Test", "Which"), tuple(rows))] if rows else []
