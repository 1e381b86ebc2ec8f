"""The queue as rows: a heading a group, what a pen waits for, and a press that opens its sheet."""

import datetime as dt

import pytest

from pentools.books.queue.queue import Line
from pentools.panels.queue_rows import SHOWN, QueuePanel, row_words

DAY = dt.date(2026, 11, 28)
ON = Line("pen-1", "a <red> pen", "bench", True, dt.date(2026, 11, 26), "open it", promised_by=dt.date(2026, 12, 2), danger="it is tight",
          holds=(("heat", "the material is not named"),), parcel="pen-1")  # fmt: skip
PART = Line("pen-2", "", "part", False, dt.date(2026, 11, 1), "open it", waits_for=("a clip",), overdue=("a clip was expected by 1 May 2026",))  # fmt: skip
POST = Line("pen-3", "a dun pen", "posting", True, dt.date(2026, 9, 1), "post it", overdue=("uncollected for 88 days",), ending="done", follow_up="ask after it")  # fmt: skip


def test_what_a_row_says():
    assert row_words(ON, DAY) == (
        "<b>A &lt;red&gt; pen.</b> Next: open it. Promised by 2 Dec: it is tight. First of its parcel."
        '<br><span class="pt-waits">■ heat waits: the material is not named</span>'
    )
    assert row_words(PART, DAY) == (
        'Next: open it. Waits for a clip.<br><span class="pt-waits">■ late: a clip was expected by 1 May 2026</span>'
    )
    assert row_words(POST, DAY).startswith("<b>A dun pen.</b> Ended: done. Next: post it. Since 1 Sep.<br>")
    assert row_words(POST, DAY, follow_up=True) == "<b>A dun pen.</b> Ask after it."
    assert row_words(Line("pen-4", "", "unread", False, None, "No <file>."), DAY) == "✗ No &lt;file&gt;."


@pytest.fixture
def panel(monkeypatch):
    def shown(lines):
        monkeypatch.setattr("pentools.panels.queue_rows.queue_on", lambda *_: tuple(lines))
        opened = []
        return QueuePanel(None, opened.append, DAY), opened

    return shown


def heads(panel):
    return [row.value for row in panel.rows.children if not getattr(row, "children", ())]


def test_groups_and_a_press(panel):
    queue, opened = panel([ON, PART, POST])
    assert heads(queue)[:3] == ["<h3>To work on now (1)</h3>", "<h3>Waiting for a part (1)</h3>", "<h3>Done, to be posted or fetched (1)</h3>"]  # fmt: skip
    assert "your own law" in heads(queue)[3]
    assert heads(queue)[4] == "<h3>Follow-ups due (1)</h3>"
    [row for row in queue.rows.children if getattr(row, "children", ())][1].children[0].click()
    assert opened == ["pen-2"]
    assert panel([])[0].head.value == "<p>Nothing waits on this bench.</p>"


def test_a_long_group_is_cut_and_says_so(panel):
    queue, _ = panel([ON] * (SHOWN + 2))
    assert heads(queue)[-1] == "<p>and 2 more: pentools queue</p>"
    assert len(queue.rows.children) == SHOWN + 2
