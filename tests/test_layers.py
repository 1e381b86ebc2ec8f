"""The house's rules, each one test that names whoever breaks it: imports, subjects, circles, sizes, a test file a module."""

import ast
import collections

import building
from building import (
    CLOCK,
    HEAVY,
    LAYERS,
    NOT_IN_CALC,
    PACKAGE,
    RANK,
    ROOMS,
    ROOT,
    circles,
    graph,
    imports,
    modules,
    parsed,
)


def none(found, why=""):
    found = sorted(found)
    assert not found, "\n".join([why, *found])


def place(path, package=PACKAGE):
    return path.relative_to(package).as_posix()


def layer(path, package=PACKAGE):
    return path.relative_to(package).parts[0].removesuffix(".py")


def upward_imports(package=PACKAGE):
    for path in modules(package):
        own = layer(path, package)
        for name in imports(path) if own != "__init__" else ():
            parts = name.split(".")
            if (
                parts[0] == "pentools" and len(parts) > 1 and parts[1] != own and RANK.get(parts[1], -1) >= RANK[own]
            ) or (own == "calc" and parts[0] in NOT_IN_CALC):
                yield f"{place(path, package)} imports {name}"


def clock_readers(package=PACKAGE):
    """Calls of now(), today() and the like in the calculations, by whatever name they were imported."""
    for path in modules(package):
        if layer(path, package) == "calc":
            for node in ast.walk(parsed(path)):
                if isinstance(node, ast.Call) and getattr(node.func, "attr", getattr(node.func, "id", "")) in CLOCK:
                    yield f"{place(path, package)}:{node.lineno} asks the clock"


def planted(tmp_path, **files):
    package = tmp_path / "pentools"
    for name, text in files.items():
        path = package / (name.replace("__", "/") + ".py")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    return package


def test_every_module_has_a_layer():
    assert {layer(path) for path in modules()} - {"__init__"} <= set(RANK), (
        "a module or folder that LAYERS does not name"
    )
    assert all((PACKAGE / name).is_dir() or (PACKAGE / f"{name}.py").exists() for names in LAYERS for name in names)


def test_imports_point_down():
    none(upward_imports())


def test_calculations_do_not_ask_the_clock():
    none(clock_readers())


def test_what_is_planted_is_found(tmp_path):
    package = planted(
        tmp_path,
        calc__bad="import ipywidgets\nfrom pentools.record.job import Job\n",
        calc__late="import datetime as dt\n\ndef f():\n    from pentools import record\n    return dt.date.today(), dt.datetime.now(), dt.date(1936, 1, 1)\n",
    )  # fmt: skip
    assert list(upward_imports(package)) == [
        "calc/bad.py imports ipywidgets", "calc/bad.py imports pentools.record.job", "calc/bad.py imports pentools.record.job.Job",
        "calc/late.py imports pentools.record",
    ]  # fmt: skip
    assert list(clock_readers(package)) == ["calc/late.py:5 asks the clock"] * 2


def test_heavy_libraries_are_imported_where_they_are_used():
    found = []
    for path in modules():
        top = [node for node in parsed(path).body if isinstance(node, ast.Import | ast.ImportFrom)]
        names = {alias.name.split(".")[0] for node in top if isinstance(node, ast.Import) for alias in node.names}
        names |= {(node.module or "").split(".")[0] for node in top if isinstance(node, ast.ImportFrom)}
        if names & HEAVY and path.name != "exporters.py":  # subclasses of the library's own exporter
            found.append(f"{place(path)} imports {', '.join(sorted(names & HEAVY))} at its top")
    none(found)


def test_a_module_is_not_too_long_and_says_what_it_is_for():
    found = [
        f"{place(p)} has {n} lines" for p in modules() if (n := len(p.read_text(encoding="utf-8").splitlines())) > 400
    ]
    found += [f"{place(p)} says nothing of itself" for p in modules() if not ast.get_docstring(parsed(p))]
    none(found)


def test_the_rooms_are_the_same_subjects_in_every_layer():
    found = []
    for where, rooms in ROOMS.items():
        folders = {p.name for p in (PACKAGE / where).iterdir() if p.is_dir() and not p.name.startswith((".", "_"))}
        if where == "figures":
            folders -= {"pen"}
        found += [f"{where}/{name} is no subject" for name in sorted(folders - rooms)]
    found += [
        f"calc/{p.name} stands outside the subjects" for p in (PACKAGE / "calc").glob("*.py") if p.stem != "__init__"
    ]
    none(found)


def other_subjects(package=PACKAGE):
    """Which other subjects each subject of the calculations imports, `base` apart."""
    wanted = collections.defaultdict(set)
    for path in modules(package):
        parts = path.relative_to(package).parts
        if parts[0] == "calc" and len(parts) > 2:
            others = {name.split(".")[2] for name in imports(path) if name.startswith("pentools.calc.")}
            wanted[parts[1]] |= others - {parts[1], "base"}
    return wanted


