"""The front door: a line a pen, a press that opens its sheet, a box for a new one."""

import os

import pytest

from pentools.cli import main
from pentools.door import FrontDoor, open_door
from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, open_job
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def opened():
    return []


@pytest.fixture
def door(bench, opened):
    create_job(bench, "pen-1").add("intake", "arrival", {"pen": "black <b>lever</b> filler"})
    ended = create_job(bench, "pen-2")
    ended.add("release", "result", {"ending": "returned", "summary": "It goes back."})

    def opens(notebook, place):
        opened.append(notebook)
        return f"/doc/tree/{place}"

    return FrontDoor(bench, opens)


def lines(door):
    return {row.children[0].description: row.children[1].value for row in door.rows.children}


def test_every_pen_that_goes_on_stands_there_with_what_is_next(door):
    assert list(lines(door)) == ["pen-1"]
    assert "Black &lt;b&gt;lever&lt;/b&gt; filler." in lines(door)["pen-1"]
    assert "Next: say whose pen it is" in lines(door)["pen-1"]
    assert "On it: one pen. To be posted or fetched: 1." in door.head.value
    door.ended.value = True
    assert "Ended: returned unrepaired. Next: post it, or hand it over." in lines(door)["pen-2"]


def test_a_press_opens_the_sheet_in_this_window(door, bench, opened):
    door.rows.children[0].children[0].click()
    assert opened == [bench.folder / "pen-1" / "pen-1.ipynb"]
    assert door.desk.go_to == "/doc/tree/pen-1/pen-1.ipynb"


def test_a_new_pen_is_begun_with_a_few_words_and_enter(door, bench, opened):
    door.pen.value = "black hard-rubber lever filler"
    door.pen._handle_custom_msg({"event": "submit"}, [])
    name = opened[0].parent.name
    assert name.endswith("-001-black-hard-rubber-lever")
    assert (
        open_job(name, bench=bench).record.live("intake", "arrival")[0].data["pen"] == "black hard-rubber lever filler"
    )
    assert name in lines(door)
    assert door.pen.value == ""
    door.begin.click()
    assert "described in a few words" in door.status.text
    assert len(opened) == 1


def test_what_cannot_be_opened_says_why(door, bench):
    (bench.folder / "pen-1" / "pen-1.ipynb").unlink()
    door.rows.children[0].children[0].click()
    assert "NOT OPENED. pen-1 has no notebook" in door.status.text


def test_it_looks_again_when_a_page_comes_back_to_it(door, bench):
    open_job("pen-1", bench=bench).add("intake", "owner", {"owner": "Adela Quist", "contact": "by letter"})
    door.desk.woken = 5.0
    assert "Next: say what arrived" in lines(door)["pen-1"]


def test_the_sheet_knows_the_way_back(door, bench, monkeypatch):
    job = open_job("pen-1", bench=bench)
    monkeypatch.delenv("PENTOOLS_DOOR", raising=False)
    assert "the bench</a>" not in BenchSheet(job).head.value
    monkeypatch.setenv("PENTOOLS_DOOR", "/doc/tree/bench.ipynb")
    assert '<a class="pt-back" href="/doc/tree/bench.ipynb">' in BenchSheet(job).head.value


def test_where_there_is_no_bench_it_says_so(tmp_path, monkeypatch):
    (tmp_path / "bench.toml").write_text("[bench\n")
    monkeypatch.chdir(tmp_path)
    assert "On it: no pen." in open_door().head.value
    assert os.listdir(tmp_path) == ["bench.toml"]


def test_open_without_a_job_serves_the_benchs_own_notebook(bench, monkeypatch):
    served = []
    monkeypatch.setattr("pentools.lab.run_lab", lambda notebook, **_: served.append(notebook) or 0)
    assert main(["open", "--bench", str(bench.folder)]) == 0
    assert served == [bench.folder / "bench.ipynb"]
    assert "open_door" in served[0].read_text(encoding="utf-8")
    assert "door.queue()" in (bench.folder / "ledger.ipynb").read_text(encoding="utf-8")
    served[0].write_text("mine", encoding="utf-8")
    main(["open", "--bench", str(bench.folder)])
    assert served[1].read_text(encoding="utf-8") == "mine"


def test_parts_wanted_are_listed_over_all_pens(door, bench):
    assert "No part is wanted." in door.wanted().widget.children[0].value
    job = open_job("pen-1", bench=bench)
    job.add("limits", "limit", {"part": "clip", "left": "the clip", "why": "lost", "instead": "a borrowed <i>clip</i>", "for_now": "yes", "wanted": "a clip of its own"})  # fmt: skip
    shown = door.wanted().widget.children[0].value
    assert "a clip of its own" in shown
    assert "borrowed &lt;i&gt;" in shown


def test_what_can_be_worked_on_stands_first_and_what_waits_says_for_what(door, bench):
    job = open_job("pen-1", bench=bench)
    job.add("work log", "wanted", {"what": "a <clip>", "expected_by": "2026-01-02"})
    create_job(bench, "pen-3").add("intake", "request", {"asked": "make it write", "promised_by": "2020-01-02"})
    door.refresh()
    assert list(lines(door)) == ["pen-3", "pen-1"]
    assert "Promised by 2 Jan 2020: it is past." in lines(door)["pen-3"]
    assert "Waits for a &lt;clip&gt;, expected by 2 January 2026." in lines(door)["pen-1"]
    assert "■ late: a &lt;clip&gt; was expected by 2 January 2026" in lines(door)["pen-1"]


def test_a_pen_that_came_with_another_takes_over_its_owner(door, bench):
    open_job("pen-1", bench=bench).add("intake", "owner", {"owner": "Adela Quist"})
    assert door.came_with.layout.display == "none"
    door.with_others.value = True
    assert (door.came_with.layout.display, door.came_with.options) == ("", ("pen-1",))
    door.pen.value, door.came_with.value = "a red pen", "pen-9"
    door.begin.click()
    assert "no job pen-9" in door.status.text
    assert len(list(bench.folder.glob("*/record.jsonl"))) == 2
    door.came_with.value = "pen-1"
    door.begin.click()
    [name] = [name for name in lines(door) if "red" in name]
    job = open_job(name, bench=bench)
    assert (job.newest(OWNER).owner, job.newest(ARRIVAL).pen) == ("Adela Quist", "a red pen")
    assert "Came with pen-1." in lines(door)[name]
    assert not door.with_others.value


def test_the_queue_and_the_notebook_over_all_pens_are_a_press_away(door, bench, opened):
    queue = door.queue()
    assert "2 pens wait for something; 1 can be worked on now." in queue.head.value
    row = next(row for row in queue.rows.children if getattr(row, "children", ()))
    row.children[0].click()
    assert opened == [bench.folder / "pen-1" / "pen-1.ipynb"]
    door.over_all()
    assert opened[1] == bench.folder / "ledger.ipynb"
    assert "door.queue()" in opened[1].read_text(encoding="utf-8")
    assert door.desk.go_to == "/doc/tree/ledger.ipynb"
