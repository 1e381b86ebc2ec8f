"""Reading grades as people type them: a scale is always asked for, a bare number never accepted."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable

from pentools.calc.finish.grades import CLOTH, Catalogue, Grade, cloth_grade, sized_grade
from pentools.errors import InputError
from pentools.numbers import plain

__all__ = ["ACCEPTED", "bare_size", "meanings_of", "read_grade", "read_grades"]

ACCEPTED = "a grade with its scale, like P400, film 9 um, paste 1 um, cushioned cloth 4000, CAMI 320, JIS 1000 electrical or F400"
"""What a typed grade looks like."""

_CAMI_LAST = 600
_JUST_NUMBER = re.compile(r"#?\s*(\d+(?:[.,]\d+)?)\s*(?:grit|grade|mesh size)?", re.IGNORECASE)
_MICROMETRES = r"(\d+(?:[.,]\d+)?)\s*(?:um|µm|μm|microns?|micrometres?|micrometers?)"
_SIZED = {
    "film": ("film", "film"), "lapping film": ("film", "film"), "micron film": ("film", "film"),
    "paste": ("paste", "paste"), "diamond paste": ("paste", "paste"), "diamond": ("paste", "paste"),
    "alumina": ("paste", "paste"), "polish": ("paste", "paste"), "compound": ("paste", "paste"),
}  # fmt: skip
_NUMBERED = (
    (re.compile(r"(?:FEPA[ -]?)?P[ -]?(\d+)", re.IGNORECASE), "P"),
    (re.compile(r"(?:FEPA[ -]?)?F[ -]?(\d+)", re.IGNORECASE), "F"),
    (re.compile(r"(?:CAMI|ANSI)[ -]?(\d+)", re.IGNORECASE), "CAMI"),
    (re.compile(r"(?:mesh|sieve)(?: no\.?)?[ -]?(\d+)", re.IGNORECASE), "mesh"),
)
_CLOTH_NAME = r"(?:(?:cushioned|cushion|soft-backed)(?: cloth| pad)?|cloth)"
_CLOTH = re.compile(rf"{_CLOTH_NAME}[ -]?#?(\d+)(?:\s*=\s*(.+))?", re.IGNORECASE)
_CLOTH_FIGURE = re.compile(rf"(?:(grain|particle|finish(?:es like)?) )?{_MICROMETRES}", re.IGNORECASE)
_JIS = re.compile(r"JIS\s*#?\s*(\d+)\s*(?:[(,]?\s*(elec\w*(?:[ -]resistance)?|sed\w*)\s*\)?)?", re.IGNORECASE)
_RUN = re.compile(r"(.*?)(\d+)\s*(?:to|–|\.\.\.?|-)\s*([a-zA-Z ]*?)(\d+)(\s+\w+)?", re.IGNORECASE)


def meanings_of(number: str, catalogue: Catalogue) -> tuple[Grade, ...]:
    """Every grade that a bare number could mean.

    Parameters
    ----------
    number : str
        The number as typed.
    catalogue : Catalogue
        Where to look.

    Returns
    -------
    tuple of Grade
        The grades of that name in all scales but film, coarsest first; none above 600 for CAMI.

    Notes
    -----
    A bare 400 runs from 17 to 38 µm, a bare 600 from 9 to 26 µm.
    """
    found = [g for g in catalogue.grades if g.name == number and g.scale not in ("film", "paste", CLOTH)]
    cloth = catalogue.find(CLOTH, number)
    found += [cloth] if cloth is not None else []
    return tuple(sorted(found, key=lambda g: -g.particle_um))


def bare_size(text: str) -> bool:
    """Whether a text is micrometres alone, which are read as film."""
    return re.fullmatch(_MICROMETRES, text.strip(), re.IGNORECASE) is not None


def read_grade(text: str, catalogue: Catalogue) -> Grade:
    """One grade as typed.

    Parameters
    ----------
    text : str
        Scale and grade: ``P400``, ``CAMI 320``, ``JIS 1000 electrical``, ``F400``, ``film 9 um``, ``paste 1 um``,
        ``paste tripoli``, ``mesh 325``, ``cushioned cloth 4000``, or a cloth with the bench's own figures,
        ``cushioned cloth 4000 = 9 um, finish 7 um``. Micrometres alone are read as film.
    catalogue : Catalogue
        Where to look.

    Returns
    -------
    Grade
        The grade.

    Raises
    ------
    InputError
        If the number stands alone (the answer lists what it could mean), CAMI is above 600, the test method of
        JIS is missing, or the scale has no such grade.
    """
    clean = re.sub(r"\s+", " ", text.strip())
    bare = _JUST_NUMBER.fullmatch(clean)
    if bare:
        raise _bare_number(text, bare[1], catalogue)
    for pattern, scale in _NUMBERED:
        found = pattern.fullmatch(clean)
        if found:
            return _known(text, scale, found[1], catalogue)
    cloth = _CLOTH.fullmatch(clean)
    if cloth:
        return _cloth(text, int(cloth[1]), cloth[2], catalogue)
    jis = _JIS.fullmatch(clean)
    if jis:
        return _jis(text, jis, catalogue)
    sized = _sized(clean, catalogue)
    if sized is not None:
        return sized
    paste = catalogue.find("paste", re.sub(r"^(?:paste|polish)\s+", "", clean, flags=re.IGNORECASE))
    if paste is not None:
        return paste
    raise InputError("grade", ACCEPTED, text)


def read_grades(texts: str | Iterable[str], catalogue: Catalogue) -> tuple[Grade, ...]:
    """Several grades, one after another; a run such as ``P600 to P1200`` gives every grade in it.

    Parameters
    ----------
    texts : str or iterable of str
        One text with semicolons, or several texts.
    catalogue : Catalogue
        Where to look.

    Returns
    -------
    tuple of Grade
        The grades in the order typed, each only once.

    Raises
    ------
    InputError
        If one of them cannot be read, or nothing was typed.
    """
    parts = texts.split(";") if isinstance(texts, str) else list(texts)
    grades: dict[tuple[str, str], Grade] = {}
    for part in (p.strip() for p in parts):
        if not part:
            continue
        for grade in _run(part, catalogue) or (read_grade(part, catalogue),):
            grades[(grade.scale, grade.name)] = grade
    if not grades:
        raise InputError("grades", ACCEPTED, "", "Name at least one grade; separate several with a semicolon.")
    return tuple(grades.values())


def _bare_number(text: str, number: str, catalogue: Catalogue) -> InputError:
    meanings = meanings_of(number, catalogue)
    if not meanings:
        return InputError("grade", ACCEPTED, text, "A number alone says nothing: which scale is it?")
    listed = ", ".join(
        f"{g.label} ({plain(g.particle_um, 3)} µm"
        + (f", finishes like {plain(g.finish_um, 3)} µm)" if g.soft_backed else ")")
        for g in meanings
    )
    above = f" Above {_CAMI_LAST} a number has no CAMI meaning." if float(number.replace(",", ".")) > _CAMI_LAST else ""
    return InputError("grade", ACCEPTED, text, f"Which scale? {number} could mean {listed}.{above}")


def _known(text: str, scale: str, number: str, catalogue: Catalogue) -> Grade:
    if scale == "CAMI" and int(number) > _CAMI_LAST:
        raise InputError(
            "grade", f"a CAMI grade up to {_CAMI_LAST}", text,
            "ANSI B74.18 ends at 600, so a bare or CAMI number above it has no agreed size: "
            "look on the sheet for a P, a JIS number or micrometres.",
        )  # fmt: skip
    grade = catalogue.find(scale, str(int(number)))
    if grade is None:
        known = sorted(catalogue.in_scale(scale), key=lambda g: abs(math.log(int(g.name) / max(int(number), 1))))
        near = " or ".join(g.label for g in sorted(known[:2], key=lambda g: int(g.name)))
        raise InputError("grade", f"a grade that {scale} has", text, f"The nearest are {near}." if near else "")
    return grade


def _cloth(text: str, number: int, own: str | None, catalogue: Catalogue) -> Grade:
    if own is None:
        return cloth_grade(number, catalogue)
    figures: dict[str, float] = {}
    for part in re.split(r"\s*(?:, |;| and )\s*", own.strip()):
        found = _CLOTH_FIGURE.fullmatch(part)
        which = "finish" if found and (found[1] or "").casefold().startswith("finish") else "grain"
        if found is None or which in figures:
            raise InputError(
                "own figures of a cloth",
                f"its grain, its finish or both, like cushioned cloth {number} = 9 um, finish 7 um",
                text,
            )
        figures[which] = float(found[2].replace(",", "."))
    return cloth_grade(number, catalogue, particle_um=figures.get("grain"), finish_um=figures.get("finish"))


def _jis(text: str, found: re.Match[str], catalogue: Catalogue) -> Grade:
    number, method = found[1], (found[2] or "").casefold()
    both = [catalogue.find(f"JIS {kind}", number) for kind in ("electrical", "sedimentation")]
    if method:
        return _known(text, "JIS electrical" if method.startswith("elec") else "JIS sedimentation", number, catalogue)
    listed = " or ".join(f"{g.label} ({plain(g.particle_um, 3)} µm)" for g in both if g is not None)
    advice = f"JIS R 6001 has two test methods: type {listed}." if listed else ""
    raise InputError("grade", "a JIS grade with its test method", text, advice)


def _sized(clean: str, catalogue: Catalogue) -> Grade | None:
    words = "|".join(sorted(_SIZED, key=len, reverse=True))
    found = re.fullmatch(rf"(?:({words}) )?{_MICROMETRES}(?: ({words}))?", clean, re.IGNORECASE)
    if found is None:
        return None
    word = (found[1] or found[3] or "film").casefold()
    scale, medium = _SIZED[word]
    size = float(found[2].replace(",", "."))
    known = catalogue.find(scale, f"{size:g}")
    return known or sized_grade(size, scale=scale, medium=medium)


def _run(text: str, catalogue: Catalogue) -> tuple[Grade, ...] | None:
    found = _RUN.fullmatch(text)
    if found is None:
        return None
    head, first, middle, last, tail = (part or "" for part in found.groups())
    if middle.strip() and middle.strip().casefold() != head.strip().casefold():
        return None
    if re.fullmatch(_CLOTH_NAME, head.strip(), re.IGNORECASE):
        raise InputError(
            "grades", "each cushioned cloth by itself, like cushioned cloth 4000; cushioned cloth 8000", text,
            "Its numbers lie on a curve, so a run from one to another names no cloths in between.",
        )  # fmt: skip
    ends = [read_grade(f"{head}{number}{tail}", catalogue) for number in (first, last)]
    if ends[0].scale != ends[1].scale or ends[0].medium in ("paste", "film"):
        return None
    high, low = max(e.particle_um for e in ends), min(e.particle_um for e in ends)
    return tuple(g for g in catalogue.in_scale(ends[0].scale) if low <= g.particle_um <= high)
