"""What a page for everybody must not say: what is known of the owner, names engraved on the pen, what is the bench's own.

Every line of the record counts, corrected and withdrawn ones too: a name that was mistyped once is still a name.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from pentools.record.addresses import told_of_address
from pentools.record.entries import RELEASE, WITHDRAWAL, Entry, OddEntry
from pentools.record.registry import all_stages
from pentools.record.stages.dating.kinds import MARK, Mark
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.agree_kinds import ANSWER, YES
from pentools.record.stages.job.intake_kinds import ARRIVAL, CONSENT, OWNER, PART_CONDITION, PASSED
from pentools.record.stages.job.posting_kinds import PARCEL
from pentools.record.stages.job.work_kinds import MATERIAL
from pentools.record.stages.repairs.kinds import OUT, REPAIR
from pentools.record.view import once_a_state
from pentools.record.wording import Word, digits_in, fold, seen_text, spellings, without_spaces, words_of

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.job import Job

__all__ = ["Fact", "FactKind", "engraving_shown", "facts_of", "is_engraved_name", "mark_for_everybody"]

FactKind = Literal["name", "words", "mail", "telephone", "run"]

_TITLES = frozenset(
    re.findall(
        r"\w+",
        "mr mrs ms miss mx dr prof professor sir dame lady lord rev herr frau madame monsieur mme signor signora "
        "senor senora the and und van von der den del della das dos for from with née nee geb junior senior estate "
        "family widow late owner keeper heir heirs executor solicitor agent friend neighbour neighbor himself "
        "herself themselves his her their your our son daughter brother sister mother father wife husband partner "
        "uncle aunt cousin niece nephew grandson granddaughter grandfather grandmother child children parents who "
        "speaks behalf via per care only himself letter letters mail email post phone telephone telefon tel fax "
        "mobile cell call text word mouth home work office reach evenings mornings afternoon weekdays weekends "
        "please not never after before until between any time best person shop street road house flat unknown none "
        "said yes town country name named withheld unnamed anonymous client customer ",
    )
)
_PARTICLES = frozenset({"van", "von", "der", "den", "de", "del", "della", "di", "da", "das", "dos", "du", "la", "le", "mac", "mc", "st", "ter", "ten", "zu", "al", "el", "bin", "ben"})  # fmt: skip
_TOO_SHORT = 3  # letters of a part of a name that is looked for whatever its case
_GENERIC_BOXES = frozenset(
    re.findall(
        r"\w+",
        "info mail post contact office hello kontakt admin email home letters pens write ",
    )
)
_SHOWN_OF_BENCH = {("bench", key) for key in ("name", "language", "decimal_sign", "date_order", "paper")} | {
    ("money", "currency")
}
_TAG = re.compile(r"<[^<>]*>")
_NO_NAME = re.compile(r"[<>{}=|\\]")
_LEAST_SENTENCE = 4  # words of a text that a run is looked for of
_MAIL = re.compile(r"(?<![\w.+-])[\w.+-]++\s?@\s?[\w-]++(?:\.[\w-]++)+")
_HANDLE = re.compile(r"(?<![\w.])@[\w.]{3,}")
_DAY = re.compile(r"\d{4}-\d\d-\d\d(?:[T ][\d:+.]+)?|\d{1,2}\.\s?\d{1,2}\.\s?\d{4}")
_ENGRAVED = re.compile(
    r"(?i)\b(?:engrav|dedicat|monogram|inscri|initials|presentation|scratched name|name of (?:the|an|its) )"
)
_QUOTED = re.compile(r"[“\"„«‘']([^“”\"„«»‘’']{2,80})[”\"“»’']")
_CAPITALS = re.compile(r"(?:[^\W\d_a-zß-ÿ][\w.’'-]*(?:\s+(?:and|&|von|van|de)\s+|\s+))*[^\W\d_a-zß-ÿ][\w.’'-]*")


@dataclass(frozen=True, slots=True, eq=False)
class Fact:
    """One thing that a page for everybody must not say.

    Parameters
    ----------
    about : str
        What it is, in words: ``part of the owner’s name``.
    kind : {"name", "words", "mail", "telephone", "run"}
        How it is looked for: one word of a name; words in this order; a mail address; figures whatever parts them; a
        run of these words.
    words : tuple of str
        As compared; for a telephone its significant figures.
    as_typed : str
        A name of two letters is looked for only as it was typed; empty for all others.
    owners : bool
        For a run: that the owner may read it, so that only a long one is asked about.
    """

    about: str
    kind: FactKind
    words: tuple[str, ...]
    as_typed: str = ""
    owners: bool = False


@once_a_state
def facts_of(job: Job) -> tuple[Fact, ...]:
    """Everything known that is not for everybody.

    Returns
    -------
    tuple of Fact
        Each once: names and their parts, addresses, telephone numbers, engraved names without consent, and the texts
        of fields that are for the bench or the owner.
    """
    found: dict[tuple[FactKind, tuple[str, ...]], Fact] = {}
    told = (fact for entry in job.record.entries for fact in _of_entry(job, entry))
    for fact in (*told, *_of_bench(job.bench)):
        if any(fact.words):
            found.setdefault((fact.kind, fact.words), fact)
    return tuple(found.values())


def is_engraved_name(mark: Mark) -> bool:
    """Whether a mark is somebody's name or dedication: as was said, else wherever its words speak of an engraving."""
    if mark.engraved_name is not None:
        return mark.engraved_name
    return bool(_ENGRAVED.search(" ".join(text for text in (mark.where, mark.text, mark.read_with) if text)))


