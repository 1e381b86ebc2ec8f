"""A panel with no sheet around it works by itself."""

from pentools.panels.sheet_part import Sheet
from pentools.panels.stage import StagePanel
from pentools.record.registry import find_stage


class Alone:
    """A sheet on which nobody follows."""

    def changed(self, source):
        pass

    def look_at(self, selector):
        pass

    def forget(self, stage, kind):
        pass

    def onward_now(self):
        pass


def test_a_panel_alone_saves(job):
    alone: Sheet = Alone()
    panel = StagePanel(job, find_stage("limits"), alone)
    form = panel.forms["nothing left"]
    form.boxes["nothing_left"].text = "yes"
    form.button.click()
    assert form.status.text.startswith("saved ")
