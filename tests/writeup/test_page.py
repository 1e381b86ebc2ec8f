"""The page as a reader's browser takes it: self-contained, in order, readable without seeing it."""

import re
import subprocess
import sys

import pytest
from PIL import Image
from writeup.pages import CONTACT, Parsed, code, markdown, notebook, stage

from pentools.errors import HoldError, InputError
from pentools.record.entries import new_entry
from pentools.record.registry import all_stages
from pentools.writeup.making import section_of
from pentools.writeup.page import build_page, render_page

HOSTILE = '<script>alert("x")</script><img src=http://evil.example/x onerror=alert(1)> & "quoted"'


@pytest.fixture(params=["owner", "everybody"])
def audience(request):
    return request.param


def test_nothing_is_run_and_nothing_is_fetched(small_job, audience):
    page = render_page(small_job, audience)
    parsed = Parsed(page)
    names = {tag for tag, _ in parsed.tags}
    assert not names & {"script", "link", "iframe", "object", "embed", "form", "base", "video", "audio", "source"}
    assert not [name for _, attrs in parsed.tags for name in attrs if name.startswith("on")]
    for tag, name, value in parsed.links:
        plain = tag == "a" and name == "href" and value.startswith(("http://", "https://", "mailto:"))
        assert plain or value.startswith(("data:image/", "#")), (tag, name, value[:60])
    policy = [a["content"] for t, a in parsed.tags if t == "meta" and a.get("http-equiv") == "Content-Security-Policy"]
    assert policy == ["default-src 'none'; img-src data:; style-src 'unsafe-inline'"]
    assert "@import" not in page
    assert "url(http" not in page


def test_headings_landmarks_and_pictures_can_be_followed(small_job, audience):
    page = Parsed(render_page(small_job, audience))
    assert page.headings.count(1) == 1
    assert page.headings[0] == 1
    assert all(after <= before + 1 for before, after in zip(page.headings, page.headings[1:], strict=False))
    assert {"header", "main", "footer"} <= {tag for tag, _ in page.tags}
    assert page.images
    assert all(image.get("alt", "").strip() for image in page.images)
    drawings = [a for t, a in page.tags if t == "svg"]
    assert drawings
    assert all(a.get("role") == "img" and (a.get("aria-label") or a.get("aria-labelledby")) for a in drawings)
    assert len(page.ids) == len(set(page.ids))
    assert ("a", "href", "#content") in page.links
    assert next(a["lang"] for t, a in page.tags if t == "html") == "en"


def test_every_table_has_headings_with_a_scope(small_job, audience):
    page = Parsed(render_page(small_job, audience))
    assert all(attrs.get("scope") in ("row", "col") for tag, attrs in page.tags if tag == "th")
    assert any(tag == "caption" for tag, _ in page.tags)


def test_hostile_text_stays_text(new_job, audience):
    job = new_job()
    for which in all_stages():
        for kind in which.kinds:
            data = {f.name: HOSTILE for f in kind.fields if f.kind in ("text", "long text")}
            data |= {f.name: f.choices[0][0] for f in kind.fields if f.kind == "choice"}
            data |= {f.name: {"value": 1.0, "unit": f.unit} for f in kind.fields if f.kind == "quantity"}
            job.record.append(new_entry(which.key, kind.key, data, note=HOSTILE))
    job.add("intake", "consent", {"publish": "yes"})
    cells = notebook(
        markdown(f"# {HOSTILE}\n\n{HOSTILE}\n\n[a](javascript:alert(1)) [b](data:text/html,x)"),
        *(stage(s.key) for s in all_stages()),
    )
    # as a draft: what is the bench's own is public too here, and would hold the page
    page = Parsed(render_page(job, audience, cells, draft=audience == "everybody"))
    assert not {"script"} & {tag for tag, _ in page.tags}
    assert not [
        value for _, _, value in page.links if "evil" in value or "javascript" in value or value.startswith("data:text")
    ]
    assert '<script>alert("x")</script>' in page.text
    assert not [a for _, a in page.tags if "onerror" in a]


def test_an_unfinished_job_says_so_at_its_head(new_job, small_job, audience):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen"})
    job.add("intake", "consent", {"publish": "yes"})
    text = Parsed(render_page(job, audience, notebook())).text
    assert "This job is not finished." in text
    assert text.index("This job is not finished.") < text.index("In short")
    assert "This job is not finished." not in Parsed(render_page(small_job, audience)).text


