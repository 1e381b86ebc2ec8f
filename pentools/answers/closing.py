"""The order of work at the bench, and care."""

from __future__ import annotations

from pentools.answers.asking import Answer, Several, ask

__all__ = ["care", "order"]


def order(
    system: str | None,
    way: str | None = None,
    *,
    material: Several = None,
    fitted: Several = None,
    done: Several = None,
    tested: Several = None,
) -> Answer:
    """In which order a pen goes together or comes apart, with what is tested before the next step.

    Parameters
    ----------
    system : str | None
        Filling system; a key such as lever-sac.
    way : str | None
        Which way; one of close, open; close unless said.
    material : Several
        Body; such as celluloid; casein; unknown unless said, which takes the strictest.
    fitted : Several
        Sac, ring or cork; what was put in, such as latex sac; silicone sac; cork.
    done : Several
        Steps done; numbers or names, in the order they were done, such as 1; 2; 3.
    tested : Several
        Tests passed; of which steps the test has passed, such as 1; 2.

    Returns
    -------
    Answer
        Sentence, findings, table and data; its figure is a half page for the wall of the bench.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> [step["key"] for step in order("button-sac").data["steps"] if step["part"] == "pressure bar"]
    ['bar-in']
    """
    return ask("order", locals())


def care(system: str | None, *, material: Several = None, nib: str | None = None, fitted: Several = None) -> Answer:
    """What an owner is told of a pen: filling, ink, rinsing, keeping.

    Parameters
    ----------
    system : str | None
        Filling system; a key such as lever-sac.
    material : Several
        Body; cap and barrel, such as hard rubber; celluloid; unknown unless said, which takes the strictest.
    nib : str | None
        Nib; such as gold nib or steel nib.
    fitted : Several
        What was put in; such as latex sac; shellac joint; cork; rubber ring; glued crack.

    Returns
    -------
    Answer
        Sentence, findings, table and data; its figure is a half page for the wall of the bench.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> care("lever-sac", material="casein").data["never"][0]
    'soaking'
    """
    return ask("care", locals())
