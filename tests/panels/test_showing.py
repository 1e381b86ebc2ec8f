"""Whatever has a widget shows it."""

from pentools.panels.showing import ShowsItself


def test_the_widget_is_displayed(monkeypatch):
    shown = []
    monkeypatch.setattr("IPython.display.display", shown.append)
    panel = ShowsItself()
    panel.widget = "the widget"
    panel._ipython_display_()
    assert shown == ["the widget"]
