"""Shows the house in figures: lines by kind, long functions, many parameters, modules named like tests, circles.

    python tests/bench/house.py [folder]

A figure of a folder's inside is got by naming it, such as pentools/calc.
"""

import ast
import io
import sys
import tokenize
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
from building import PACKAGE, circles, graph, modules, parsed

LONG, MANY = 30, 8
KINDS = ("code", "docstring", "import", "blank", "comment")


def is_text(node):
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant) and isinstance(node.value.value, str)


def docstring_lines(path):
    """Lines of docstrings, and of the texts below constants that explain them."""
    for node in ast.walk(parsed(path)):
        for part in getattr(node, "body", None) or () if not isinstance(node, ast.Lambda | ast.IfExp) else ():
            if is_text(part):
                yield from range(part.lineno, part.end_lineno + 1)


def import_lines(path):
    for node in ast.walk(parsed(path)):
        named = isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "") == "__all__"
        if isinstance(node, ast.Import | ast.ImportFrom) or named:
            yield from range(node.lineno, node.end_lineno + 1)


def lines_by_kind(path):
    """Number of each line -> its kind; the first that fits of docstring, import, blank, comment, code."""
    text = path.read_text(encoding="utf-8")
    docstrings, imported = set(docstring_lines(path)), set(import_lines(path))
    comments = {
        token.start[0]
        for token in tokenize.generate_tokens(io.StringIO(text).readline)
        if token.type == tokenize.COMMENT and not token.line[: token.start[1]].strip()
    }
    kinds = {}
    for number, line in enumerate(text.splitlines(), 1):
        if number in docstrings:
            kinds[number] = "docstring"
        elif number in imported:
            kinds[number] = "import"
        else:
            kinds[number] = "blank" if not line.strip() else "comment" if number in comments else "code"
    return kinds


def functions(path):
    """Name, code lines and parameters of each function, an inner one counted with its outer."""
    kinds = lines_by_kind(path)
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            code = sum(kinds[n] == "code" for n in range(node.lineno, node.end_lineno + 1))
            arguments = node.args
            every = (*arguments.posonlyargs, *arguments.args, *arguments.kwonlyargs)
            yield (
                f"{path.relative_to(PACKAGE)}:{node.lineno} {node.name}",
                code,
                sum(a.arg not in ("self", "cls") for a in every),
            )


def show(title, found):
    print(f"\n{title}: {len(found)}")
    print(*(f"  {line}" for line in found), sep="\n")


def main(below):
    files = [p for p in modules() if p.is_relative_to(below)]
    totals = dict.fromkeys(KINDS, 0)
    for path in files:
        for kind in lines_by_kind(path).values():
            totals[kind] += 1
    print(
        f"{len(files)} modules, {sum(totals.values())} lines: " + ", ".join(f"{n} {kind}" for kind, n in totals.items())
    )
    every = [f for path in files for f in functions(path)]
    print(
        f"{len(every)} functions, {sum(isinstance(n, ast.ClassDef) for p in files for n in ast.walk(parsed(p)))} classes"
    )
    show(
        f"functions over {LONG} lines of code",
        [f"{n:4} {name}" for name, n, _ in sorted(every, key=lambda f: -f[1]) if n > LONG],
    )
    show(f"functions with over {MANY} parameters", [f"{n:4} {name}" for name, _, n in every if n > MANY])
    show("modules named like tests", [str(p.relative_to(PACKAGE)) for p in files if p.stem.endswith("_test")])
    show(
        "modules of calc outside its subjects",
        [p.name for p in (PACKAGE / "calc").glob("*.py") if p.stem != "__init__" and p in files],
    )
    show("circles of imports", [", ".join(sorted(c)) for c in circles(graph())])
    show(
        "modules over 300 lines",
        [f"{n:4} {p.relative_to(PACKAGE)}" for p in files if (n := len(lines_by_kind(p))) > 300],
    )


if __name__ == "__main__":
    main(Path(sys.argv[1]).resolve() if len(sys.argv) > 1 else PACKAGE)
