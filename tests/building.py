"""How the house is built, read from its source: modules, who imports whom, and the rules in one place.

Used by the layer test and by `tests/bench/house.py`.
"""

import ast
import functools
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "pentools"
LAYERS = [
    {"errors", "decimals", "numbers", "exits"},
    {"words"},
    {"markup"},
    {"unit_table", "shillings", "days"},
    {"units"},
    {"money", "digits"},
    {"fields"},
    {"instruments", "pictures"},
    {"calc"},
    {"tables"},
    {"systems"},
    {"sums"},
    {"record"},
    {"books"},
    {"figures"},
    {"answers"},
    {"panels", "writeup"},
    {"lean"},
    {"live", "serving"},
    {"lab", "demo", "door", "starter"},
    {"commands"},
    {"cli"},
]
RANK = {name: rank for rank, names in enumerate(LAYERS) for name in names}
SUBJECTS = {"base", "weighing", "seal", "finish", "dating", "treatment", "nib", "repairs", "closing"}
"""The subjects of the bench, the same in every layer; the course of a job and the pen as drawn stand beside them above."""
ROOMS = {
    "books": {"tables", "queue", "search", "learning", "stock", "money", "exchange", "invented"},
    "calc": SUBJECTS | {"books"},
    "sums": SUBJECTS - {"base"},
    "record/stages": SUBJECTS - {"base"} | {"job"},
    "panels/stages": SUBJECTS - {"base"} | {"job"},
    "writeup/sections": SUBJECTS - {"base"} | {"job"},
    "figures": SUBJECTS - {"base"} | {"job", "pen", "books"},
}
NOT_IN_CALC = {
    "pint",
    "pandas",
    "matplotlib",
    "ipywidgets",
    "pathlib",
    "os",
    "io",
    "csv",
    "time",
    "scipy",
    "tomllib",
    "json",
}
CLOCK = {"now", "utcnow", "today"}
"""What asks for the time of day; `calc` is told the time, and reckons with dates as it likes."""
HEAVY = {
    "cv2",
    "PIL",
    "pandas",
    "matplotlib",
    "weasyprint",
    "nbconvert",
    "nbformat",
    "pint",
    "scipy",
    "CoolProp",
    "GTC",
    "gsw",
}


def module_name(path, package=PACKAGE):
    """The dotted name of a module's file."""
    parts = list(path.relative_to(package.parent).with_suffix("").parts)
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


@functools.cache
def parsed(path):
    return ast.parse(path.read_text(encoding="utf-8"))


def modules(package=PACKAGE):
    """Every module's file, the shipped data left out."""
    return [p for p in sorted(package.rglob("*.py")) if "_shipped" not in p.parts]


def imports(path):
    """Every module named in an import, wherever it stands: at the top, for types only, inside a function, or by name."""
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: a relative import"
            yield node.module
            if node.module.split(".")[0] == "pentools":
                yield from (f"{node.module}.{alias.name}" for alias in node.names)
        elif isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "import_module":
            yield from (word.value for word in node.args if isinstance(word, ast.Constant))


def graph(package=PACKAGE):
    """Each module and those of the package that it imports; a name taken from a module counts as that module."""
    names = {module_name(path, package): path for path in modules(package)}
    edges = {}
    for name, path in names.items():
        wanted = set(imports(path)) & set(names)
        # `from pentools.calc import base` reads as the package and the module: the module is what is meant
        edges[name] = {
            other for other in wanted if other != name and not any(w.startswith(f"{other}.") for w in wanted)
        }
    return edges


def reached(edges, start):
    """All modules that a module comes to by its imports and theirs."""
    found, ahead = set(), list(edges.get(start, ()))
    while ahead:
        if (name := ahead.pop()) not in found:
            found.add(name)
            ahead += edges.get(name, ())
    return found


def circles(edges):
    """Sets of modules that import one another, each over others or at once (strongly connected components)."""
    reach = {name: reached(edges, name) for name in edges}
    found = {frozenset(other for other in reach[name] if name in reach[other]) for name in edges if name in reach[name]}
    return sorted(found, key=sorted)
