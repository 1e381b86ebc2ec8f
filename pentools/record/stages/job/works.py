"""Kinds of work: which stages and which forms stand on the sheet at once, and which are folded under "further"."""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["ASKED_OF_OWNER", "FORMS_AT_ONCE", "STAGES_AT_ONCE", "WORKS", "forms_at_once"]

WORKS: tuple[tuple[str, str], ...] = (
    ("re-sac", "a new sac"),
    ("cork or ring", "a new cork or ring on a piston"),
    ("diaphragm", "a diaphragm or a pump"),
    ("plunger", "a plunger's washer and packing"),
    ("nib only", "the nib only"),
    ("finish only", "the finish only"),
    ("whole", "a whole restoration"),
    ("look", "a look only"),
)

_FRAME = ("intake", "condition", "agree")
_END = ("work log", "limits", "pictures", "release")
_FILLER = (*_FRAME, "open", "seal", "closing", "fill test", *_END)
STAGES_AT_ONCE: Mapping[str, tuple[str, ...]] = {
    "re-sac": _FILLER,
    "cork or ring": _FILLER,
    "diaphragm": _FILLER,
    "plunger": _FILLER,
    "nib only": (*_FRAME, "nib", *_END),
    "finish only": (*_FRAME, "finish", *_END),
    "look": (*_FRAME, "pictures", "release"),
}
"""Kind of work -> the stages that stand on the sheet; one that is not named here has them all."""

_MENDS = ("heat", "soak", "sealant", "replace part", "publish", "pictures")
ASKED_OF_OWNER: Mapping[str, tuple[str, ...]] = {
    "re-sac": _MENDS,
    "cork or ring": _MENDS,
    "diaphragm": _MENDS,
    "plunger": _MENDS,
    "nib only": ("heat", "nib work", "publish", "pictures"),
    "finish only": ("polish", "publish", "pictures"),
    "look": ("publish", "pictures"),
}
"""Kind of work -> what the owner is asked for a yes to; one that is not named here asks for everything."""

FORMS_AT_ONCE: Mapping[str, tuple[str, ...]] = {
    "intake": ("owner", "arrival", "request"),
    "identify": ("mark", "evidence", "identity"),
    "agree": ("yes", "proposal", "estimate"),
    "open": ("joint", "heat pass", "step"),
    "clean": ("bath", "soak started", "soak ended", "drying"),
    "work log": ("work", "material"),
    "repairs": ("repair", "test spot", "sent out", "back again"),
    "seal": ("measure", "trial", "sealant", "test"),
    "closing": ("order",),
    "fill test": ("weighing", "leak check", "dimensions"),
    "nib": ("loupe", "adjust", "smoothing", "writing test"),
    "finish": ("zone", "masks on", "plan", "step"),
    "release": ("result",),
}
"""Stage -> the forms offered at once; the rest stand under "more". A stage that is not named here offers all."""


def forms_at_once(stage: str, forms: tuple[str, ...]) -> tuple[str, ...]:
    """The forms of a stage that are offered at once, in their order; all where nothing is said of the stage.

    Parameters
    ----------
    stage : str
        The stage's key.
    forms : tuple of str
        The keys of its forms.

    Returns
    -------
    tuple of str
        Keys; never none of them.
    """
    wanted = FORMS_AT_ONCE.get(stage, forms)
    return tuple(key for key in wanted if key in forms) or forms
