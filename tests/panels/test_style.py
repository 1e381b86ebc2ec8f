"""The style sheet: words can be read on the paper, and every class that a panel gives out has a rule."""

import re

import pytest
from building import PACKAGE
from contrast import contrast

from pentools.panels.style import STYLE

COLOURS = dict(re.findall(r"--(\w+):(#[0-9a-f]{6})", STYLE))


@pytest.mark.parametrize("name", ["ink", "brass", "jade", "oxblood", "slate"])
def test_words_stand_out_from_the_paper(name):
    # WCAG 2.2, success criterion 1.4.3: at least 4.5 to 1 for text
    assert contrast(COLOURS["paper"], COLOURS[name]) >= 4.5


def test_every_class_a_panel_gives_out_has_a_rule():
    given = set()
    for path in (PACKAGE / "panels").rglob("*.py"):
        if path.name != "style.py":
            given |= set(re.findall(r"\bpt-[a-z]+(?:-[a-z]+)*(?!-)\b", path.read_text(encoding="utf-8")))
    given -= {"pt-draft", "pt-slot-"}  # names for the browser's part alone
    assert {"pt-hold", "pt-caution"} <= given
    assert given <= set(re.findall(r"\.(pt-[a-z-]+)", STYLE))
