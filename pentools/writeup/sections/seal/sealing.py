"""The seals on a page: which size held and which failed, what the pen was sealed with, and what the tests said."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.numbers import capital, in_words
from pentools.record.kinds import as_dict
from pentools.record.stages.seal.kinds import MEASURE, PLACES, SEALANT, TEST, TRIAL, SealTest
from pentools.record.stages.seal.measure import bore_mm, places_in_use
from pentools.record.stages.seal.sealing import (
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
from pentools.units import format_reading
from pentools.words.treatment import CLOSING_LINE
from pentools.writeup.blocks import (
    Audience,
    Block,
    Details,
    Facts,
    FigureBlock,
    Lead,
    Notice,
    Paragraph,
    Section,
    Table,
)  # fmt: skip
from pentools.writeup.drawn import seal_ladder
from pentools.writeup.orders import told, without_orders
from pentools.writeup.sections.generic import kind_table, may_show, releases_of
from pentools.writeup.words import THIN, date_in_words

if TYPE_CHECKING:
    from pentools.calc.seal.fit import Candidate
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["seal_caution", "sealed_in_words", "section"]

TITLE = "How it was sealed"
_SHELLAC = "Shellac is cut with alcohol, which burns: no flame near, and fresh air."
_FLAME = "Never heat celluloid or hard rubber over a flame to undo a joint."
_NO_HEAT = ("none", "grease", "silicone")  # what comes apart by hand


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was measured, the sizes that failed, the one that held, the sealant, the tests.

    Parameters
    ----------
    stage : Stage
        The seal.
    audience : {"owner", "everybody"}
        Who will see the page; dates, notes and released holds are for the owner.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    if not job.record.live(stage.key):
        return Section(stage.key, TITLE)
    blocks: list[Block] = []
    places = places_in_use(job)
    tried = passed_places(job)
    lead = [fit_words(job, place) for place in places if place in tried]
    blocks += [Lead(" ".join(lead))] if lead else []
    for place in places:
        blocks += _place(job, place, audience)
    sealed = sealed_in_words(job)
    blocks += [Paragraph(sealed)] if sealed else []
    blocks += _tests(job, audience)
    caution = seal_caution(job)
    blocks += [Notice(caution, "Caution")] if caution else []
    blocks += _workings(job, stage, audience)
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, TITLE, tuple(blocks))


def seal_caution(job: Job) -> str:
    """What to mind with the sealants that were used; empty where grease alone was."""
    used = {logged.values.sealant for logged in job.log(SEALANT)} - {None, *_NO_HEAT}
    said = [_SHELLAC] * bool(used & {"shellac", "thread"}) + [_FLAME] * bool(used)
    return " ".join((*said, CLOSING_LINE)) if said else ""


def _place(job: Job, place: str, audience: Audience) -> list[Block]:
    """One seal: measured in a sentence, its ladder and its ring as figures."""
    from pentools.figures.seal.rings import ring_drawing

    blocks: list[Block] = []
    words = _measured_words(job, place)
    blocks += [Paragraph(words)] if words else []
    try:
        ladder = seal_ladder(job, place)
        ring = _ring_that_held(job, place)
    except InputError as error:
        why = f": {error}" if audience == "owner" else "."
        return [*blocks, Notice(f"The measurements of the {place_words(place)} give no result{why}", "To be settled")]
    blocks += [FigureBlock(ladder)] if ladder is not None else []
    blocks += [FigureBlock(ring_drawing(ring))] if ring is not None else []
    return blocks


def _measured_words(job: Job, place: str) -> str:
    values = measured(job, place)
    readings = bore_mm(values)
    if not readings:
        return ""
    hole = "housing" if "housing" in PLACES[place].asks else "bore"
    mean, spread = sum(readings) / len(readings), max(readings) - min(readings)
    many = f", the mean of {len(readings)} readings that differ by {spread:.2f}{THIN}mm," if len(readings) > 1 else ""
    seats = (
        ("groove", "groove or seat", values.groove),
        ("rod", "rod", values.rod),
        ("nipple", "nipple", values.nipple),
    )
    beside = [
        f"the {words} {seat.value:.2f}{THIN}mm"
        for name, words, seat in seats
        if name in PLACES[place].asks and seat is not None
    ]
    tail = f" and {in_words(beside)}" if beside else ""
    return f"At the {place_words(place)} the {hole} measures {mean:.2f}{THIN}mm{many}{tail}."


def _ring_that_held(job: Job, place: str) -> Candidate | None:
    """The ring that pulled back, with the sizes measured on it, in its groove; none while none held."""
    from pentools.calc.seal.fit import seal_fit
    from pentools.calc.seal.gland import Ring
    from pentools.sums.seal.stock import INSIDE_HALF_WIDTH_MM, SECTION_HALF_WIDTH_MM

    fit = candidates(job, place)
    if fit is None or not passed_places(job).get(place):
        return None
    good = {t.entry_id: t for t in trials(job, place) if t.dry and t.happened == "pulls back"}
    for logged in reversed(job.log(TRIAL)):
        values = logged.values
        if logged.entry.id in good and values.section is not None and values.inside is not None:
            halves = (INSIDE_HALF_WIDTH_MM, SECTION_HALF_WIDTH_MM)
            ring = Ring(values.what or "", values.inside.value, values.section.value, *halves, measured=True)
            return seal_fit(fit.gland, (ring,), fit.duty).best
    return None


def sealed_in_words(job: Job) -> str:
    """What it was sealed with, and whether that can be undone, as one sentence; empty where nothing was said."""
    log = job.log(SEALANT)
    if not log:
        return ""
    used = [logged.values for logged in log if logged.values.sealant != "none"]
    if not used:
        return "No sealant was needed: it holds dry."
    parts = []
    for values in used:
        can = "" if values.reversible is None else " (can be undone)" if values.reversible else " (cannot be undone)"
        parts.append(f"{SEALANT.field('sealant').shown(values.sealant)} at the {place_words(values.place)}{can}")
    passed = passed_places(job)
    waited = passed and all(passed.values()) and not job.record.releases("sealant")
    after = "After the dry fit had passed, it" if waited else "It"
    return f"{after} was sealed with {in_words(parts)}."


def _tests(job: Job, audience: Audience) -> list[Block]:
    done = proofs_done(job)
    if not done:
        return []
    names = dict(TEST.field("test").choices)
    blocks: list[Block] = []
    tree, results = suspects(job), results_that_count(job)
    if tree is not None and len(results) > 1:
        text = without_orders(tree.findings[0].text)
        blocks += (
            [Paragraph(f"Tested together: {text[0].lower()}{text[1:]}" if not tree.named else text)] if text else []
        )
    entered = {logged.entry.id: logged for logged in job.log(TEST)}
    head: tuple[str, ...] = ("Test", "Result", "Readings and what they say")
    head = ("Date", *head) if audience == "owner" else head
    for caption, counts in (("Tests of the seals as they are now", True), ("Tests before the last change", False)):
        rows = []
        for test in (t for t in done if t.counts is counts):
            logged = entered[test.entry_id]
            parts = (_readings_words(logged.values), without_orders(" ".join(f.text for f in test.findings)))
            said = ". ".join(part for part in parts if part)
            row = (capital(names.get(test.test, test.test)), test.result or "cannot be told", said or "–")
            rows.append((date_in_words(logged.entry.time), *row) if audience == "owner" else row)
        blocks += [Table(caption, head, tuple(rows))] if rows else []
    if tree is not None and tree.named:
        blocks += told(tree.findings[1:] if len(results) > 1 else tree.findings)
    return blocks


def _readings_words(values: SealTest) -> str:
    """What was read in one test, in one text; empty where nothing was read."""
    readings = (
        (values.pushed, "pushed {}"), (values.returned, "{} back"), (values.volume, "{} of pen, hose and gauge"),
        (values.vacuum_start, "from {}"), (values.vacuum_end, "to {} below the room"), (values.seconds, "in {}"),
        (values.gauge, "gauge good to {}"), (values.rested, "{} at rest"),
    )  # fmt: skip
    words = [pattern.format(format_reading(reading)) for reading, pattern in readings if reading is not None]
    words += [f"damp: {TEST.field('damp').shown(values.damp)}"] if values.damp else []
    return capital(", ".join(words))


def _trial_table(job: Job, audience: Audience) -> list[Block]:
    """Every trial as it was entered; the measured sizes in one column."""
    rows = []
    for logged in job.log(TRIAL):
        values = logged.values
        sizes = ((values.section, "section"), (values.inside, "inside"), (values.outside, "outside"))
        shown = [f"{word} {size.value:.2f}{THIN}mm" for size, word in sizes if size is not None]
        row = (
            capital(place_words(values.place)), values.what or "–", ", ".join(shown) or "not measured",
            "dry" if values.dry else "not dry", values.happened or "–",
        )  # fmt: skip
        rows.append((date_in_words(logged.entry.time), *row) if audience == "owner" else row)
    head: tuple[str, ...] = ("Seal", "Size tried", "Measured", "How", "What happened")
    head = ("Date", *head) if audience == "owner" else head
    return [Table("Every trial", head, tuple(rows))] if rows else []


def _sealant_table(job: Job, audience: Audience) -> list[Block]:
    """Every sealant with its times."""
    names = ("sealant", "place", "reversible", "open_time", "cure")
    rows = []
    for logged in job.log(SEALANT):
        found = as_dict(SEALANT, logged.values)
        row = tuple("–" if found[name] is None else SEALANT.field(name).shown(found[name]) for name in names)
        rows.append((date_in_words(logged.entry.time), *row) if audience == "owner" else row)
    head: tuple[str, ...] = ("What", "Where", "Can be undone", "Time to work it", "Time to set")
    head = ("Date", *head) if audience == "owner" else head
    return [Table("Sealant", head, tuple(rows))] if rows else []


def _workings(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """Every reading, trial, sealant and tool as it was entered: folded on the screen, open in print."""
    blocks: list[Block] = []
    for logged in job.log(MEASURE):
        place, found = logged.values.place or "", as_dict(MEASURE, logged.values)
        rows = tuple(
            (field.label, field.shown(found[field.name]))
            for field in MEASURE.fields
            if found[field.name] is not None and may_show(field, audience)
        )
        when = f", {date_in_words(logged.entry.time)}" if audience == "owner" else ""
        blocks += [Facts(f"Measured: {place_words(place)}{when}", rows)] if rows else []
    blocks += _trial_table(job, audience) + _sealant_table(job, audience)
    blocks += kind_table(job, stage.kind("tool"), audience, caption="Tools made for the job")
    return [Details("Measurements, trials and tools as they were entered", tuple(blocks))] if blocks else []
