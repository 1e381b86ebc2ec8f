"""What a material changes in an order of work: a treatment that a step comes to, and that the material does not take."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import msgspec

from pentools.calc.closing.order import ClosingRow
from pentools.calc.treatment.limits import CompatibilityRow, treatment_limits
from pentools.calc.treatment.materials import UNKNOWN

__all__ = ["Change", "ChangeRow", "action_with", "changes_of"]

_UNNAMED = ("naphtha-based sealant",)
"""What alone is said by itself of a body that is not named; the rest is written."""


class ChangeRow(msgspec.Struct, frozen=True):
    """One row of the table ``closing_changes``: what a material changes at which steps, and from which treatment it follows."""

    material: str
    treatment: str
    steps: tuple[str, ...]
    words: str
    source: str
    certainty: str
    says: str = ""
    says_instead: str = ""


@dataclass(frozen=True, slots=True)
class Change:
    """What one material changes at one step.

    Parameters
    ----------
    material, words : str
        The material, and what is done instead or besides.
    never : bool
        Whether the material never takes what the step comes to; otherwise it takes it within a limit.
    source, certainty : str
        Where it is known from, and how sure that is.
    says, says_instead : str
        Words of the action that do not hold then, and what stands in their place.
    """

    material: str
    words: str
    never: bool
    source: str
    certainty: str
    says: str = ""
    says_instead: str = ""


def changes_of(
    step: ClosingRow,
    body: Sequence[str],
    fitted: Sequence[str],
    rows: Iterable[ChangeRow],
    grid: Sequence[CompatibilityRow],
) -> tuple[Change, ...]:
    """What the materials at hand change at a step.

    Parameters
    ----------
    step : ClosingRow
        Its key and the treatments that it comes to are what counts.
    body : sequence of str
        Names of what barrel, section and cap are made of, as in the table of compatibility; or "unknown".
    fitted : sequence of str
        Names of what sac, ring or cork are made of.
    rows : iterable of ChangeRow
        The table ``closing_changes``.
    grid : sequence of CompatibilityRow
        The table of compatibility.

    Returns
    -------
    tuple of Change
        The words written for it; and where a body never takes what the step comes to and none are written, the
        table's own reason. Of what was fitted only what is written counts: most steps do not touch it.
    """
    own = [row for row in rows if step.key in row.steps]
    found: list[Change] = []
    for material in dict.fromkeys((*body, *fitted)):
        said = [row for row in own if row.material == material]
        for row in said:
            never = treatment_limits(material, row.treatment, grid).verdict == "never"
            found.append(Change(material, row.words, never, row.source, row.certainty, row.says, row.says_instead))
        if material in body:
            written = {row.treatment for row in said}
            found += [c for t in step.uses if t not in written and (c := _by_table(material, t, grid)) is not None]
    return tuple(found)


def action_with(step: ClosingRow, changes: Iterable[Change]) -> str:
    """What is done at a step, as its changes leave it."""
    action = step.action
    for change in changes:
        if change.says:
            action = action.replace(change.says, change.says_instead)
    return action


def _by_table(material: str, treatment: str, grid: Sequence[CompatibilityRow]) -> Change | None:
    """The table's own no to a treatment; None where it allows it, or where it only stands for "not named"."""
    limit = treatment_limits(material, treatment, grid)
    if limit.verdict != "never" or (material == UNKNOWN and treatment not in _UNNAMED):
        return None
    why = "the body is not named" if material == UNKNOWN else limit.reason
    return Change(material, f"No {treatment}: {why}.", True, "compatibility", limit.certainty)