def test_a_subject_reckons_with_the_base_and_at_most_one_other():
    wanted = other_subjects()
    assert {subject: names for subject, names in wanted.items() if len(names) > 1} == {}
    assert not wanted["base"], "the base leans on no subject"


def test_a_second_neighbour_is_found(tmp_path):
    package = planted(
        tmp_path, calc__seal__a="from pentools.calc.weighing.leak import x\n", calc__seal__b="from pentools.calc.finish import y\nfrom pentools.calc.base import z\n",
    )  # fmt: skip
    assert other_subjects(package)["seal"] == {"weighing", "finish"}


def test_nobody_imports_in_a_circle():
    found = [", ".join(sorted(circle)) for circle in circles(graph())]
    none(found, "these import one another, for types only and inside functions too:")


def test_a_circle_is_found_whatever_way_it_is_closed(tmp_path):
    package = planted(
        tmp_path,
        a="from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from pentools.b import B\n",
        b="def f():\n    from pentools import c\n    return c\n",
        c="import importlib\n\ndef g():\n    return importlib.import_module('pentools.a')\n",
        d="import pentools.a\n",
    )
    assert circles(graph(package)) == [frozenset({"pentools.a", "pentools.b", "pentools.c"})]


def test_no_module_is_taken_for_a_test():
    none(place(p) for p in modules() if p.stem.endswith("_test") or p.stem.startswith("test_"))


def own_test(path):
    """Where the test file of a module stands: the same folder below tests, the same name."""
    parts = path.relative_to(PACKAGE).parts
    return ROOT.joinpath("tests", *parts[:-1], f"test_{parts[-1]}")


def test_every_module_has_a_test_file_of_its_own_name():
    without = {place(p) for p in modules() if p.stem != "__init__" and not own_test(p).exists()}
    none(without, "each wants a tests/…/test_<module>.py:")


def test_tests_mirror_the_package():
    known = {p.relative_to(PACKAGE).as_posix() for p in PACKAGE.rglob("*") if p.is_dir()}
    folders = {
        p.relative_to(ROOT / "tests").as_posix()
        for p in (ROOT / "tests").rglob("*")
        if p.is_dir() and "__pycache__" not in p.parts
    }
    own = {"bench", "browser", "data", "faults", "published", "pinned"}
    none((f for f in folders - known if f.split("/")[0] not in own), "folders of tests that the package has not:")


def test_the_subjects_are_named_once():
    assert {p.name for p in (PACKAGE / "calc").iterdir() if p.is_dir() and not p.name.startswith("_")} == ROOMS["calc"]
    assert building.PACKAGE == PACKAGE


CHANGE = {
    "record/storage.py: Record",
    "systems/anatomy.py: Anatomy",
    "writeup/letter/chapters.py: Chapter",
    "writeup/page_parts.py: Passage",
    "writeup/tale/chapters.py: Chapter",
}
"""The few structures that are written to after they are made."""
KEEP = {"figures/closing/wall.py: _Page", "panels/stage.py: PanelResult"}
"""Those that keep what was worked out of them, or that others build on."""


def structures(package=PACKAGE):
    """Each dataclass, record form and typed row: where it stands, and what is set on it."""
    for path in modules(package):
        for node in ast.walk(parsed(path)):
            if not isinstance(node, ast.ClassDef):
                continue
            marks = [d for d in node.decorator_list if getattr(getattr(d, "func", d), "id", "") == "dataclass"]
            bases = {ast.unparse(base) for base in node.bases}
            if marks or bases & {"msgspec.Struct", "Struct", "Form", "Entry"}:
                given = {
                    k.arg: ast.unparse(k.value)
                    for k in (marks[0].keywords if marks and isinstance(marks[0], ast.Call) else node.keywords)
                }
                yield f"{place(path, package)}: {node.name}", bool(marks), given


def test_what_was_found_is_not_changed_afterwards():
    held = list(structures())
    none((where for where, _, given in held if given.get("frozen") != "True" and where not in CHANGE), "not frozen")
    none(
        (where for where, data, given in held if data and given.get("slots") != "True" and where not in CHANGE | KEEP),
        "no slots",
    )
    none(CHANGE - {where for where, _, given in held if given.get("frozen") != "True"}, "frozen by now")


def test_options_of_a_function_may_each_be_left_out():
    none(
        f"{place(path)}: {node.name}"
        for path in modules()
        for node in ast.walk(parsed(path))
        if isinstance(node, ast.ClassDef)
        and any(ast.unparse(base) == "TypedDict" for base in node.bases)
        and {k.arg: ast.unparse(k.value) for k in node.keywords} != {"total": "False"}
    )
