"""The notebooks stay thin: few short cells, hidden source, cleared outputs, no logic; and their names resolve."""

import ast
import json

import pytest

from pentools.record.job import shipped_folder
from pentools.record.registry import STAGES
from pentools.writeup.notebook import stages_named

NOTEBOOKS = sorted([*shipped_folder("notebooks").glob("*.ipynb"), *shipped_folder("sample_jobs").glob("*/*.ipynb")])
LOGIC = (ast.FunctionDef, ast.ClassDef, ast.For, ast.While, ast.If, ast.With, ast.Try, ast.Lambda, ast.ListComp)


def cells(path, kind):
    return [c for c in json.loads(path.read_text(encoding="utf-8"))["cells"] if c["cell_type"] == kind]


def source(cell):
    return "".join(cell["source"])


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda p: p.stem)
def test_code_cells_are_few_short_and_plain(path):
    code = cells(path, "code")
    assert 2 <= len(code) <= 12
    for cell in code:
        assert len(source(cell).splitlines()) <= 6
        assert cell["outputs"] == []
        assert cell["execution_count"] is None
        shown = "python" in cell["metadata"].get("tags", ())  # there the code is what is to be read
        assert cell["metadata"].get("jupyter", {}).get("source_hidden", False) is not shown
        assert not [n for n in ast.walk(ast.parse(source(cell))) if isinstance(n, LOGIC)]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda p: p.stem)
def test_the_first_line_says_how_to_run_it(path):
    first = json.loads(path.read_text(encoding="utf-8"))["cells"][0]
    assert "Run All Cells" in source(first).splitlines()[0]
    assert "widgets" not in json.loads(path.read_text(encoding="utf-8"))["metadata"]


def test_the_lead_notebook_names_every_stage_once_and_in_order():
    named = [
        key
        for cell in cells(shipped_folder("notebooks") / "pen_job.ipynb", "code")
        for key in stages_named(source(cell))
    ]
    assert named == list(STAGES)


def test_every_sum_is_a_panel_and_its_python_beside_it():
    import pentools
    from pentools.sums import SUMS

    code = [source(cell) for cell in cells(shipped_folder("notebooks") / "quick_sums.ipynb", "code")]
    panels = [arg.value for text in code for node in ast.walk(ast.parse(text)) if isinstance(node, ast.Call) and ast.unparse(node.func) == "sums.panel" for arg in node.args]  # fmt: skip
    assert sorted(panels) == sorted(SUMS)
    asked = {node.args[0].func.attr for text in code for node in ast.walk(ast.parse(text)) if isinstance(node, ast.Call) and ast.unparse(node.func) == "display"}  # fmt: skip
    verbs = {name for name in pentools.__all__ if name.islower() and getattr(getattr(pentools, name), "__module__", "").startswith("pentools.answers") and name not in ("learned", "review")}  # fmt: skip
    assert asked == verbs
    assert len(verbs) == len(SUMS)
