"""What a stage of the job is: the kinds of entry it holds, and where its panel and its section are found."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Generic

from pentools.calc.base.findings import Finding
from pentools.errors import InputError, RecordError
from pentools.fields import Audience, Field, Value
from pentools.record.entries import OddEntry
from pentools.record.forms import F, F_co, fields_of, form_with

if TYPE_CHECKING:
    from pentools.record.entries import Entry

__all__ = ["Kind", "Stage", "StageState"]

GENERIC_PANEL = "pentools.panels.stage:StagePanel"
GENERIC_SECTION = "pentools.writeup.sections.generic:section"
_SEEN_BY: dict[Audience, tuple[Audience, ...]] = {
    "bench": ("bench", "owner", "everybody"),
    "owner": ("owner", "everybody"),
    "everybody": ("everybody",),
}


@dataclass(frozen=True, slots=True)
class Kind(Generic[F_co]):
    """A kind of entry.

    Parameters
    ----------
    stage : str
        The key of its stage.
    key : str
        Its name in the record.
    title : str
        What the form is headed with.
    form : type of Form
        What an entry holds; its attributes are the fields asked.
    log : bool
        True where every entry counts (weighings, minutes); False where the newest stands for all (intake).
    help : str
        One sentence above the form.
    """

    stage: str
    key: str
    title: str
    form: type[F_co]
    log: bool = True
    help: str = ""

    @property
    def fields(self) -> tuple[Field, ...]:
        """What is asked, in the order of the form."""
        return fields_of(self.form)

    def field(self, name: str) -> Field:
        """The field of that name."""
        for candidate in self.fields:
            if candidate.name == name:
                return candidate
        raise InputError("field", "one of " + ", ".join(f.name for f in self.fields), name)

    def fields_for(self, reader: Audience) -> tuple[Field, ...]:
        """The fields that a reader may see: the bench all of them, everybody only those meant for everybody."""
        return tuple(field for field in self.fields if field.audience in _SEEN_BY[reader])

    def read(
        self, texts: Mapping[str, str], own_money: str = "", decimal_sign: str = ".", date_order: str = ""
    ) -> tuple[dict[str, Value], dict[str, InputError]]:
        """Read a whole form.

        Parameters
        ----------
        texts : mapping of str to str
            Field name to typed text.
        own_money : str
            The bench's own currency, for amounts typed without one.
        decimal_sign, date_order : str
            The bench's own, as for `Field.read`.

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
                values[field.name] = field.read(texts.get(field.name, ""), own_money, decimal_sign, date_order)
            except InputError as error:
                errors[field.name] = error
        return values, errors

    def to_json(self, values: Mapping[str, Value]) -> dict[str, Any]:
        """Values as the record keeps them; what was not given is left out."""
        return {
            field.name: field.to_json(values[field.name]) for field in self.fields if values.get(field.name) is not None
        }

    def filled(self, values: Mapping[str, Value]) -> F_co:
        """The form filled with values that were read already."""
        return form_with(self.form, values)

    def decode(self, entry: Entry) -> F_co:
        """What an entry of this kind holds; None where something was not given.

        Parameters
        ----------
        entry : Entry
            An entry of this kind.

        Returns
        -------
        Form
            The kind's own form.

        Raises
        ------
        RecordError
            If the entry is odd as a whole, or another program wrote a value that is not of the field's form; the text
            says which.
        """
        if isinstance(entry, OddEntry):
            raise RecordError(f"{self.title}, entered {entry.at}: this entry cannot be read: {entry.reason}.")
        try:
            return self.filled({field.name: field.from_json(entry.data.get(field.name)) for field in self.fields})
        except InputError as error:
            raise RecordError(f"{self.title}, entered {entry.at}: {error}") from error


def as_dict(kind: Kind[F], form: F) -> dict[str, Value]:
    """A form's values by name."""
    return {field.name: getattr(form, field.name) for field in kind.fields}


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
        Takes the `Job` (which knows kinds, so that this module cannot know it) and gives the stage's `StageState` for a job; by default from whether it has entries.
    checks : callable or None
        Takes the `Job` and gives findings for ``pentools check``.
    cautions : tuple of str
        Cautions shown with the stage.
    hold : str
        The hold point that the whole stage waits for, by its key; whether it stands is asked above the stages.
    held_from_start : bool
        Whether the stage counts as held before anything is entered in it.
    """

    key: str
    title: str
    purpose: str
    kinds: tuple[Kind[Any], ...]
    panel: str = GENERIC_PANEL
    section: str = GENERIC_SECTION
    state: Callable[[Any], StageState] | None = None
    checks: Callable[[Any], tuple[Finding, ...]] | None = None
    cautions: tuple[str, ...] = ()
    hold: str = ""
    held_from_start: bool = False

    def kind(self, key: str) -> Kind[Any]:
        """The stage's kind of that name."""
        for candidate in self.kinds:
            if candidate.key == key:
                return candidate
        raise InputError("kind of entry", "one of " + ", ".join(k.key for k in self.kinds), key)

    def state_of(self, job: Any) -> StageState:
        """Where this stage stands in a job by its own entries; `holds.state_of` also knows its hold point."""
        if self.state is not None:
            return self.state(job)
        return StageState("open" if job.record.live(self.key) else "not begun")
