"""One piece of dating evidence: a feature, the dates that are known for it, and what that says about the pen."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from pentools.calc.dating.interval import EdtfInterval, Span
from pentools.errors import InputError

__all__ = ["CERTAINTIES", "KINDS", "Certainty", "Evidence", "EvidenceKind", "PartState"]

EvidenceKind = Literal["production", "date code", "price mark", "colour", "patent", "advert", "inscription", "opinion"]
PartState = Literal["original", "replaced", "unknown"]
Certainty = Literal["sure", "likely", "doubtful"]

KINDS: dict[EvidenceKind, str] = {
    "production": "made between these dates",
    "date code": "stamped with a date",
    "price mark": "the price was asked between these dates",
    "colour": "the colour was offered between these dates",
    "patent": "not before the patent's date; it says nothing of the end",
    "advert": "shown on sale then, which limits neither end for this pen",
    "inscription": "engraved then, so made no later",
    "opinion": "somebody's word, without a feature on the pen to show for it",
}
"""What each kind of evidence says about the date at which the pen was made."""

CERTAINTIES: dict[Certainty, int] = {"sure": 3, "likely": 2, "doubtful": 1}
"""What it costs to doubt one piece of evidence; judged: three doubtful ones weigh as much as a sure one."""


@dataclass(frozen=True, slots=True)
class Evidence:
    """One piece of evidence.

    Parameters
    ----------
    feature : str
        What was seen, such as ``clip`` or ``imprint, second line``.
    dates : EdtfInterval
        The dates known for it.
    kind : EvidenceKind
        What sort of evidence it is; see `KINDS`.
    certainty : Certainty
        How sure the dates are; see `CERTAINTIES`.
    part : PartState
        Whether the part is original to this pen.
    source : str
        Where the dates are known from.

    Raises
    ------
    InputError
        If the feature is empty, or a word is none of the known ones.
    """

    feature: str
    dates: EdtfInterval
    kind: EvidenceKind = "production"
    certainty: Certainty = "likely"
    part: PartState = "original"
    source: str = ""

    def __post_init__(self) -> None:
        if not self.feature.strip():
            raise InputError("feature", "named", self.feature, "Say what was seen, such as clip.")
        for name, value, known in (
            ("kind of evidence", self.kind, get_args(EvidenceKind)),
            ("certainty", self.certainty, get_args(Certainty)),
            ("part", self.part, get_args(PartState)),
        ):
            if value not in known:
                raise InputError(name, "one of " + ", ".join(known), value)

    @property
    def weight(self) -> int:
        """What it costs to doubt it [1 to 3]; a date marked ``?`` counts as doubtful."""
        return CERTAINTIES["doubtful" if self.dates.uncertain else self.certainty]

    @property
    def spans(self) -> tuple[Span, ...]:
        """The days at which the pen may have been made, as far as this evidence goes.

        Notes
        -----
        A patent is "not before" its first day; an inscription "not after" its last; an advert shows a model on sale
        and limits neither end of one pen's date (advertising art was used again for ten years and more: a collectors'
        page). All other kinds are taken as they stand.
        """
        match self.kind:
            case "patent":
                return ((self.dates.first_day, None),)
            case "inscription":
                return ((None, self.dates.last_day),)
            case "advert":
                return ((None, None),)
            case _:
                return self.dates.spans

    @property
    def limits_nothing(self) -> bool:
        """Whether it allows any date."""
        return self.spans == ((None, None),)