def engraving_shown(job: Job) -> bool:
    """Whether the owner agreed that a name engraved on the pen may be shown; the newest word counts."""
    return consents(job).get("engraving") is True


def mark_for_everybody(job: Job, mark: Mark) -> bool:
    """Whether a mark may stand on a page for everybody: no one's name, or with the owner's yes."""
    return not is_engraved_name(mark) or engraving_shown(job)


_LOT = ("lot", "the source and lot of a material")
_CODES = {
    (MATERIAL.stage, MATERIAL.key): _LOT,
    (REPAIR.stage, REPAIR.key): _LOT,
    (PARCEL.stage, PARCEL.key): ("number", "the parcel’s number"),
}
"""Kinds with a code that must not be told: its field, and what it is."""


def _of_entry(job: Job, entry: Entry) -> Iterator[Fact]:
    if isinstance(entry, OddEntry):  # nobody can say which of its words are whose
        yield from _run(entry.line.decode(errors="replace"), "an entry that cannot be read")
    yield from _run(entry.note, "a remark for the bench alone", short=True)
    yield from _reached_by(entry.note, strict=True)
    if entry.kind in (RELEASE, WITHDRAWAL):
        yield from _run(_text(entry.data.get("reason")), "a reason meant for the owner", owner=True)
        return
    where = (entry.stage, entry.kind)
    if where == (OWNER.stage, OWNER.key):
        yield from _of_owner(entry)
    elif where in ((ANSWER.stage, ANSWER.key), (YES.stage, YES.key)):
        yield from _name(_text(entry.data.get("by")), "the name of who speaks for the owner")
    elif where == (OUT.stage, OUT.key):
        yield from _name(_text(entry.data.get("whom")), "the name of another workshop")
    elif where in _CODES:
        name, about = _CODES[where]
        yield from _lot(_text(entry.data.get(name)), about)
    if not engraving_shown(job):
        yield from _engraved(job, entry)
    if where != (PASSED.stage, PASSED.key):
        yield from _private_texts(entry)


def _of_bench(bench: Bench) -> Iterator[Fact]:
    """What of ``bench.toml`` is not for everybody: all but the bench's name and how things are shown."""
    name = [word.folded for word in words_of(seen_text(bench.text("bench", "name")))]
    for table, content in bench.facts.items():
        for key, value in content.items() if isinstance(content, dict) else [("", content)]:
            if (table, key) in _SHOWN_OF_BENCH:
                continue
            lines = value if isinstance(value, list) else [value]
            for line in (line for line in lines if isinstance(line, str)):
                yield from _run(line, "a line of bench.toml")
                if (table, key) == ("bench", "contact"):
                    yield from _reached_by(line, strict=False, whose="the bench’s")
                    said = tuple(word.folded for word in words_of(seen_text(line)))
                    if len(said) > 1 and not set(said) <= set(name):
                        yield Fact("the bench’s contact", "words", said)


