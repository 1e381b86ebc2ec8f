"""The record: everything of the owner's, each thing once, found from its contents, and nothing for the bench."""

import re

import pytest
from PIL import Image
from writeup.pages import Parsed, code, markdown, notebook, stage

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.common import PARTS
from pentools.writeup.letter.page import letter_files
from pentools.writeup.notebook import read_notebook
from pentools.writeup.record.page import build_record, record_files

SAMPLES = ("green-piston", "lever-with-limits", "casein-returned", "mixed-dates", "short-breather", "syringe-ladder")
ORDERS = r"(?:^|[.:;] )(?:Stop|Weigh|Measure|Next test|Look for|Take it out|Never|Say so|say so)\b"


def sample(name, folder):
    return create_job(open_bench_folder(folder, create=True), name, sample=name)


def record(job, cells=None):
    return record_files(job, cells)["record.html"]


def test_the_contents_lead_to_every_section_and_back_to_nothing_else(small_job):
    page = record(small_job)
    contents = re.search(r'<nav class="contents".*?</nav>', page, re.DOTALL)[0]
    targets = re.findall(r'href="#([^"]+)"', contents)
    sections = re.findall(r'<section class="stage level-2[^"]*" id="([^"]+)"', page)
    assert targets == sections
    assert len(set(targets)) == len(targets)
    assert "s-story" in targets
    assert targets[-2:] == ["s-methods", "s-log"]
    assert re.findall(r">([^<]+)</a>", contents)[targets.index("s-story")] == "The story, as it was told"


def test_printed_it_has_its_number_and_page_numbers_on_every_sheet(small_job):
    page = record(small_job)
    assert f'@bottom-left {{ content: "Job {small_job.name}"' in page.replace("\n", " ").replace("  ", " ")
    assert "counter(page)" in page
    assert "counter(pages)" in page
    assert page.count("<details open>") == page.count("<details")


def test_the_story_stands_under_one_heading_with_what_was_published(small_job):
    shown = code("x", "publish", outputs=[{"output_type": "stream", "name": "stdout", "text": "Outputword"}])
    cells = notebook(markdown("# How it came\n\nTold."), stage("limits"), shown, markdown("For you alone.", "private"))
    text = Parsed(record(small_job, cells)).text
    places = [text.rindex(words) for words in ("How it ended", "How it came", "Outputword", "For you alone.")]
    assert places == sorted(places)
    none = build_record(small_job, notebook(stage("limits")))
    assert none.passages == ()
    assert "story" not in [key for key, _ in none.contents]


def test_the_restorers_summary_leads_and_is_said_once(small_job):
    small_job.add("release", "result", {"ending": "done", "summary": "Summaryword stands here.", "care": "x"})
    page = record(small_job)
    before_the_log = page[: page.index('id="s-log"')]
    assert Parsed(before_the_log).text.count("Summaryword") == 1
    head = build_record(small_job).head
    assert head[0].section.blocks[0].text == "Summaryword stands here."


@pytest.mark.parametrize("name", SAMPLES)
def test_samples_have_no_heading_twice_no_empty_table_and_no_order(name, tmp_path):
    job = sample(name, tmp_path)
    page = record(job, read_notebook(job.notebook))
    headings = [Parsed(text).text for text in re.findall(r"<h2[^>]*>(.*?)</h2>", page, re.DOTALL)]
    assert len(headings) == len(set(headings))
    for table in re.findall(r"<table class=\"data.*?</table>", page, re.DOTALL):
        rows = [
            re.findall(r"<td[^>]*>(.*?)</td>", row, re.DOTALL)
            for row in re.findall(r"<tr>(.*?)</tr>", table, re.DOTALL)
        ]
        columns = list(zip(*[row for row in rows if row], strict=True))
        assert columns
        assert all(any(cell.strip() not in ("", "–") for cell in column) for column in columns)
    paragraphs = [
        Parsed(text).text for text in re.findall(r"<p(?: class=\"(?:lead|notice)\")?>(.*?)</p>", page, re.DOTALL)
    ]
    own = "\n".join(str(entry.data) for entry in job.record.entries) + read_notebook(job.notebook).__repr__()
    for text in paragraphs:
        assert not re.search(ORDERS, text) or text[:40] in own, text
    assert "nothing broke" not in page


def test_thirty_strings_of_the_bench_alone_are_in_neither_form(new_job):
    """Every field of the bench alone and a remark at entries of every kind; the owner's own words are there."""
    job = new_job()
    words = iter(f"benchword{number:02d}zz" for number in range(99))
    planted = []

    def remark():
        planted.append(next(words))
        return planted[-1]

    def add(stage_key, kind, texts, **bench):
        job.add(stage_key, kind, texts | bench, note=remark())

    hidden = [next(words) for _ in range(3)]
    add("intake", "owner", {"owner": "Adela Quist"}, private_note=hidden[0])
    add("intake", "arrival", {"pen": "ochre filler", "system": "lever-sac"})
    add("intake", "request", {"asked": "Ownersword."})
    add("intake", "consent", {"publish": "no"})
    add("identify", "mark", {"where": "nib", "text": "14"})
    for part, _ in PARTS[:8]:
        add("condition", "part", {"part": part, "severity": "2", "seen": "Seen."})
    add("agree", "answer", {"action": "heat", "agreed": "yes", "answered_on": "2026-03-11", "channel": "letter"})
    add("open", "parts tray", {"items": "cap; nib"}, kept=hidden[1])
    add("open", "step", {"did": "Drawn.", "number": "1"})
    add("work log", "work", {"activity": "seal", "minutes": "5 min", "done": "Sealed."})
    add("work log", "material", {"what": "a sac", "way": "added"})
    add("work log", "departure", {"what": "One thing.", "why": "So."})
    for state, mass in (("dry", "16.550 g"), ("filled", "17.850 g")):
        add("fill test", "weighing", {"state": state, "mass": mass})
    add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    add("limits", "limit", {"part": "cap", "left": "A crack.", "why": "Stable."})
    (job.folder / "photos").mkdir(exist_ok=True)
    Image.new("RGB", (4, 4), "grey").save(job.folder / "photos" / "none.jpg")
    add("pictures", "picture", {"photo": "none.jpg", "moment": "before", "shows": "x"})
    add("release", "result", {"ending": "done with limits", "summary": "Done.", "care": "Careful."})
    cells = notebook(markdown("# Told\n\nOpenly."), markdown(f"{hidden[2]}", "how-to"), stage("intake"))
    assert len(planted) + len(hidden) >= 25
    for form, page in (("letter", letter_files(job, cells)["client.html"]), ("record", record(job, cells))):
        assert [word for word in (*planted, *hidden) if word in page] == [], form
    assert "Ownersword." in record(job, cells)
