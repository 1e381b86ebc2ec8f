"""What mending parts asks: the mend itself, a trial on a hidden place, the imprint, and what was sent out and came back."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.common import PARTS, length, yes_no
from pentools.tables.part_repairs import repair_choices
from pentools.units import Reading

__all__ = ["BACK", "IMPRINT", "OUT", "REPAIR", "SEEN", "SPOT", "Back", "Imprint", "Out", "Repair", "Spot"]

SEEN: tuple[tuple[str, str], ...] = (
    ("crisp", "crisp"),
    ("readable", "readable, soft at the edges"),
    ("faint", "faint, read in raking light"),
    ("gone", "not to be read"),
)
"""How much of an imprint is left."""
_METHODS = repair_choices()
_WORK = (
    ("plating", "plating"),
    ("tipping", "new tipping"),
    ("welding", "welding or soldering"),
    ("turning", "a part turned"),
    ("other", "something else"),
)


# fmt: off
class Repair(Form, frozen=True):
    """A part mended: what one entry holds."""

    part: Annotated[str | None, ask("Part", "choice", choices=PARTS, required=True, hint="it decides which ways are offered", audience="everybody")] = None
    method: Annotated[str | None, ask("How", "choice", choices=_METHODS, required=True, hint="leaving it is one of the ways", audience="everybody")] = None
    where: Annotated[str | None, ask("Where on it", hint="such as: at the lip, under the clip", audience="everybody")] = None
    with_what: Annotated[str | None, ask("With what", hint="such as acetone by capillary; a brass sleeve of 0.3 mm", audience="everybody")] = None
    long: Annotated[Reading | None, length("How long the crack or loss is", "such as 6 mm", 0.1, 100)] = None
    came_out: Annotated[str | None, ask("How it came out", "long text", hint="what is seen of it, and what it bears", audience="everybody")] = None
    lot: Annotated[str | None, ask("Source and lot", hint="to find every pen with the same lot later")] = None
    stands: Annotated[Reading | None, ask("Time it has to stand", "quantity", unit="h", low=0, high=2000, hint="from its label; empty: what is usual of its kind; never shorter than that", audience="everybody")] = None
    ago: Annotated[Reading | None, ask("Done how long ago", "quantity", unit="h", low=0, high=2000, hint="left empty: just now", audience="bench")] = None
    for_now: Annotated[bool | None, yes_no("Does it hold only for now?", "empty: as is usual of its kind", audience="everybody")] = None
    wanted: Annotated[str | None, ask("What would replace it", hint="such as a clip of its own, or a new cap lip; it goes on the list of parts wanted", audience="everybody")] = None
    photo: Annotated[str | None, ask("Photo", "photo", hint="a file in photos/", audience="everybody")] = None


REPAIR = Kind("repairs", "repair", "A part mended", Repair, help="One entry a part and way. It is held where its material, the owner’s word or a trial is missing.")


class Spot(Form, frozen=True):
    """Trial on a hidden place: what one entry holds."""

    part: Annotated[str | None, ask("Part", "choice", choices=PARTS, required=True, hint="which part of the pen", audience="everybody")] = None
    method: Annotated[str | None, ask("For which way", "choice", choices=_METHODS, required=True, hint="a trial for one way says nothing of another", audience="everybody")] = None
    passed: Annotated[bool | None, yes_no("Did it come out as it should?", "a weld: the place softens; a stain: the colour is right and nothing is dulled", required=True, audience="everybody")] = None
    showed: Annotated[str | None, ask("What it showed", "long text", hint="such as: tacky in 10 s, the colour runs with it", audience="everybody")] = None
    place: Annotated[str | None, ask("Where", hint="such as inside the cap, above the inner cap", audience="everybody")] = None
    photo: Annotated[str | None, ask("Photo", "photo", hint="a file in photos/", audience="everybody")] = None


SPOT = Kind("repairs", "test spot", "Trial on a hidden place", Spot, help="Solvent and colour go on a hidden place first; the newest trial for a part and way counts.")


class Imprint(Form, frozen=True):
    """Imprint: what one entry holds."""

    seen: Annotated[str | None, ask("How much of it is left", "choice", choices=SEEN, required=True, hint="in raking light", audience="everybody")] = None
    depth: Annotated[Reading | None, length("Depth, where it was measured", "such as 0.05 mm", 0.001, 1)] = None
    rubbing: Annotated[bool | None, yes_no("Was a rubbing made?", audience="everybody")] = None
    mask_proof: Annotated[bool | None, yes_no("Did the mask come off a hidden place clean?", "tried before it goes over the imprint", audience="everybody")] = None
    photo: Annotated[str | None, ask("Photo of rubbing or raking light", "photo", hint="a file in photos/", audience="everybody")] = None


IMPRINT = Kind("repairs", "imprint", "Imprint", Imprint, log=False, help="It is never cut again, and nothing is sanded within 5 mm of it.")


class Out(Form, frozen=True):
    """Sent to another workshop: what one entry holds."""

    part: Annotated[str | None, ask("Part", "choice", choices=PARTS, required=True, hint="which part of the pen", audience="everybody")] = None
    work: Annotated[str | None, ask("For what", "choice", choices=_WORK, required=True, hint="what is asked of them", audience="everybody")] = None
    sent_on: Annotated[str | None, ask("Sent on", "date", required=True, hint="2026-03-14")] = None
    whom: Annotated[str | None, ask("To whom", hint="for the bench alone", audience="bench")] = None
    price: Annotated[str | None, ask("Their price", "money", hint="as quoted, such as 60 EUR")] = None
    due_on: Annotated[str | None, ask("Expected back on", "date", hint="2026-05-14")] = None


OUT = Kind("repairs", "sent out", "Sent to another workshop", Out, help="Held until the owner said yes to sending it out.")


class Back(Form, frozen=True):
    """Back from another workshop: what one entry holds."""

    part: Annotated[str | None, ask("Part", "choice", choices=PARTS, required=True, hint="which part of the pen", audience="everybody")] = None
    back_on: Annotated[str | None, ask("Came back on", "date", required=True, hint="2026-05-02")] = None
    done: Annotated[str | None, ask("What was done to it", "long text", required=True, hint="such as: new tipping, ground to a medium round", audience="everybody")] = None
    cost: Annotated[str | None, ask("Cost", "money", hint="such as 60 EUR; it counts against the ceiling")] = None
    photo: Annotated[str | None, ask("Photo", "photo", hint="a file in photos/", audience="everybody")] = None


BACK = Kind("repairs", "back again", "Back from another workshop", Back)


# fmt: on