def _of_owner(entry: Entry) -> Iterator[Fact]:
    owner, address, contact = (_text(entry.data.get(name)) for name in ("owner", "address", "contact"))
    yield from _name(owner, "the owner’s name")
    yield from _reached_by(owner, strict=False)
    yield from _address(address)
    for text in (address, contact):
        yield from _reached_by(text, strict=False)
    others = re.sub(r"(?<!\S)\S*@\S*|https?:\S*", " ", contact)  # from the word's beginning, so that it is tried once
    named = re.findall(r"(?<=[\w,;] )[^\W\d_a-zß-ÿ][^\W\d_]+", others)
    yield from _name(" ".join(named), "a name in the owner’s contact", whole=False)


def _without_mail(text: str) -> str:
    """A text without its mail addresses, and without the brackets that one stood in."""
    return re.sub(r"<\s*>", " ", _MAIL.sub(" ", text))


def _name(text: str, about: str, *, whole: bool = True) -> Iterator[Fact]:
    """The parts of a name, each in the spellings it may be met in; together in any order where two stand side by side."""
    bare = _without_mail(text)
    said = words_of(seen_text(_TAG.sub(" ", bare)))
    if _NO_NAME.search(bare):  # nobody is called that; a name among it has its capital
        said = [word for word in said if word.shown[:1].isupper()]
    # the last word of a name may be Lord or Street; what is written small is none
    words = [
        word
        for number, word in enumerate(said)
        if word.folded not in _TITLES or (whole and number == len(said) - 1 and not word.shown.islower())
    ]
    part = about if len(words) == 1 and whole else f"part of {about}" if whole else about
    kept = []
    for word in words:
        long = len(word.folded) >= _TOO_SHORT or without_spaces(word.shown)
        if not long and (len(word.folded) < 2 or not word.shown[:1].isupper() or len(words) > _TOO_SHORT):
            continue
        kept.append(word.shown)
        for spelling in (*spellings(word.shown), *_halves(word.folded)):
            yield Fact(part, "name", (spelling,), "" if long else word.shown)
    # one word in a mail address, a tag or a file name
    for joined in (*_side_by_side(kept), *_with_particles(said, frozenset(kept))):
        yield Fact(about, "name", (fold(joined),))
    for joined in re.findall(r"(?<!\w)[^\W\d_]++(?:['’][^\W\d_]++)+", text):
        yield Fact(part, "name", (fold(re.sub(r"\W", "", joined)),))


def _side_by_side(names: list[str]) -> Iterator[str]:
    for first, second in itertools.pairwise(names):
        yield from (first + second, second + first)


def _with_particles(said: list[Word], names: frozenset[str]) -> Iterator[str]:
    """A name as one word with what goes before it: ``vandermeer``."""
    for number, word in enumerate(said):
        before = number
        while word.shown in names and 0 < before > number - 3 and said[before - 1].folded in _PARTICLES:
            before -= 1
            yield "".join(part.shown for part in said[before : number + 1])


def _halves(name: str) -> tuple[str, ...]:
    """The two signs at either end of a name in a script without spaces: a surname or a given name by itself."""
    return (name[:2], name[-2:]) if without_spaces(name) and len(name) in (3, 4) else ()


def _numbers(text: str) -> dict[str, None]:
    """The runs of figures in a text, and those on either side of a stroke or a line's end: they may be two numbers."""
    pieces = [text, *re.split(r"\s/\s|\n", text)]
    return dict.fromkeys(digits for piece in pieces for digits, _, _ in digits_in(piece))


def _reached_by(text: str, *, strict: bool, whose: str = "the owner’s") -> Iterator[Fact]:
    """Mail addresses, their own parts, tags and telephone numbers; in a remark only what is surely one."""
    clean = seen_text(text)
    for match in _MAIL.findall(clean):
        local = [word.folded for word in words_of(match.split("@")[0])]
        yield Fact(f"{whose} mail address", "mail", tuple(word.folded for word in words_of(match)))
        if whose == "the owner’s" and not strict:  # the bench may name its own site
            after = tuple(word.folded for word in words_of(match.split("@")[1]))
            yield Fact(f"{whose} mail address, after the @", "mail", after)
        together = "".join(local)
        if len(together) >= 4 and together not in _GENERIC_BOXES:
            yield Fact(f"{whose} mail address, before the @", "words", tuple(local))
            yield Fact(f"{whose} mail address, before the @", "name", (together,))
    for match in _HANDLE.findall(_MAIL.sub(" ", clean)):
        yield Fact(
            f"a name {whose.removesuffix('’s')} goes by", "words", tuple(word.folded for word in words_of(match))
        )
    least = 9 if strict else 6
    for digits in _numbers(_DAY.sub(" ; ", _MAIL.sub(" ", clean))):
        if len(digits) >= least:
            significant = digits.lstrip("0")
            yield Fact(f"{whose} telephone", "telephone", (significant[-9:] if len(significant) > 9 else significant,))


