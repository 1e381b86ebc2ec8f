"""What is asked of a pen that came in a parcel with others: the job of the first of them."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind

__all__ = ["CAME_WITH", "CameWith"]


# fmt: off
class CameWith(Form, frozen=True):
    """Came with other pens: what one entry holds."""

    lead: Annotated[str | None, ask("Came with job", required=True, hint="of another pen of the same parcel, such as 2026-014-green-piston; owner, yes and posting are taken over", audience="bench")] = None


CAME_WITH = Kind("intake", "came with", "Came with other pens", CameWith, log=False, help="The pens of a parcel share owner, yes, posting and invoice; each keeps its own job and its own letter.")


# fmt: on
