"""One way to ask a sum: typed texts or plain numbers in, the bench's own facts where nothing was said, an answer out."""

from __future__ import annotations

import math
import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, Protocol, TypeAlias

from pentools.calc.base.findings import Finding
from pentools.calc.weighing.balance import FIGURES as BALANCE_FIGURES
from pentools.errors import InputError
from pentools.fields import Field, Value
from pentools.markup import shown_alone
from pentools.numbers import plain
from pentools.record.bench import Bench, open_bench_folder
from pentools.sums import Sum, find, read_options
from pentools.sums.base import SumAnswer
from pentools.units import Reading

if TYPE_CHECKING:
    import pandas

    from pentools.figures.drawing import Drawing

__all__ = [
    "BENCH_FACTS",
    "Answer",
    "BenchGiven",
    "Column",
    "Several",
    "Typed",
    "answer_to",
    "ask",
    "ask_each",
    "bench_of",
]


class Column(Protocol):
    """Many questions at once: a pandas Series or a one-dimensional numpy array, one value a question."""

    @property
    def ndim(self) -> int:
        """1."""

    def tolist(self) -> list[Any]:
        """Its values."""


Typed: TypeAlias = str | float | None
"""A text with its unit, or a number in the field's unit."""

Several: TypeAlias = str | float | Sequence[str] | Sequence[float] | None
"""Several readings or words of one question: a text with semicolons, or a list."""

BenchGiven: TypeAlias = str | os.PathLike[str] | Bench | None
"""A bench, or its folder; without one, the folder that the environment variable PENTOOLS_BENCH names, if any."""

_BALANCE = {figure.name: ("balance", figure.name) for figure in BALANCE_FIGURES}
_ROOM = {name: ("room", name) for name in ("temperature", "pressure", "humidity")}

BENCH_FACTS: Mapping[str, Mapping[str, tuple[str, str]]] = {
    "capacity": {**_BALANCE, **_ROOM, "caliper": ("caliper", "uncertainty")},
    "leak": {**_BALANCE, **_ROOM},
    "seal": {"stock": ("stock", "rings"), "drawer": ("stock", "rings")},
    "sac": {"drawer": ("stock", "sacs")},
    "washer": {"drawer": ("stock", "washers")},
    "abrasives": {"own": ("stock", "abrasives")},
    "money": {"currency": ("money", "currency")},
    "flow": {name: place for name, place in _BALANCE.items() if name in ("readability", "repeatability")},
    "smoothing": {"own": ("stock", "abrasives")},
}
"""The sum's name -> its fields that a bench knows itself: field name to table and key of ``bench.toml``."""

_TOGETHER = frozenset({"balance"})
"""Tables whose facts are of one instrument: where one of them is typed, the others are not the bench's own."""

_ONLY_WITH = {("seal", "stock"): ("from", ("stock",)), ("seal", "drawer"): ("from", ("", "as568", "metric"))}
"""A fact that counts only where a field says so: the field, and what it may say."""

_SEVERAL = ("quantities", "items")


@dataclass(frozen=True, slots=True, repr=False)
class Answer(SumAnswer):
    """A sum's answer that also draws itself.

    Parameters
    ----------
    key : str
        The sum's name.
    """

    key: str = ""

    def figures(self) -> tuple[Drawing, ...]:
        """Its drawings; empty where the sum has none."""
        from pentools.figures.sum_figures import figures_for

        return tuple(figures_for(self.key, self))

    def figure(self) -> Drawing | None:
        """Its first drawing; None where the sum has none."""
        drawn = self.figures()
        return drawn[0] if drawn else None

    def _repr_html_(self) -> str:
        return shown_alone(self.html() + "".join(drawing.svg for drawing in self.figures()))


def bench_of(given: BenchGiven = None) -> Bench | None:
    """The bench to take facts from: the one given, or the one of PENTOOLS_BENCH; None where there is none."""
    if isinstance(given, Bench):
        return given
    if not given and not os.environ.get("PENTOOLS_BENCH"):
        return None
    bench = open_bench_folder(given)
    return bench if (bench.folder / "bench.toml").is_file() else None


