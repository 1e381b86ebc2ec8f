"""The seals on a page: which size held and which failed, what the pen was sealed with, and what the tests said."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.record.stages.seal import (
    candidates,
    fit_words,
    measured,
    passed_places,
    place_words,
    proofs_done,
    results_that_count,
    suspects,
    trials,
)  # fmt: skip
from pentools.record.stages.seal_kinds import PLACES, TEST, asked_for
from pentools.record.stages.seal_measure import bore_readings, places_in_use
from pentools.units import Reading
from pentools.writeup.blocks import (
    Audience,
    Block,
    Details,
    Facts,
    FigureBlock,
    Findings,
    Lead,
    Notice,
    Paragraph,
    Section,
    Table,
)  # fmt: skip
from pentools.writeup.sections.generic import kind_table, may_show, notes_of, releases_of
from pentools.writeup.words import THIN, capital, date_in_words, list_in_words

if TYPE_CHECKING:
    from pentools.calc.seal_fit import Candidate
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["section"]

TITLE = "How it was sealed"
CAUTION = (
    "Shellac is cut with alcohol, which burns: no flame near, and fresh air. Never heat celluloid or hard rubber over a flame to undo a joint. "
    "Follow local codes; ask a licensed professional."
)


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was measured, the sizes that failed, the one that held, the sealant, the tests.

    Parameters
    ----------
    job : Job
        The job.
    stage : Stage
        The seal.
    audience : {"client", "blog"}
        Who will see the page; dates, notes and released holds are for the client.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    if not job.record.live(stage.key):
        return Section(stage.key, TITLE)
    blocks: list[Block] = []
    places = places_in_use(job)
    lead = [fit_words(job, place) for place in passed_places(job)]
    blocks += [Lead(" ".join(lead))] if lead else []
    for place in places:
        blocks += _place(job, place)
    blocks += _sealant(job, stage)
    blocks += _tests(job, stage, audience)
    if job.record.live(stage.key, "sealant"):
        blocks.append(Notice(CAUTION, "Caution"))
    blocks += _workings(job, stage, audience)
    blocks += notes_of(job, stage, tuple(kind.key for kind in stage.kinds), audience)
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, TITLE, tuple(blocks))


def _place(job: Job, place: str) -> list[Block]:
    """One seal: measured in a sentence, its ladder and its ring as figures."""
    from pentools.figures.seal import ladder_drawing, ring_drawing

    blocks: list[Block] = []
    words = _measured_words(job, place)
    blocks += [Paragraph(words)] if words else []
    try:
        ladder = ladder_drawing(job, place, ahead=False)
        ring = _ring_that_held(job, place)
    except InputError as error:
        return [
            *blocks,
            Notice(f"The measurements of the {place_words(place)} give no result: {error}", "To be settled"),
        ]
    blocks += [FigureBlock(ladder)] if ladder is not None else []
    blocks += [FigureBlock(ring_drawing(ring))] if ring is not None else []
    return blocks


def _measured_words(job: Job, place: str) -> str:
    values = measured(job, place)
    readings = bore_readings(values)
    if not readings:
        return ""
    hole = "housing" if "housing" in PLACES[place].asks else "bore"
    mean, spread = sum(readings) / len(readings), max(readings) - min(readings)
    many = f", the mean of {len(readings)} readings that differ by {spread:.2f}{THIN}mm," if len(readings) > 1 else ""
    seats = {"groove": "groove or seat", "rod": "rod", "nipple": "nipple"}
    found = ((seats[n], values.get(n)) for n in ("groove", "rod", "nipple") if n in PLACES[place].asks)
    beside = [f"the {name} {value.value:.2f}{THIN}mm" for name, value in found if isinstance(value, Reading)]
    tail = f" and {list_in_words(beside)}" if beside else ""
    return f"At the {place_words(place)} the {hole} measures {mean:.2f}{THIN}mm{many}{tail}."


def _ring_that_held(job: Job, place: str) -> Candidate | None:
    """The ring that pulled back, with the sizes measured on it, in its groove; none while none held."""
    from pentools.calc.ring_gland import Ring
    from pentools.calc.seal_fit import seal_fit
    from pentools.sums.ring_stock import INSIDE_HALF_WIDTH_MM, SECTION_HALF_WIDTH_MM

    fit = candidates(job, place)
    if fit is None or not passed_places(job).get(place):
        return None
    good = {t.entry_id: t for t in trials(job, place) if t.dry and t.happened == "pulls back"}
    for entry, values in reversed(job.log("seal", "trial")):
        section_, inside = values["section"], values["inside"]
        if entry.id in good and isinstance(section_, Reading) and isinstance(inside, Reading):
            halves = (INSIDE_HALF_WIDTH_MM, SECTION_HALF_WIDTH_MM)
            ring = Ring(str(values["what"]), inside.value, section_.value, *halves, measured=True)
            return seal_fit(fit.gland, (ring,), fit.duty).best
    return None


def _sealant(job: Job, stage: Stage) -> list[Block]:
    kind = stage.kind("sealant")
    log = job.log(stage.key, "sealant")
    if not log:
        return []
    used = [v for _, v in log if v["sealant"] != "none"]
    if not used:
        return [Paragraph("No sealant was needed: it holds dry.")]
    parts = []
    for values in used:
        undone = (
            "" if values["reversible"] is None else f", which {'can' if values['reversible'] else 'cannot'} be undone"
        )
        parts.append(f"{kind.field('sealant').shown(values['sealant'])} at the {place_words(values['place'])}{undone}")
    passed = passed_places(job)
    waited = passed and all(passed.values()) and not job.record.releases("sealant")
    after = "After the dry fit had passed, it" if waited else "It"
    return [Paragraph(f"{after} was sealed with {list_in_words(parts)}.")]


def _tests(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    done = proofs_done(job)
    if not done:
        return []
    names = dict(TEST.field("test").choices)
    blocks: list[Block] = []
    tree, results = suspects(job), results_that_count(job)
    if tree is not None and len(results) > 1:
        text = tree.findings[0].text
        blocks.append(Paragraph(f"Tested together: {text[0].lower()}{text[1:]}" if not tree.named else text))
    dates = {entry.id: date_in_words(entry.time) for entry in job.record.live(stage.key, "test")}
    rows = []
    for test in done:
        said = "; ".join(f.text for f in test.findings) or "–"
        row: tuple[str, ...] = (
            capital(names.get(test.test, test.test)),
            test.result or "cannot be told",
            said,
            "after the last change" if test.counts else "before it",
        )
        rows.append((dates[test.entry_id], *row) if audience == "client" else row)
    head: tuple[str, ...] = ("Test", "Result", "What the readings say", "When")
    head = ("Date", *head) if audience == "client" else head
    blocks.append(Table("Tests of the seals", head, tuple(rows)))
    if tree is not None and tree.named:
        blocks.append(Findings(tree.findings))
    return blocks


def _workings(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """Every reading, trial, sealant, test and tool as it was entered: folded on the screen, open in print."""
    blocks: list[Block] = []
    kind = stage.kind("measure")
    for entry, values in job.log(stage.key, "measure"):
        place = str(values["place"])
        rows = tuple(
            (field.label, field.shown(values[field.name]))
            for field in kind.fields
            if field.name in asked_for(place) and values[field.name] is not None and may_show(kind, field, audience)
        )
        when = f", {date_in_words(entry.time)}" if audience == "client" else ""
        blocks += [Facts(f"Measured: {place_words(place)}{when}", rows)] if rows else []
    captions = {
        "trial": "Every trial",
        "sealant": "Sealant",
        "test": "Readings of the tests",
        "tool": "Tools made for the job",
    }
    for key, caption in captions.items():
        blocks += kind_table(job, stage, stage.kind(key), audience, caption=caption)
    return [Details("Measurements, trials and tools as they were entered", tuple(blocks))] if blocks else []
