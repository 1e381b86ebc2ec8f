"""What a stage of the job is: the kinds of entry it holds, and where its panel and its section are found."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from pentools.calc.base.findings import Finding
from pentools.errors import InputError, RecordError
from pentools.fields import Field, Value

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job

__all__ = ["Kind", "Stage", "StageState"]

GENERIC_PANEL = "pentools.panels.stage:StagePanel"
GENERIC_SECTION = "pentools.writeup.sections.generic:section"


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of entry.

    Parameters
    ----------
    key : str
        Its name in the record.
    title : str
        What the form is headed with.
    fields : tuple of Field
        What is asked.
    log : bool
        True where every entry counts (weighings, minutes); False where the newest stands for all (intake).
    public : bool
        Whether any of it may stand on the page for publication (then only the fields marked public).
    help : str
        One sentence above the form.
    """

    key: str
    title: str
    fields: tuple[Field, ...]
    log: bool = True
    public: bool = True
    help: str = ""

    def field(self, name: str) -> Field:
        """The field of that name."""
        for candidate in self.fields:
            if candidate.name == name:
                return candidate
        raise InputError("field", "one of " + ", ".join(f.name for f in self.fields), name)

    def read(self, texts: Mapping[str, str]) -> tuple[dict[str, Value], dict[str, InputError]]:
        """Read a whole form.

        Parameters
        ----------
        texts : mapping of str to str
            Field name to typed text.

        Returns
        -------
        values : dict
            Field name to value, for the fields that could be read.
        errors : dict
            Field name to the error, for those that could not.
        """
        values: dict[str, Value] = {}
        errors: dict[str, InputError] = {}
        for field in self.fields:
            try:
                values[field.name] = field.read(texts.get(field.name, ""))
            except InputError as error:
                errors[field.name] = error
        return values, errors

    def to_json(self, values: Mapping[str, Value]) -> dict[str, Any]:
        """Values as the record keeps them; what was not given is left out."""
        return {
            field.name: field.to_json(values[field.name]) for field in self.fields if values.get(field.name) is not None
        }

    def values(self, entry: Entry) -> dict[str, Value]:
        """The values of an entry of this kind; None where something was not given.

        Parameters
        ----------
        entry : Entry
            An entry of this kind.

        Returns
        -------
        dict
            Field name to value.

        Raises
        ------
        RecordError
            If another program wrote a value that is not of the field's form.
        """
        values: dict[str, Value] = {}
        for field in self.fields:
            try:
                values[field.name] = field.from_json(entry.data.get(field.name))
            except (AttributeError, KeyError, TypeError, ValueError) as error:
                raise RecordError(
                    f"{self.title}, entered {entry.at}: “{field.label}” holds a value that cannot be read."
                ) from error
        return values


@dataclass(frozen=True, slots=True)
class StageState:
    """Where a stage stands: a word (not begun / open / held / done) and, if there is one, the reason."""

    word: str
    reason: str = ""


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage of the job.

    Parameters
    ----------
    key : str
        Its name in the record and in the notebook's cell.
    title : str
        Its heading.
    purpose : str
        One sentence on what it is for.
    kinds : tuple of Kind
        Its kinds of entry.
    panel, section : str
        Where the panel class and the write-up function are found, as ``module:name``; loaded when used.
    state : callable or None
        Gives the stage's `StageState` for a job; by default from whether it has entries.
    checks : callable or None
        Gives findings for ``pentools check``.
    cautions : tuple of str
        Cautions shown with the stage.
    """

    key: str
    title: str
    purpose: str
    kinds: tuple[Kind, ...]
    panel: str = GENERIC_PANEL
    section: str = GENERIC_SECTION
    state: Callable[[Job], StageState] | None = None
    checks: Callable[[Job], tuple[Finding, ...]] | None = None
    cautions: tuple[str, ...] = ()

    def kind(self, key: str) -> Kind:
        """The stage's kind of that name."""
        for candidate in self.kinds:
            if candidate.key == key:
                return candidate
        raise InputError("kind of entry", "one of " + ", ".join(k.key for k in self.kinds), key)

    def state_of(self, job: Job) -> StageState:
        """Where this stage stands in a job."""
        if self.state is not None:
            return self.state(job)
        return StageState("open" if job.record.live(self.key) else "not begun")