def test_the_clients_page_says_what_stands_in_the_way_of_release(new_job):
    job = new_job()
    text = Parsed(render_page(job, "owner", notebook())).text
    assert "The leak check has not been done and the limits have not been written." in text


def test_a_released_hold_is_shown_with_its_reason_to_the_client_only(small_job):
    small_job.release("release", "release", "the owner travels tomorrow")
    assert "The hold on releasing the pen was released" in Parsed(render_page(small_job, "owner")).text
    assert "The owner travels tomorrow." in Parsed(render_page(small_job, "owner")).text
    assert "travels" not in render_page(small_job, "everybody")


def test_the_order_of_the_owners_record(small_job):
    page = render_page(small_job, "owner")
    assert re.findall(r'<section class="stage level-2[^"]*" id="s-([^"]+)"', page) == [
        "summary", "before-after", "identity", "intake", "condition", "work-log", "fill-test", "limits", "release",
        "care", "price", "departures", "story", "methods", "log",
    ]  # fmt: skip
    assert CONTACT in Parsed(page).text


def test_the_story_leads_the_page_for_publication(small_job):
    page = build_page(small_job, "everybody")
    assert [placed.section.key for placed in page.head] == ["summary", "before-after"]
    assert page.passages[0].story
    assert page.passages[0].placed[0].section.key == "identity"


def test_publication_needs_consent(new_job):
    job = new_job()
    with pytest.raises(HoldError, match="consent to publish is not recorded"):
        render_page(job, "everybody", notebook())
    assert "Not for publication." in Parsed(render_page(job, "everybody", notebook(), draft=True)).text
    job.add("intake", "consent", {"publish": "no"})
    with pytest.raises(HoldError, match="said no"):
        render_page(job, "everybody", notebook())
    with pytest.raises(InputError):
        render_page(job, "the world", notebook())


def test_a_stage_that_is_not_known_is_said_in_words(small_job):
    cells = notebook(stage("seance"), stage("intake"))
    assert (
        "asks for a stage “seance”, which this version does not know"
        in Parsed(render_page(small_job, "owner", cells)).text
    )
    assert "seance" not in render_page(small_job, "everybody", cells)


def test_a_stage_without_entries_is_left_out(new_job, audience):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes"})
    cells = notebook(markdown("# Story"), *(stage(s.key) for s in all_stages()))
    text = Parsed(render_page(job, audience, cells)).text
    assert "What was wrong" not in text
    assert "How it performs now" not in text
    for which in all_stages():
        if which.key != "intake":
            assert section_of(job, which.key, audience).blocks == ()


def test_a_stage_taken_out_of_the_notebook_is_still_on_the_clients_page(small_job):
    assert "A hairline at the lip." in Parsed(render_page(small_job, "owner", notebook(markdown("# Story")))).text
    assert "hairline" not in render_page(small_job, "everybody", notebook(markdown("# Story"))).replace(
        "A hairline at the lip", "", 0
    )


def test_a_stage_named_twice_is_shown_once(small_job):
    page = build_page(small_job, "everybody", notebook(stage("limits"), stage("limits")))
    keys = [p.section.key for passage in page.passages for p in passage.placed]
    assert keys.count("limits") == 1


def test_a_picture_stands_once_on_a_page(small_job, audience):
    for part in ("cap", "barrel"):
        small_job.add("condition", "part", {"part": part, "seen": "Dull.", "severity": "1", "photo": "side-a.jpg"})
    Image.new("RGB", (62, 30), "navy").save(small_job.folder / "photos" / "seal.jpg")
    small_job.add(
        "pictures", "picture", {"photo": "seal.jpg", "moment": "during", "shows": "the cork", "public": "yes"}
    )
    for part in ("seals", "filler"):
        small_job.add("condition", "part", {"part": part, "seen": "Shrunk.", "severity": "3", "photo": "seal.jpg"})
    page = Parsed(render_page(small_job, audience))
    assert [image["width"] for image in page.images] == ["60", "60", "62"]
    assert "Seals and sac and filling mechanism: The cork." in page.text
    assert "More pictures" not in page.text


def test_weighings_that_contradict_each_other_are_said_in_words(small_job):
    small_job.add("fill test", "weighing", {"state": "drained", "mass": "18.00 g"})
    small_job.add("fill test", "weighing", {"state": "filled", "mass": "16.00 g"})
    text = Parsed(render_page(small_job, "owner")).text
    assert "To be settled: Some of these entries contradict each other" in text
    assert "The full dated log" in text


