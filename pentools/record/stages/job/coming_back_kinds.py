"""What is asked of a pen that comes back: which job it goes on from, what failed, and whether that is covered."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.stages.common import PARTS, yes_no

__all__ = ["CAUSES", "CAUSE_CHOICES", "RETURN", "TAKEN_OVER", "Return"]

TAKEN_OVER = "taken over from job "
"""What the remark of an entry begins with that was copied from an older job."""
CAUSE_CHOICES: tuple[tuple[str, str], ...] = (
    ("part", "a part or material that was put in"),
    ("way", "a way it was mended or sealed"),
    ("old", "a part that was not touched"),
    ("use", "use, a fall, or the post"),
    ("unknown", "not known yet"),
)
CAUSES = dict(CAUSE_CHOICES)


# fmt: off
class Return(Form, frozen=True):
    """Coming back: what one entry holds."""

    older: Annotated[str | None, ask("Goes on from job", required=True, hint="its name on this bench, such as 2026-014-green-piston")] = None
    failed: Annotated[str | None, ask("What failed", "long text", required=True, hint="as the owner says; nothing, if it only comes for more work", audience="everybody")] = None
    part: Annotated[str | None, ask("Part that failed", "choice", choices=PARTS, hint="its lots and the ways it was mended are counted", audience="everybody")] = None
    cause: Annotated[str | None, ask("Why", "choice", choices=CAUSE_CHOICES, hint="as far as it can be told", audience="everybody")] = None
    covered: Annotated[bool | None, yes_no("Is it covered by what was promised?")] = None
    promised_until: Annotated[str | None, ask("Answered for until", "date", hint="taken over; empty where nothing was promised")] = None
    promised: Annotated[str | None, ask("What was promised", "long text", hint="taken over from the end of that job", audience="everybody")] = None
    fitted: Annotated[tuple[str, ...] | None, ask("What was fitted then", "items", hint="taken over: where and what", audience="everybody")] = None
    lots: Annotated[tuple[str, ...] | None, ask("From which lots", "items", hint="taken over: where, source and lot")] = None


RETURN = Kind("intake", "coming back", "Coming back", Return, log=False, help="The pen was here before: what is known of it is taken over and not asked again.")


# fmt: on
