"""Imports point down only, and the lowest layers know nothing of files, widgets or charts."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[1] / "pentools"
LAYERS = [
    {"errors", "decimals", "numbers"},
    {"words"},
    {"markup"},
    {"units", "shillings"},
    {"money"},
    {"fields"},
    {"calc"},
    {"tables"},
    {"systems"},
    {"sums"},
    {"record"},
    {"figures"},
    {"panels", "writeup"},
    {"lab", "demo"},
    {"cli"},
]
RANK = {name: rank for rank, names in enumerate(LAYERS) for name in names}
NOT_IN_CALC = {
    "pint",
    "pandas",
    "matplotlib",
    "ipywidgets",
    "pathlib",
    "os",
    "io",
    "csv",
    "datetime",
    "time",
    "scipy",
    "tomllib",
    "json",
}
HEAVY = {"pandas", "matplotlib", "nbconvert", "nbformat", "pint", "scipy", "CoolProp", "GTC", "gsw"}


def imports(path):
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: a relative import"
            yield node.module
            if node.module == "pentools":
                yield from (f"pentools.{alias.name}" for alias in node.names)


def layer(path):
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


MODULES = [p for p in sorted(PACKAGE.rglob("*.py")) if layer(p) not in ("__init__", "_shipped")]


def wrong_imports(path):
    own = layer(path)
    for name in imports(path):
        parts = name.split(".")
        if parts[0] == "pentools" and len(parts) > 1:
            other = parts[1]
            if other in RANK and other != own and RANK[other] >= RANK[own]:
                yield name
        elif own == "calc" and parts[0] in NOT_IN_CALC:
            yield name


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_imports_point_down(path):
    assert list(wrong_imports(path)) == []


def test_a_planted_import_is_found(tmp_path, monkeypatch):
    planted = tmp_path / "calc" / "bad.py"
    planted.parent.mkdir()
    planted.write_text("import ipywidgets\nfrom pentools.record.job import Job\n")
    monkeypatch.setattr(__import__("sys").modules[__name__], "PACKAGE", tmp_path)
    assert list(wrong_imports(planted)) == ["ipywidgets", "pentools.record.job"]


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_heavy_libraries_are_imported_where_they_are_used(path):
    if path.name == "exporters.py":  # a subclass of the library's own exporter
        return
    top = [
        node
        for node in ast.parse(path.read_text(encoding="utf-8")).body
        if isinstance(node, ast.Import | ast.ImportFrom)
    ]
    names = {alias.name.split(".")[0] for node in top if isinstance(node, ast.Import) for alias in node.names}
    names |= {(node.module or "").split(".")[0] for node in top if isinstance(node, ast.ImportFrom)}
    assert not names & HEAVY


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_a_module_is_not_too_long_and_says_what_it_is_for(path):
    text = path.read_text(encoding="utf-8")
    assert len(text.splitlines()) <= 400
    assert ast.get_docstring(ast.parse(text))
