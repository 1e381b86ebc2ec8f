"""A docstring says what the signature does not: units and ranges in the calculations; what it lists is there, in that order."""

import ast
import re

from building import PACKAGE, modules, parsed

_NUMBERS = re.compile(r"\b(?:float|int)\b")


def public_functions(path):
    for node in parsed(path).body:
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
        return []
    names = []
    for line in section.group(1).splitlines():
        found = re.match(r"^(\*{0,2}\w+(?:, \*{0,2}\w+)*)(?: :|$)", line)
        if found:
            names += [name.strip(" *") for name in found.group(1).split(",")]
    return names


def given(node):
    """Parameters in order, and those that are numbers."""
    arguments = node.args
    every = [
        a for a in (*arguments.posonlyargs, *arguments.args, *arguments.kwonlyargs) if a.arg not in ("self", "cls")
    ]
    every += [a for a in (arguments.vararg, arguments.kwarg) if a is not None]
    if arguments.vararg:  # it stands before what can only be named
        every.sort(key=lambda a: a in arguments.kwonlyargs or a is arguments.kwarg)
    numbers = {a.arg for a in every if a.annotation is not None and _NUMBERS.search(ast.unparse(a.annotation))}
    return [a.arg for a in every], numbers


def says_nothing(name, text):
    """Whether a parameter is explained by its own name alone: "job : Job / The job."."""
    found = re.search(rf"^{re.escape(name)} : [^\n]*\n +(?:The|An?) ([^\n]*?)\.?(?=\n(?! )|\Z)", text, re.MULTILINE)
    return found is not None and found[1].lower() == name.lower().replace("_", " ")


def wrong(node, *, calc):
    """What is wrong with a function's docstring; empty where nothing is."""
    text = ast.get_docstring(node)
    if not text:
        return "has no docstring"
    names, numbers = given(node)
    listed = documented(text)
    if strange := [name for name in listed if name not in names]:
        return f"documents {', '.join(strange)}, which it does not take"
    if listed != [name for name in names if name in listed]:
        return f"documents {', '.join(listed)}, not in the order of the signature"
    if empty := [name for name in listed if name not in numbers and says_nothing(name, text)]:
        return f"says of {', '.join(empty)} only what its name says"
    if calc and (missing := [name for name in names if name in numbers and name not in listed]):
        return f"gives no unit or range for {', '.join(missing)}"
    return ""


def test_docstrings_and_signatures_agree():
    found = [
        f"{path.relative_to(PACKAGE)}: {name} {told}"
        for path in modules()
        for name, node in public_functions(path)
        if (told := wrong(node, calc=path.relative_to(PACKAGE).parts[0] == "calc" and "." not in name))
    ]
    assert not found, "\n".join(found)


def test_what_is_wrong_is_found():
    def told(signature, listed, calc=True):
        lines = "\n".join(f"    {name} : x\n        It." for name in listed)
        text = f"Sum.\n\n    Parameters\n    ----------\n{lines}\n" if listed else "Sum."
        return wrong(ast.parse(f'def f({signature}):\n    """{text}"""').body[0], calc=calc)

    assert told("a: float, b: int", ["a, b"]) == ""
    assert told("a: float, job: Job", ["a"]) == ""
    assert told("job: Job", []) == ""
    assert told("a: float", [], calc=False) == ""
    assert "unit or range for b" in told("a: float, *, b: float | None", ["a"])
    assert "unit or range for a" in told("a: Sequence[float]", [])
    assert "documents c" in told("a: float", ["a", "c"], calc=False)
    assert "order" in told("a, b", ["b", "a"], calc=False)
    assert "only what its name says" in wrong(
        ast.parse(
            'def f(job: Job):\n    """Sum.\n\n    Parameters\n    ----------\n    job : Job\n        The job.\n    """'
        ).body[0],
        calc=False,
    )
    assert wrong(ast.parse("def f(): pass").body[0], calc=False) == "has no docstring"