def _address(text: str) -> Iterator[Fact]:
    """Street and house, post code and town, as a text may tell them."""
    bare = _without_mail(text)
    for told in () if _NO_NAME.search(bare) else told_of_address(bare):
        one = told.joined or told.as_typed
        yield Fact(told.about, "name" if one else "words", told.words, told.as_typed)


def _lot(text: str, about: str) -> Iterator[Fact]:
    words = tuple(word.folded for word in words_of(seen_text(_TAG.sub(" ", text))))
    code = len(words) >= _TOO_SHORT or any(len(word) >= 5 and not word.isalpha() for word in words)
    if code and any(sign.isdigit() for sign in "".join(words)):
        yield Fact(about, "words", words)


def _engraved(job: Job, entry: Entry) -> Iterator[Fact]:
    """Names engraved on the pen: a mark that is somebody's, or what is quoted beside the word in a description."""
    about = "a name engraved on the pen"
    if (entry.stage, entry.kind) == (MARK.stage, MARK.key):
        mark = job.view.decoded(MARK, entry)
        if isinstance(mark, Mark) and is_engraved_name(mark):
            text = mark.text or ""
            yield Fact(about, "words", tuple(word.folded for word in words_of(seen_text(text))))
            yield from _name(" ".join(_capitals(text)), about)
    elif (entry.stage, entry.kind) in ((PART_CONDITION.stage, PART_CONDITION.key), (ARRIVAL.stage, ARRIVAL.key)):
        for text in entry.data.values():
            for quoted in _said_engraved(_text(text)):
                yield from _name(quoted, about)


def _said_engraved(text: str) -> Iterator[str]:
    for match in _ENGRAVED.finditer(text):
        after = re.sub(r"^\w*", "", text[match.end() : match.end() + 120])
        quoted, named = _QUOTED.search(after), _CAPITALS.search(after)
        if quoted or named:
            yield quoted[1] if quoted else named[0] if named else ""


def _capitals(text: str) -> list[str]:
    """What is written with a capital: the rest of a dedication is no name."""
    return [word.shown for word in words_of(seen_text(text)) if word.shown[:1].isupper()]


def _private_texts(entry: Entry) -> Iterator[Fact]:
    """The texts of fields that are not for everybody, and all of an entry that this version does not know."""
    stage = next((stage for stage in all_stages() if stage.key == entry.stage), None)
    kind = next((kind for kind in stage.kinds if kind.key == entry.kind), None) if stage else None
    fields = {field.name: field for field in kind.fields} if kind else {}
    named = (OWNER.stage, OWNER.key) == (entry.stage, entry.kind)
    for name, value in entry.data.items():
        field = fields.get(name)
        if field is not None and (field.audience == "everybody" or field.kind not in ("text", "long text", "items")):
            continue
        if named and name in ("owner", "address", "contact"):
            continue
        bench = field is None or field.audience == "bench"
        text = _text(value)
        about = f"what only {'the bench' if bench else 'the owner'} may read" + (f" ({field.label})" if field else "")
        yield from _run(text, about, owner=not bench, short=bench)
        if (entry.stage, entry.kind) != (CONSENT.stage, CONSENT.key) or name != "consent_on":
            yield from _reached_by(text, strict=True)


def _run(text: str, about: str, *, owner: bool = False, short: bool = False) -> Iterator[Fact]:
    """A text that must not be taken over: runs of its words as they come, sentence by sentence; short ones if it is said."""
    for part in re.split(r"(?<=[.!?…])\s+|\n+", seen_text(_TAG.sub(" ", text))):
        words = tuple(word.folded for word in words_of(part))
        if len(words) >= (1 if short else _LEAST_SENTENCE):
            yield Fact(about, "run", words, owners=owner)


def _text(value: Any) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, (list, tuple)):
        return "; ".join(item for item in value if isinstance(item, str))
    return ""
