"""Every finding has words, all words are said somewhere, and every place in a template is filled."""

import ast
import importlib
import inspect
import pkgutil
import re
import string
from pathlib import Path

import pentools.words
from pentools.words import CERTAINTY, KEY, LEVEL_SIGNS, LEVEL_WORDS

PACKAGE = Path(__file__).resolve().parents[2] / "pentools"
BOOKS = {m.name: importlib.import_module(f"pentools.words.{m.name}").WORDS for m in pkgutil.iter_modules(pentools.words.__path__)}  # fmt: skip


def wanted(template):
    """The values that a template asks for, and whether it takes others too."""
    if callable(template):
        parameters = inspect.signature(template).parameters.values()
        names = {p.name for p in parameters if p.default is p.empty and p.kind is not p.VAR_KEYWORD}
        return names, {p.name for p in parameters} | (
            {"*"} if any(p.kind is p.VAR_KEYWORD for p in parameters) else set()
        )
    names = {re.split(r"[.\[]", name)[0] for _, name, _, _ in string.Formatter().parse(template) if name}
    return names, {*names, "*"}


def keys_of(node):
    """The keys a finding's second argument can be: a regular expression, or None where it is no key."""
    if isinstance(node, ast.IfExp):
        return [k for side in (node.body, node.orelse) for k in keys_of(side)]
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return [re.escape(node.value)] if KEY.fullmatch(node.value) else []
    if isinstance(node, ast.JoinedStr):
        parts = [re.escape(p.value) if isinstance(p, ast.Constant) else ".+" for p in node.values]
        return ["".join(parts)] if re.match(r"[a-z]+\\\.", parts[0]) else []
    return []


def findings_made(folder):
    for path in sorted(folder.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if (
                isinstance(node, ast.Call)
                and isinstance(node.func, ast.Name)
                and node.func.id == "Finding"
                and len(node.args) == 2
            ):
                given = {keyword.arg for keyword in node.keywords}
                for pattern in keys_of(node.args[1]):
                    yield f"{path.relative_to(folder)}:{node.lineno}", pattern, given


def faults(folder, books):
    known = {f"{subject}.{topic}": template for subject, book in books.items() for topic, template in book.items()}
    said, wrong = {"base.example"}, []
    for place, pattern, given in findings_made(folder):
        matching = [key for key in known if re.fullmatch(pattern, key)]
        said.update(matching)
        if not matching:
            wrong.append(f"{place}: no words for {pattern}")
        for key in matching:
            needed, taken = wanted(known[key])
            if None not in given and (missing := needed - given):
                wrong.append(f"{place}: {key} wants {', '.join(sorted(missing))}")
            if "*" not in taken and (more := given - taken - {None}):
                wrong.append(f"{place}: {key} does not take {', '.join(sorted(more))}")
    return wrong + [f"nobody says {key}" for key in sorted(set(known) - said)]


def test_code_and_words_agree():
    assert faults(PACKAGE, BOOKS) == []


def test_words_without_code_and_code_without_words_are_found(tmp_path):
    (tmp_path / "one.py").write_text(
        'Finding("note", "seal.loose", mm=1)\nFinding("note", "seal.tight")\nFinding("note", f"seal.{x}-end", mm=2)\n'
    )
    books = {"seal": {"loose": "{mm:.2f} of {all}", "unsaid": "", "left-end": "", "right-end": lambda *, inch: inch}}
    assert faults(tmp_path, books) == [
        "one.py:1: seal.loose wants all",
        "one.py:2: no words for seal\\.tight",
        "one.py:3: seal.right-end wants inch",
        "one.py:3: seal.right-end does not take mm",
        "nobody says seal.unsaid",
    ]


def test_every_key_can_be_read():
    assert all(KEY.fullmatch(f"{subject}.{topic}") for subject, book in BOOKS.items() for topic in book)


def test_levels_and_certainties_are_written_once():
    assert LEVEL_WORDS.keys() == LEVEL_SIGNS.keys() == {"ok", "note", "warning", "stop"}
    from pentools import tables

    unknown = {
        (name, row["certainty"])
        for name in tables.names()
        for row in tables.rows(name)
        if "certainty" in row and row["certainty"] not in CERTAINTY
    }
    assert unknown == set()
