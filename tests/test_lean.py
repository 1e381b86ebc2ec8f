"""nbformat is whole without the grammars of addresses, which stay to be had by others."""

import subprocess
import sys

from pentools.lean import GRAMMARS, notebook_format, without_grammars


def test_it_reads_writes_and_signs_notebooks():
    nbformat = notebook_format()
    book = nbformat.v4.new_notebook(cells=[nbformat.v4.new_markdown_cell("A pen.")])
    nbformat.validate(book)
    assert nbformat.reads(nbformat.writes(book), as_version=4).cells[0].source == "A pen."
    assert nbformat.sign.NotebookNotary


def test_the_grammars_are_hidden_only_while_something_is_imported():
    asked = f"""
import sys
from pentools.lean import notebook_format
notebook_format()
assert {GRAMMARS!r} not in sys.modules
assert "jsonschema" in sys.modules or "fastjsonschema" in sys.modules
"""
    subprocess.run([sys.executable, "-c", asked], check=True)


def test_what_was_imported_already_stays():
    held = sys.modules.get(GRAMMARS)
    sys.modules[GRAMMARS] = sys
    try:
        with without_grammars():
            assert sys.modules[GRAMMARS] is sys
        assert sys.modules[GRAMMARS] is sys
    finally:
        if held is None:
            del sys.modules[GRAMMARS]
        else:
            sys.modules[GRAMMARS] = held
