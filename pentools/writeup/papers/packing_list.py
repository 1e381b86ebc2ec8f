"""The packing list: where it goes, what is in the box, what it is worth and who said so, and how it is packed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from pentools.numbers import capital
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER
from pentools.record.stages.job.posting import insured_value
from pentools.record.stages.job.posting_kinds import PARCEL
from pentools.record.stages.job.work_kinds import MATERIAL
from pentools.record.stages.treatment.facts import materials_of
from pentools.writeup.forms import Files
from pentools.writeup.papers.sheet import NOT_ENTERED, Paper, Row, paper_files, rows_of, told
from pentools.writeup.words import basis_in_words, decimals_of, sentence, shown_mass

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["packing_list", "packing_list_files"]

_PACKED = (
    "Empty and dry: no ink, no water",
    "Nib up, in a tube, its ends padded, so that nothing rattles",
    "“Fragile” and “this way up” on the outside",
    "This list, the slip of parts and the care card",
)
_CARRIER = "Check what your carrier asks: what it insures and up to what value, and what may go by post."
_AT_THE_BORDER = (
    "What it is: a used fountain pen, repaired, going back to its owner. It was not sold.",
    "What it is worth stands above, with its basis; where the price of the work is asked for, it is stated apart.",
    "A gift note is for a gift: a repaired pen is none.",
    "Keep what shows how and when it came in, so that it counts as goods that return.",
    "Your own country’s rules say which form it takes: check what your carrier asks.",
)
_BURNS = "Celluloid burns fast: ask the carrier whether it must be told of it."
_BURNING = {"celluloid", "degrading celluloid"}


def packing_list_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:  # noqa: ARG001 - the owner's, from the record
    """The packing list's one file, from the record alone."""
    return paper_files(job, packing_list(job))


def packing_list(job: Job) -> Paper:
    """The packing list; what was not entered is said, and the boxes are ticked by hand."""
    released = told(RESULT, job.newest(RESULT), "released_on")
    about = f"Released on {released}." if released else ""
    rows = rows_of(job, _to, _sender, _sent, _pieces, _mass, _value, _packed, _carrier, _border)
    return Paper("packing", "Packing list", about, rows)


def _to(job: Job) -> Row:
    owner = job.newest(OWNER)
    lines = (told(OWNER, owner, "owner"), *told(OWNER, owner, "address").splitlines())
    return Row("To", tuple(line.strip() for line in lines if line.strip()) or (sentence(NOT_ENTERED),))


def _sender(job: Job) -> Row:
    return Row("From", tuple(t for t in (job.bench.text("bench", "name"), *job.bench.strings("bench", "contact")) if t))


def _sent(job: Job) -> Row:
    """The class it goes by, its number and its day; nothing while that was not entered."""
    parcel = job.newest(PARCEL)
    number = told(PARCEL, parcel, "number")
    how = (told(PARCEL, parcel, "carried"), f"number {number}" if number else "", told(PARCEL, parcel, "sent_on"))
    said = ", ".join(part for part in how if part)
    return Row("Goes by", (sentence(capital(said)),) if said else ())


def _pieces(job: Job) -> Row:
    """What came in, and old parts that go back; each with a box to tick as it is packed."""
    came = [capital(piece) for piece in job.newest(ARRIVAL).pieces or ()]
    back = [
        f"Old part, given back: {told(MATERIAL, logged.values, 'what')}"
        for logged in job.log(MATERIAL)
        if logged.values.way == "returned"
    ]
    if not came and not back:
        return Row("In the box", (sentence(NOT_ENTERED),))
    lines = () if came else (f"Pieces that came in: {NOT_ENTERED}.",)
    return Row("In the box", lines, ticks=(*came, *back))


def _mass(job: Job) -> Row:
    mass = job.newest(RESULT).mass_g
    told_mass, parcel = told(RESULT, job.newest(RESULT), "mass_g"), told(PARCEL, job.newest(PARCEL), "weighs")
    pen = f"{shown_mass(mass, decimals_of(job))} as it leaves." if mass and told_mass else ""
    lines = (pen, f"The parcel: {parcel}." if parcel else "")
    return Row("Mass of the pen" if pen else "Mass", tuple(line for line in lines if line))


def _value(job: Job) -> Row:
    value, _ = insured_value(job)
    if not value:
        return Row("Insured value", (f"Declared value: {NOT_ENTERED}.",))
    return Row("Insured value", (basis_in_words(job), *_declared(job, value)), big=value)


def _declared(job: Job, insured: str) -> tuple[str, ...]:
    """What was declared at intake, where it is insured for something else."""
    owner = job.newest(OWNER)
    value, basis = told(OWNER, owner, "declared_value"), told(OWNER, owner, "value_basis")
    if not value or value == insured:
        return ()
    return (sentence(f"Declared at intake: {value}{f' ({basis})' if basis else ''}"),)


def _packed(job: Job) -> Row:
    how = told(PARCEL, job.newest(PARCEL), "packed")
    ticks = (_PACKED[0], f"{capital(how)}, so that nothing rattles" if how else _PACKED[1], *_PACKED[2:])
    return Row("As it is packed", ticks=ticks, blanks=("Packed on", "By"))


def _carrier(job: Job) -> Row:
    body = {name for part in ("barrel", "cap") for name in materials_of(job, part)}
    return Row("The carrier", (_CARRIER, *((_BURNS,) if body & _BURNING else ())))


def _border(job: Job) -> Row:
    """What is asked at a customs border; nothing where it was said that it crosses none."""
    border = job.newest(PARCEL).border
    if border is False or (border is None and job.newest(PARCEL).carried == "hand"):
        return Row("At the border")
    return Row("At the border" if border else "If it crosses a border", _AT_THE_BORDER)
