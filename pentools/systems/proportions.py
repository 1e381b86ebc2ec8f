"""Every dimension that a drawing uses, with what was measured told from what was taken as typical."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Proportions"]


@dataclass(frozen=True, slots=True)
class Proportions:
    """Every dimension the drawing uses, as a plain number [mm].

    Parameters
    ----------
    values : dict of str to float
        Dimension name without the unit -> [mm].
    assumed : frozenset of str
        Names that were not measured.
    """

    values: dict[str, float]
    assumed: frozenset[str]

    def __getitem__(self, dimension: str) -> float:
        return self.values[dimension]

    def radius(self, dimension: str) -> float:
        """Half of a diameter.

        Parameters
        ----------
        dimension : str
            Name of a diameter.

        Returns
        -------
        float
            Radius [mm].
        """
        return self.values[dimension] / 2.0
