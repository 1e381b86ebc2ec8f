"""A box for one field: its label above, a hint and, when needed, an error in words below; the text is kept."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Sequence
from dataclasses import replace
from html import escape
from typing import Any

import ipywidgets as widgets

from pentools.errors import InputError
from pentools.fields import Field, Value
from pentools.panels.guard import is_enter
from pentools.panels.ticks_box import TicksBox

__all__ = ["FieldBox", "with_own_unit"]

_TYPED_UNIT = re.compile(r"[^\d\s.,;:+±/−-]")
_WIDE = ("long text", "items", "ticks")


def with_own_unit(field: Field, text: str) -> str:
    """What was typed, with the box's own unit where it was a bare number.

    Parameters
    ----------
    field : Field
        What is asked.
    text : str
        What was typed.

    Returns
    -------
    str
        For a length, a mass, a time and the like "8,1" becomes "8,1 mm"; a share stays as it is, since 45 may be
        meant as per cent.
    """
    bare = text.strip().rstrip(";").rstrip()
    if field.kind not in ("quantity", "quantities") or field.unit in ("", "1") or not re.search(r"\d", bare):
        return text
    return text if _TYPED_UNIT.search(bare) else f"{bare} {field.unit}"


class FieldBox:
    """The box a person types one field into.

    Parameters
    ----------
    field : Field
        What is asked.
    on_enter : callable
        Called when Enter is pressed in the box.
    files : tuple of str
        For a photo: the names of the files there are.
    read : callable
        Takes the field and a text, as it will be read when it is saved.
    """

    def __init__(
        self,
        field: Field,
        on_enter: Callable[[], None],
        files: tuple[str, ...] = (),
        read: Callable[[Field, str], Value] = Field.read,
    ) -> None:
        self.field, self._every, self._read = field, field.choices, read
        self._on_enter = on_enter
        self.input = self._make_input(files)
        self.message = widgets.HTML()
        self.widget = widgets.VBox([self.input, self.message])
        self.widget.add_class("pt-field")
        if field.kind in _WIDE:
            self.widget.add_class("pt-wide")
        if field.kind in ("quantity", "quantities", "date"):
            self.input.observe(self._say_how_read, "value")
        self.show_hint()

    def _make_input(self, files: tuple[str, ...]) -> Any:
        label = self.field.label + (" *" if self.field.required else "")
        common = {"description": label, "style": {"description_width": "auto"}, "layout": {"width": "100%"}}
        box: Any
        if self.field.kind == "choice":
            options = [("choose …", ""), *((text, key) for key, text in self.field.choices)]
            box = widgets.Dropdown(options=options, value=self.field.default, **common)
        elif self.field.kind == "ticks":
            return TicksBox(self.field.choices, description=label)
        elif self.field.kind == "yes-no":
            box = widgets.Dropdown(
                options=[("not said", ""), ("yes", "yes"), ("no", "no")], value=self.field.default, **common
            )
        elif self.field.kind == "long text":
            box = widgets.Textarea(value=self.field.default, continuous_update=True, **common)
        elif self.field.kind == "photo":
            return self._listing(files, label)
        else:
            box = widgets.Text(value=self.field.default, continuous_update=True, **common)
        box.on_msg(self._heard)
        return box

    def _heard(self, _: Any, content: Any, __: Any) -> None:
        if is_enter(content):
            self._on_enter()

    @property
    def text(self) -> str:
        """The text in the box."""
        return str(self.input.value or "")

    @text.setter
    def text(self, value: str) -> None:
        """Put a text into the box; one that is no choice of the field leaves it empty."""
        if self.field.kind == "choice":
            if value not in dict(self._every):
                value = ""
            elif value not in dict(self.field.choices):
                self.offer((*dict(self.field.choices), value))
        self.input.value = value

    def offer(self, keys: Collection[str]) -> None:
        """Offer only some of a choice's own, in their order, and what stands in the box already.

        Parameters
        ----------
        keys : collection of str
            Keys of the choices.
        """
        kept = self.text
        choices = tuple(choice for choice in self._every if choice[0] in keys or choice[0] == kept)
        if choices == self.field.choices:
            return
        self.field = replace(self.field, choices=choices)
        self.input.options = [("choose …", ""), *((text, key) for key, text in choices)]
        self.input.value = kept

    def propose(self, texts: Sequence[str]) -> None:
        """Let a box for text list what is known; anything else may be typed all the same.

        Parameters
        ----------
        texts : sequence of str
            What is listed as one types.
        """
        wanted = tuple(dict.fromkeys(texts))
        if not isinstance(self.input, widgets.Combobox):
            if not wanted or self.field.kind != "text":
                return
            kept = self.text
            self.input = self._listing(wanted, self.input.description)
            self.input.value = kept
            self.widget.children = (self.input, self.message)
        if self.input.options != wanted:
            self.input.options = wanted

    def _listing(self, options: Sequence[str], label: str) -> widgets.Combobox:
        box = widgets.Combobox(
            options=tuple(options), ensure_option=False, continuous_update=True, description=label,
            style={"description_width": "auto"}, layout={"width": "100%"},
        )  # fmt: skip
        box.on_msg(self._heard)
        return box

    def suggest(self, text: str) -> None:
        """Put a text into a box that holds nothing of the person's own; it counts as its default: offered, not typed."""
        if self.text in ("", self.field.default):
            self.text = text
        self.field = replace(self.field, default=text)

    @property
    def given(self) -> str:
        """The text in the box as it is read: a bare number in the box's own unit."""
        return with_own_unit(self.field, self.text)

    def _say_how_read(self, _: Any) -> None:
        """Beside a bare number, or a day in words, stands what it is taken for."""
        given = self.given
        try:
            words = self.field.shown(self._read(self.field, given))
        except InputError:
            words = given
        if words == given.strip() or (given == self.text and self.field.kind != "date") or not given.strip():
            self.show_hint()
        else:
            self.message.value = f'<span class="pt-hint pt-read-as">read as {escape(words)}</span>'

    def show_hint(self) -> None:
        """Show the hint where an error may have stood."""
        self.message.value = f'<span class="pt-hint">{escape(self.field.hint)}</span>' if self.field.hint else ""

    def show_error(self, text: str) -> None:
        """Show an error in words; the typed text stays."""
        self.message.value = f'<span class="pt-error" role="alert">✗ {escape(text)}</span>'

    def clear(self) -> None:
        """Empty the box, or set it to its default again."""
        self.text = self.field.default
        self.show_hint()