def answer_to(key: str, texts: Mapping[str, str], bench: BenchGiven = None) -> Answer:
    """The answer to texts as they were typed; what panels, the command line and notebooks show.

    Parameters
    ----------
    key : str
        The sum's name, such as ``capacity``.
    texts : mapping of str to str
        Field name to text; a missing one is the bench's own, else what is usual.

    Returns
    -------
    Answer
        What the sum answers; ``data["from_bench"]`` lists the fields that the bench's own facts filled.

    Raises
    ------
    InputError
        If a text cannot be used, or one that is needed is missing.
    """
    return _answer(find(key), texts, bench_of(bench))


def _answer(chosen: Sum, asked: Mapping[str, Any], bench: Bench | None) -> Answer:
    texts = _texts(chosen, asked)
    own = own_facts(chosen, texts, bench)
    comma = bench is not None and bench.text("bench", "decimal_sign") == ","
    typed = {name for name, value in asked.items() if comma and isinstance(value, str)}
    read = read_options(chosen.fields, {**own, **texts}, typed)
    found = chosen.run({name: _without_digits(value, asked.get(name)) for name, value in read.items()})
    usual = {field.name: field.default for field in chosen.fields}
    told = [f"{field.label.casefold()} {own[field.name]}" for field in chosen.fields if own.get(field.name, usual[field.name]) != usual[field.name]]  # fmt: skip
    findings, data = found.findings, {**found.data, "from_bench": sorted(own)}
    if bench is not None and chosen.key in BENCH_FACTS:
        findings += tuple(Finding("warning", "base.bench-file", problem=problem) for problem in bench.problems)
    if told:
        findings = (*findings, Finding("note", "base.from-bench", facts=told))
    if findings != found.findings:
        data["findings"] = [finding.as_json() for finding in findings]
    return Answer(found.sentence, data, findings, found.table, found.result, chosen.key)


def own_facts(chosen: Sum, texts: Mapping[str, str], bench: Bench | None) -> dict[str, str]:
    """What the bench itself knows of a sum's fields that were not typed.

    Parameters
    ----------
    texts : mapping of str to str
        What was typed, by field name.
    bench : Bench or None
        The bench; None knows nothing.

    Returns
    -------
    dict
        Field name to text.
    """
    if bench is None:
        return {}
    facts = BENCH_FACTS.get(chosen.key, {})
    typed = {facts[name][0] for name, text in texts.items() if text and name in facts} & _TOGETHER
    known = {field.name for field in chosen.fields}
    own: dict[str, str] = {}
    for name, (table, key) in facts.items():
        fact = bench.facts.get(table, {}).get(key, "")
        if name == "drawer" and isinstance(fact, list):
            from pentools.sums.seal.drawer import at_hand  # asked of three sums alone

            fact = list(at_hand(chosen.key, [str(item) for item in fact]))
        text = "; ".join(str(item) for item in fact) if isinstance(fact, list) else str(fact)
        needs, wanted = _ONLY_WITH.get((chosen.key, name), ("", ("",)))
        if name in known and text and not texts.get(name) and table not in typed and texts.get(needs, "") in wanted:
            own[name] = text
    return own


def ask(key: str, given: Mapping[str, Any]) -> Answer:
    """The answer to what a notebook hands over.

    Parameters
    ----------
    key : str
        The sum's name.
    given : mapping of str to object
        Field name to text, number, list or array; a name that Python keeps for itself has an underscore after it;
        ``bench`` is the bench, and what stands in ``more`` counts as if it stood beside it.

    Returns
    -------
    Answer
        What the sum answers.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.
    """
    chosen, asked, bench = _asked(key, given)
    return _answer(chosen, asked, bench)


def ask_each(key: str, given: Mapping[str, Any]) -> Answer | pandas.DataFrame:
    """The answer to what a notebook hands over, or a frame of answers where columns were handed over.

    Parameters
    ----------
    key : str
        The sum's name.
    given : mapping of str to object
        As for `ask`; an array or a Series is a column of questions, and what is no column counts for all of them.

    Returns
    -------
    Answer or pandas.DataFrame
        One answer; for columns one row a question: what was asked, the sentence and the plain values of ``data``,
        and in ``refused`` why a row has none.

    Raises
    ------
    InputError
        If a value cannot be used, or columns are not of one length.
    """
    chosen, asked, bench = _asked(key, given)
    columns = {name: value for name, value in asked.items() if _is_column(value)}
    return _frame(chosen, asked, columns, bench) if columns else _answer(chosen, asked, bench)


