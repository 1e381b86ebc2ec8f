"""Before a page for everybody is written, its text is compared with what is known of the owner and with what is the bench's own.

Each form of the write-up hands over its finished text; what is found there is traced to the cell, field or picture it
came from. A hit holds the page until it is taken out, or until a reason to show it stands in the record.
"""

from __future__ import annotations

import base64
import binascii
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from html.parser import HTMLParser
from typing import TYPE_CHECKING, Any
from urllib.parse import unquote

from pentools.errors import HoldError, InputError
from pentools.numbers import capital
from pentools.record.stages.job.intake_kinds import PASSED
from pentools.record.strangers import Found, OwnText, found_in, is_ordinary, own_fields, passed_over
from pentools.writeup.notebook import PublishedCell, StoryCell, cells_for, read_notebook
from pentools.writeup.photos import PhotoBook, public_files

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "Hit",
    "StrangersError",
    "check_public",
    "check_reason",
    "held_by_strangers",
    "hold_back",
    "own_texts",
    "pass_over",
    "text_of_markup",
]

_MOST_TOLD = 8
_INLINE = frozenset(
    [
        "a",
        "b",
        "i",
        "em",
        "strong",
        "span",
        "sub",
        "sup",
        "s",
        "del",
        "code",
        "tspan",
        "small",
        "mark",
        "abbr",
        "cite",
        "q",
        "u",
        "wbr",
    ]
)
_UNSEEN_TAGS = frozenset({"style", "script"})
_UNSEEN_ATTRIBUTES = frozenset(
    [
        "class",
        "id",
        "style",
        "d",
        "points",
        "transform",
        "viewbox",
        "for",
        "headers",
        "aria-labelledby",
        "aria-describedby",
        "xmlns",
    ]
)
_MARKUP = re.compile(r"<(?:!doctype|/?[a-z][a-z0-9]*)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Hit:
    """Something of the owner's or the bench's in a text for everybody.

    Parameters
    ----------
    place : str
        Where it stands, as the person knows it: ``story cell 3``, ``the caption of open-before.jpg``.
    found : Found
        What stands there.
    beginning : str
        The first words of the place, where they help to find it.
    """

    place: str
    found: Found
    beginning: str = ""

    @property
    def where(self) -> str:
        """The place with its first words."""
        return f"{self.place} (“{self.beginning}”)" if self.beginning else self.place

    @property
    def told(self) -> str:
        """One clause: where, which word, and what it is."""
        word = self.found.word if len(self.found.word) <= 90 else self.found.word[:89] + "…"
        return f"{self.where} has “{word}”, {self.found.about}"


class StrangersError(HoldError):
    """A page for everybody would show something of the owner's or the bench's.

    Parameters
    ----------
    hits : sequence of Hit
        What was found, at least one.
    form : str
        The form of the write-up, in words.
    """

    def __init__(self, hits: Sequence[Hit], form: str = "the page for publication") -> None:
        self.hits = tuple(hits)
        self.form = form
        super().__init__(_in_words(self.hits, form))

    @property
    def places_alone(self) -> str:
        """The same without the words found: for a page that may be sent on."""
        told = dict.fromkeys(f"{hit.place}: {hit.found.about}" for hit in self.hits)
        return f"{capital(self.form)} is held. " + "; ".join(list(told)[:_MOST_TOLD]) + "."


def check_public(
    job: Job, form: str, texts: Mapping[str, str], notebook: Mapping[str, Any] | None = None
) -> tuple[Hit, ...]:
    """What of the owner's or the bench's own stands in a form for everybody.

    Parameters
    ----------
    form : str
        The form's name, such as ``blog``; it only stands in what is told.
    texts : mapping of str to str
        Place to finished text (HTML, Markdown, plain): all that a stranger will see of the form.
    notebook : mapping or None
        The notebook the form was made from; by default the job's own.

    Returns
    -------
    tuple of Hit
        Each with the place it came from; without those that a reason was given for. A place given here is named only
        where no cell, field or picture holds the words. In the kit's own sentences an ordinary word is no hit.
    """
    del form
    names = [OwnText(f"the file name of {file}", file) for file in sorted(public_files(job))]
    finished = [OwnText(place, _plain(text)) for place, text in texts.items()] + names
    finished += _drawn(job, notebook)
    shown = [(own, found) for own in finished for found in found_in(job, own.text)]
    if not shown:
        return ()
    seen = {word for _, found in shown for word in found.key.split()}
    hits: list[Hit] = []
    traced: set[str] = set()
    for own in [*own_texts(job, notebook), *names]:
        for found in found_in(job, own.text):
            if set(found.key.split()) <= seen:
                traced.update(found.key.split())
                hits.append(Hit(own.place, found, own.beginning))
    hits += [
        Hit(own.place, found)
        for own, found in shown
        if not set(found.key.split()) <= traced and not is_ordinary(job, found)
    ]
    return tuple(hit for hit in hits if not passed_over(job, hit.found, hit.place))


def held_by_strangers(job: Job, form: str, texts: Mapping[str, str], notebook: Mapping[str, Any] | None = None) -> str:
    """Why a form for everybody may not be written; empty where it may. See `check_public`."""
    hits = check_public(job, form, texts, notebook)
    return _in_words(hits, form) if hits else ""


def hold_back(job: Job, form: str, texts: Mapping[str, str], notebook: Mapping[str, Any] | None = None) -> None:
    """Stop a form for everybody that shows something of the owner's or the bench's; see `check_public`.

    Raises
    ------
    StrangersError
        If there is a hit that no reason was given for.
    """
    hits = check_public(job, form, texts, notebook)
    if hits:
        raise StrangersError(hits, form)


def pass_over(job: Job, hits: Sequence[Hit], reason: str) -> None:
    """Enter a reason to show what was found: an entry each, which can be taken back like any other.

    Parameters
    ----------
    hits : sequence of Hit
        What may be shown, each among the words it stands in.
    reason : str
        Why, in a few words.

    Raises
    ------
    InputError
        If no reason is given; nothing is entered then.
    """
    check_reason(reason)
    done: set[tuple[str, str]] = set()
    for hit in hits:
        if (hit.found.key, hit.found.around) in done:
            continue
        done.add((hit.found.key, hit.found.around))
        said = {"word": hit.found.word, "place": hit.place, "around": hit.found.around, "reason": reason.strip()}
        job.add(PASSED.stage, PASSED.key, said)


def check_reason(reason: str) -> None:
    """Refuse a reason of fewer than two words (`InputError`)."""
    if len(reason.split()) < 2:
        raise InputError(
            "reason", "given in a few words", reason, "It stays in the record, where the owner may read it."
        )


def own_texts(job: Job, notebook: Mapping[str, Any] | None = None) -> Iterator[OwnText]:
    """Every text of somebody's own that may stand on a page for everybody, with its place.

    Parameters
    ----------
    notebook : mapping or None
        The notebook; by default the job's own.

    Yields
    ------
    OwnText
        Story cells and published outputs in the notebook's order, then the fields for everybody, then the bench's name.
    """
    content = read_notebook(job.notebook) if notebook is None else notebook
    yield from _cells(content)
    yield from own_fields(job)
    name = job.bench.text("bench", "name")
    if name:
        yield OwnText("the bench’s name in bench.toml", name)


def _cells(content: Mapping[str, Any] | None) -> Iterator[OwnText]:
    """Story cells are counted as they stand in the notebook; those that are private are counted and not compared."""
    public = list(cells_for(content, "everybody"))
    stories = outputs = 0
    for cell in cells_for(content, "owner"):
        if isinstance(cell, StoryCell):
            stories += 1
            if cell in public:
                yield OwnText(f"story cell {stories}", cell.text, _beginning(cell.text))
        elif isinstance(cell, PublishedCell):
            for output in cell.outputs:
                outputs += 1
                if cell in public:
                    yield OwnText(f"published output {outputs}", _plain(_output(output)))


def _drawn(job: Job, notebook: Mapping[str, Any] | None) -> Iterator[OwnText]:
    """What is written in the drawings among published outputs: a form shows them as pixels, which no text tells of."""
    content = read_notebook(job.notebook) if notebook is None else notebook
    photos = PhotoBook(job, "everybody")
    for cell in cells_for(content, "everybody") if photos.any_allowed() else ():
        for output in cell.outputs if isinstance(cell, PublishedCell) else ():
            data = output.get("data")
            if isinstance(data, Mapping) and "image/svg+xml" in data:
                yield OwnText("a published drawing", _plain(_output(output)))


def _output(output: Mapping[str, Any]) -> str:
    from pentools.writeup.outputs import published_html

    return published_html(output)


def _beginning(text: str) -> str:
    words = re.sub(r"[#*_>`\[\]!]|\(.*?\)", " ", text).split()
    return " ".join(words[:4]) + ("…" if len(words) > 4 else "")


def _in_words(hits: Sequence[Hit], form: str) -> str:
    told = list(dict.fromkeys(hit.told for hit in hits))
    more = f"; and {len(told) - _MOST_TOLD} more" if len(told) > _MOST_TOLD else ""
    return (
        f"{capital(form)} is held, because it would show something that is not for everybody: "
        + "; ".join(told[:_MOST_TOLD])
        + f'{more}. Take it out of the text; or, if it may stand there, give the reason: pentools writeup JOB --anyway "…". '
        "The reason goes into the record (Intake, “Shown all the same”) and covers these words at these places."
    )


class _Seen(HTMLParser):
    """What a stranger can read of a page: its text, its attributes, its comments, the text of drawings in it."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.parts: list[str] = []
        self.told: list[str] = []
        self._unseen = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in _UNSEEN_TAGS:
            self._unseen += 1
        if tag not in _INLINE:
            self.parts.append("\n")
        if "@" in tag or ":" in tag:  # an address between angle brackets in Markdown
            self.parts.append(f" {tag} ")
        told = [text for name, value in attrs if value and (text := _attribute(name, value))]
        self.told += told

    def handle_endtag(self, tag: str) -> None:
        if tag in _UNSEEN_TAGS:
            self._unseen = max(0, self._unseen - 1)
        if tag not in _INLINE:
            self.parts.append("\n")

    def handle_data(self, data: str) -> None:
        if not self._unseen:
            self.parts.append(data)

    def handle_comment(self, data: str) -> None:
        self.told.append(data)


def _attribute(name: str, value: str) -> str:
    if name.lower() in _UNSEEN_ATTRIBUTES or name.lower().startswith("xmlns"):
        return ""
    if value.startswith("data:"):
        head, _, body = value.partition(",")
        if "svg" not in head:
            return ""
        try:
            drawing = base64.b64decode(body).decode(errors="replace") if "base64" in head else unquote(body)
        except (binascii.Error, ValueError):
            return ""
        return text_of_markup(drawing)
    return unquote(value) if "%" in value else value


def text_of_markup(markup: str) -> str:
    """What can be read of HTML or SVG: text, attributes, comments, and the same of drawings embedded in it.

    Examples
    --------
    >>> text_of_markup('<p>Qu<b>ist</b></p><img alt="a pen">').split()
    ['Quist', 'a', 'pen']
    """
    reader = _Seen()
    reader.feed(markup)
    reader.close()
    return "\n".join(["".join(reader.parts), *reader.told])


def _plain(text: str) -> str:
    return text_of_markup(text) if _MARKUP.search(text) else text
