"""A panel with no sheet around it works by itself."""

from pentools.panels.sheet_part import Alone
from pentools.panels.stage import StagePanel
from pentools.record.registry import find_stage


def test_a_panel_alone_saves(job):
    panel = StagePanel(job, find_stage("limits"), Alone())
    form = panel.forms["nothing left"]
    form.boxes["nothing_left"].text = "yes"
    form.button.click()
    assert form.status.text.startswith("saved ")
