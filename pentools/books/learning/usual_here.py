"""What a filling system usually draws on this bench, offered beside the judged figure of the table and never in its place."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from pentools.calc.books.median import median_of
from pentools.numbers import percent

if TYPE_CHECKING:
    from pentools.calc.weighing.diagnosis import UsualShare

__all__ = ["ENOUGH_PENS", "usual_here"]

ENOUGH_PENS = 10
"""From ten pens on the least and the greatest of them hold (n - 1) / (n + 1) of further ones, 82 % or more; judged."""


def usual_here(shares: Sequence[float], table: UsualShare | None) -> tuple[dict[str, Any], str]:
    """The usual share by the table and by the bench's own mended pens.

    Parameters
    ----------
    shares : sequence of float
        What mended pens of one filling system draw of what they hold [1].
    table : UsualShare or None
        What the table states.

    Returns
    -------
    values, words : dict, str
        The table's, which every verdict goes by, and the bench's own as an alternative: its middle with its interval, and
        from the least to the greatest, with the share of further pens that such a range is to hold; that ten are wanted
        where there are fewer.

    Notes
    -----
    The bench's own pens were sent home as mended, mostly after a verdict by the table: they cannot show that the table
    is too strict, only where this bench's pens lie.
    """
    values: dict[str, Any] = {"usual_by_table": None, "usual_here": None}
    words = "no usual share in the table"
    if table is not None:
        values["usual_by_table"] = {
            "low": table.low, "typical": table.typical, "high": table.high, "certainty": table.certainty,
        }  # fmt: skip
        words = f"usual by the table {percent(table.low)} to {percent(table.high)} ({table.certainty})"
    n, middle = len(shares), median_of(shares)
    if middle is None or n < ENOUGH_PENS:
        values["usual_here"] = f"{ENOUGH_PENS} pens are wanted, there are {n}"
        return values, words
    holds = (n - 1) / (n + 1)
    low, high = min(shares), max(shares)
    values["usual_here"] = {
        "low": round(low, 4), "typical": round(middle.median, 4), "high": round(high, 4), "n": n, "holds_share": round(holds, 4),
        "stands": "beside the table: no verdict goes by it",
    }  # fmt: skip
    return values, f"{words}; on this bench {percent(low)} to {percent(high)}, to hold {percent(holds)} of further pens"
