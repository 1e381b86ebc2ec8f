"""A docstring lists exactly the parameters that the signature has, and says what comes back."""

import ast
import re
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[1] / "pentools"
PLAIN_ENOUGH = 0  # a function without parameters needs no list


def public_functions(path):
    for node in ast.parse(path.read_text(encoding="utf-8")).body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield node.name, node
        elif isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            for part in node.body:
                stub = any(isinstance(d, ast.Name) and d.id == "overload" for d in getattr(part, "decorator_list", ()))
                if isinstance(part, ast.FunctionDef) and not part.name.startswith("_") and not stub:
                    yield f"{node.name}.{part.name}", part


def documented(text):
    section = re.search(r"^Parameters\n-+\n(.*?)(?=^\w+\n-+\n|\Z)", text, re.DOTALL | re.MULTILINE)
    if section is None:
        return None
    names = []
    for line in section.group(1).splitlines():
        found = re.match(r"^(\*{0,2}\w+(?:, \*{0,2}\w+)*)(?: :|$)", line)
        if found:
            names += [name.strip(" *") for name in found.group(1).split(",")]
    return names


CASES = [
    pytest.param(path, name, node, id=f"{path.relative_to(PACKAGE)}:{name}")
    for path in sorted(PACKAGE.rglob("*.py"))
    if "_shipped" not in path.parts
    for name, node in public_functions(path)
]


@pytest.mark.parametrize(("path", "name", "node"), CASES)
def test_docstring_and_signature_agree(path, name, node):
    text = ast.get_docstring(node)
    assert text, f"{name} has no docstring"
    arguments = node.args
    given = [
        a.arg for a in (*arguments.posonlyargs, *arguments.args, *arguments.kwonlyargs) if a.arg not in ("self", "cls")
    ]
    given += [a.arg for a in (arguments.vararg, arguments.kwarg) if a is not None]
    listed = documented(text)
    if listed is None:
        # a one-paragraph docstring is enough for a small function, but not in the calculations
        in_calc = "calc" in path.parts
        assert not (in_calc and "." not in name and given), f"{name} lists no parameters"
    else:
        assert listed == given, f"{name}: documented {listed}, signature {given}"


def test_a_wrong_list_is_found():
    text = (
        "Sum.\n\nParameters\n----------\na, b : float\n    Both.\nc : int\n    One.\n\nReturns\n-------\nint\n    It."
    )
    assert documented(text) == ["a", "b", "c"]
