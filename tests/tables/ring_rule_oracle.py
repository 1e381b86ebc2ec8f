"""The ring table's own check: a dash size follows a rule, so a wrong row shows without a second list.

Inside diameters of AS568 step through 32nds of an inch less a fixed allowance per family, and the steps only ever
grow within a family. Derived here from the sizes; the standard prints no such rule.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

__all__ = ["DASH_COUNT", "RowFault", "check_ring_rows", "dash_inside_in", "dash_section_in"]

DASH_COUNT = 349
MM_ROUNDING = 0.0051

# first dash of a run, its inside diameter in 32nds before the allowance, step in 32nds, last dash
_RUNS = (
    (6, 4, 1, 10), (10, 8, 2, 28), (28, 44, 4, 41), (41, 96, 8, 50),
    (102, 2, 1, 108), (108, 8, 2, 150), (150, 92, 4, 151), (151, 96, 8, 178),
    (201, 6, 2, 222), (222, 48, 4, 258), (258, 192, 8, 274), (274, 320, 16, 278), (278, 384, 32, 284),
    (309, 14, 2, 324), (324, 44, 4, 361), (361, 192, 8, 377), (377, 320, 16, 381), (381, 384, 32, 395),
    (425, 144, 4, 437), (437, 192, 8, 445), (445, 256, 16, 469), (469, 640, 32, 475),
)  # fmt: skip
_ALLOWANCE_IN = {0: 0.011, 1: 0.013, 2: 0.016, 3: 0.025, 4: 0.025}
_LARGE_ALLOWANCE_IN = ((22.9, 0.060), (15.9, 0.045))
_SECTION_IN = {0: 0.070, 1: 0.103, 2: 0.139, 3: 0.210, 4: 0.275}
# the five smallest follow no step: inside and section as every list has them
_SMALL_IN = {1: (0.029, 0.040), 2: (0.042, 0.050), 3: (0.056, 0.060), 4: (0.070, 0.070), 5: (0.101, 0.070)}


@dataclass(frozen=True, slots=True)
class RowFault:
    """A row that breaks the rule: its dash number and what is wrong with it."""

    dash: str
    reason: str


def dash_inside_in(dash: int) -> float | None:
    """Inside diameter of a dash size by the rule of steps.

    Parameters
    ----------
    dash : int
        Dash number.

    Returns
    -------
    float or None
        Inside diameter [in], rounded to 0.001; None where there is no such size.

    Examples
    --------
    >>> dash_inside_in(10), dash_inside_in(210), dash_inside_in(200)
    (0.239, 0.734, None)
    """
    if dash in _SMALL_IN:
        return _SMALL_IN[dash][0]
    for first, start, step, last in _RUNS:
        if first <= dash <= last:
            nominal = (start + step * (dash - first)) / 32
            allowance = next(
                (a for limit, a in _LARGE_ALLOWANCE_IN if nominal - a >= limit), _ALLOWANCE_IN[dash // 100]
            )
            return round(nominal - allowance, 3)
    return None


def dash_section_in(dash: int) -> float | None:
    """Section of a dash size by its family.

    Parameters
    ----------
    dash : int
        Dash number.

    Returns
    -------
    float or None
        Section [in]; None where there is no such size.
    """
    if dash in _SMALL_IN:
        return _SMALL_IN[dash][1]
    return _SECTION_IN[dash // 100] if dash_inside_in(dash) is not None else None


def check_ring_rows(rows: Sequence[Mapping[str, str]]) -> tuple[RowFault, ...]:
    """Every row of a ring table that cannot be right.

    Parameters
    ----------
    rows : sequence of mapping
        Rows with dash and inside_in; section_in, inside_mm and section_mm are checked where they are there.

    Returns
    -------
    tuple of RowFault
        At most one fault a row, in the table's order.

    Notes
    -----
    Inside diameters within 0.0011 in of the rule: the rule itself is exact to 0.0006 in, since 32nds are printed to a
    thousandth. Millimetres must be the inches times 25.4 to 0.005 mm.
    """
    faults = []
    seen: set[str] = set()
    for row in rows:
        reason = "it is there twice" if row["dash"] in seen else _fault(row)
        seen.add(row["dash"])
        if reason:
            faults.append(RowFault(row["dash"], reason))
    return tuple(faults)


def _fault(row: Mapping[str, str]) -> str:
    dash = int(row["dash"])
    inside, section = dash_inside_in(dash), dash_section_in(dash)
    if inside is None or section is None:
        return "there is no such size"
    if abs(float(row["inside_in"]) - inside) > 0.0011:
        return f"inside {row['inside_in']} in; by the steps of its family {inside:.3f} in"
    if row.get("section_in") and abs(float(row["section_in"]) - section) > 0.0005:
        return f"section {row['section_in']} in; its family has {section:.3f} in"
    for name in ("inside", "section"):
        if (
            row.get(f"{name}_mm")
            and row.get(f"{name}_in")
            and abs(float(row[f"{name}_mm"]) - 25.4 * float(row[f"{name}_in"])) > MM_ROUNDING
        ):
            return f"{name} {row[f'{name}_mm']} mm is not {row[f'{name}_in']} in"
    return ""