def _asked(key: str, given: Mapping[str, Any]) -> tuple[Sum, dict[str, Any], Bench | None]:
    flat = {**given, **given.get("more", {})}
    flat.pop("more", None)
    chosen, bench = find(key), bench_of(flat.pop("bench", None))
    asked = {name.removesuffix("_"): value for name, value in flat.items() if value is not None}
    known = [field.name for field in chosen.fields]
    for name in asked:
        if name not in known:
            raise InputError("keyword", "one of " + ", ".join(known), name)
    return chosen, asked, bench


def _texts(chosen: Sum, asked: Mapping[str, Any]) -> dict[str, str]:
    fields = {field.name: field for field in chosen.fields}
    return {name: _text(fields[name], value) if name in fields else str(value) for name, value in asked.items()}


def _frame(chosen: Sum, asked: Mapping[str, Any], columns: Mapping[str, Any], bench: Bench | None) -> pandas.DataFrame:
    import pandas

    lengths = {name: len(column.tolist()) for name, column in columns.items()}
    if len(set(lengths.values())) > 1:
        raise InputError("columns", "of one length", ", ".join(f"{name} {n}" for name, n in lengths.items()))
    rows = []
    for place in range(next(iter(lengths.values()))):
        question = {name: v.tolist()[place] if name in columns else v for name, v in asked.items()}
        row: dict[str, Any] = {name: question[name] for name in columns}
        try:
            answer = _answer(chosen, question, bench)
        except InputError as error:
            rows.append(row | {"sentence": None, "refused": str(error)})
            continue
        told = {name: value for name, value in answer.data.items() if not isinstance(value, list | dict)}
        rows.append(row | told | {"sentence": answer.sentence, "refused": None})
    index = next((column.index for column in columns.values() if hasattr(column, "index")), None)
    frame = pandas.DataFrame(rows)
    return frame if index is None else frame.set_axis(index, axis="index")


def _is_column(value: object) -> bool:
    return hasattr(value, "tolist") and getattr(value, "ndim", 0) == 1


def _text(field: Field, value: object) -> str:
    """A value of a notebook as the text that would be typed: a plain number is in the field's unit."""
    if isinstance(value, list | tuple) or _is_column(value):
        if field.kind not in _SEVERAL:
            raise InputError(field.label, "one value", str(value))
        parts = value if isinstance(value, list | tuple) else value.tolist()  # type: ignore[attr-defined]
        return "; ".join(_text(field, part) for part in parts)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Reading):
        return value.text()
    if hasattr(value, "item"):
        value = value.item()  # a numpy number
    return _number_text(field, value) if isinstance(value, int | float) else str(value)


def _without_digits(value: Value, given: Any) -> Value:
    """What was read, no digits typed where it came as a number: 25.0 in Python says nothing of a balance."""
    if given is None or isinstance(given, str) or (isinstance(given, Reading) and given.typed):
        return value
    if isinstance(value, Reading):
        return replace(value, typed="")
    if not isinstance(value, tuple):
        return value
    several = (
        given.tolist() if _is_column(given) else given if isinstance(given, list | tuple) else [given] * len(value)
    )
    parts = [part for part in several if not (isinstance(part, float) and math.isnan(part))]
    plain_parts: Any = tuple(_without_digits(v, part) for v, part in zip(value, parts, strict=False))  # type: ignore[arg-type]
    return plain_parts if len(plain_parts) == len(value) else value


def _number_text(field: Field, value: float) -> str:
    if math.isnan(value):
        return ""  # nothing was measured
    if field.kind not in ("quantity", "quantities"):
        return plain(value, 15)
    return f"{plain(100 * value, 13)} %" if field.unit == "1" else f"{plain(value, 15)} {field.unit}"