def test_entries_spoilt_by_hand_do_not_stop_the_page(small_job, audience):
    small_job.record.append(new_entry("condition", "part", {"part": 7, "severity": "grave"}))
    small_job.record.append(new_entry("work log", "work", {"activity": "open", "minutes": "long", "done": "x"}))
    text = Parsed(render_page(small_job, audience)).text
    assert ("An entry that cannot be read; it is kept as it stands." in text) == (audience == "owner")
    assert "How it performs now" in text


def test_the_log_keeps_corrections_and_withdrawals(small_job):
    old = small_job.add("work log", "work", {"activity": "open", "minutes": "5 min", "done": "first words"})
    small_job.add("work log", "work", {"activity": "open", "minutes": "6 min", "done": "second words"}, replaces=old.id)
    gone = small_job.add("limits", "limit", {"part": "nib", "left": "third words", "why": "fourth"})
    small_job.withdraw(gone, "a slip")
    text = Parsed(render_page(small_job, "owner")).text
    for words in (
        "first words",
        "second words",
        "third words",
        "Corrects the entry of",
        "(Corrected on",
        "(Taken back on",
        "Reason: A slip.",
    ):
        assert words in text
    assert "first words" not in render_page(small_job, "everybody")
    assert "third words" not in render_page(small_job, "everybody")


def test_what_the_file_could_not_give_is_said_to_the_client(small_job):
    with small_job.record.path.open("ab") as file:
        file.write(b"no entry\n")
    small_job.record.refresh()
    assert "About the file: Line" in Parsed(render_page(small_job, "owner")).text


def test_published_outputs_keep_their_place(small_job):
    shown = code("1", "publish", outputs=[{"output_type": "stream", "name": "stdout", "text": "printed here"}])
    text = Parsed(
        render_page(small_job, "everybody", notebook(markdown("# Story"), shown, stage("limits"), stage("intake")))
    ).text
    assert text.index("# Story"[2:]) < text.index("printed here") < text.index("A hairline at the lip.")


def test_making_a_page_needs_no_slow_library():
    code_text = (
        "import sys, pentools.writeup.page, pentools.writeup.write\n"
        "print([m for m in ('nbformat', 'nbconvert', 'pandas', 'matplotlib', 'IPython', 'ipywidgets') if m in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code_text],
        capture_output=True,
        text=True,
        check=True,
        env={"PYTHONPATH": ":".join(sys.path)},
    )
    assert done.stdout.strip() == "[]"


def levels(page):
    return [(p.section.key, p.level) for passage in page.passages for p in passage.placed if hasattr(p, "level")]


def test_a_stage_stands_below_the_story_before_it_and_the_next_one_afresh(small_job):
    cells = notebook(stage("work log"), markdown("# One\n\nWords."), stage("condition"), stage("limits"), markdown("More."), stage("intake"))  # fmt: skip
    page = build_page(small_job, "everybody", cells)
    assert levels(page)[:5] == [("work log", 2), ("identity", 3), ("condition", 3), ("limits", 2), ("intake", 2)]
    told = [(bool(p.story), [item.section.key for item in p.placed]) for p in page.passages][:4]
    assert told == [(False, ["work log"]), (True, ["identity", "condition"]), (False, ["limits"]), (True, ["intake"])]


@pytest.mark.parametrize(("story", "level"), [("# One\n\nWords.", 3), ("Words alone.", 2)])
def test_what_the_pen_is_stands_beside_the_beginning_of_the_story(small_job, story, level):
    page = build_page(small_job, "everybody", notebook(markdown(story), stage("limits")))
    assert levels(page)[0] == ("identity", level)
    assert "identity" in [p.section.key for p in build_page(small_job, "owner", notebook(markdown(story))).head]
    without = build_page(small_job, "everybody", notebook(stage("limits")))
    assert [p.section.key for p in without.head] == ["summary", "before-after", "identity"]


@pytest.mark.parametrize(
    ("stories", "headings"),
    [(("# One\n\n## Two",), [2, 2]), (("# One\n\n## Two", "# Three\n\n## Four"), [2, 3, 2, 3])],
)
def test_headings_go_down_one_level_where_there_are_several_chapters(small_job, stories, headings):
    page = build_page(small_job, "everybody", notebook(*(markdown(text) for text in stories)))
    assert Parsed("".join(p.story for p in page.passages)).headings == headings
