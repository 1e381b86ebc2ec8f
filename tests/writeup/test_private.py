"""Each page shows what its reader may see: nothing private for everybody, nothing of the bench's for the owner."""

import itertools
from datetime import datetime
from typing import Annotated

import pytest
from PIL import Image
from writeup.pages import CONTACT, Parsed, code, markdown, notebook, plain_date, stage

from pentools.errors import RecordError
from pentools.fields import ask
from pentools.record import registry
from pentools.record.entries import new_entry
from pentools.record.forms import Form
from pentools.record.kinds import Kind, Stage
from pentools.record.registry import all_stages
from pentools.units import Reading
from pentools.writeup.page import build_page, render_page
from pentools.writeup.words import date_in_words


def planted(field, number):
    """A value for a field and the text it leaves on a page; None for a text that could not be told apart."""
    word = f"Plant{number:03d}x{field.name.replace('_', '')}"
    match field.kind:
        case "text" | "long text" | "money":
            return word, word
        case "items":
            return [word], word
        case "photo":
            return f"{word}.jpg", f"{word}.jpg"
        case "date":
            day = plain_date(number)
            return day.isoformat(), date_in_words(day)
        case "choice":
            return field.choices[0][0], None
        case "ticks":
            return [field.choices[0][0]], None
        case "yes-no":
            return True, None
        case "quantity" | "quantities":
            low, high = field.low if field.low is not None else 1.0, field.high if field.high is not None else 2.0
            reading = Reading(low + 0.37 * (high - low), field.unit).as_json()
            return (reading if field.kind == "quantity" else [reading]), None
        case _:
            return field.low if field.low is not None else 1, None


@pytest.fixture
def full_of_plants(new_job):
    """A job with a string of its own in every field of every kind of every stage, in every note, and beside them."""
    job, public, private, bench = new_job(), {}, {}, {}
    for_whom = {"everybody": public, "owner": private, "bench": bench}
    count = itertools.count(1)
    for which in all_stages():
        for kind in which.kinds:
            data = {}
            for field in kind.fields:
                data[field.name], text = planted(field, next(count))
                if text:
                    for_whom[field.audience][f"{which.key}/{kind.key}/{field.name}"] = text
            note = f"Plant{next(count):03d}xnote"
            bench[f"{which.key}/{kind.key} note"] = note
            entry = job.record.append(new_entry(which.key, kind.key, data, note=note))
            if kind.key == "weighing":
                weighing = entry
    filled = {"state": "filled", "mass": Reading(weighing.data["mass"]["value"] + 1.3, "g").as_json()}
    job.record.append(new_entry("fill test", "weighing", filled))
    job.record.append(
        new_entry("fill test", "weighing", filled, note="Plant901xcorrected", replaces=job.record.entries[-1].id)
    )
    job.withdraw(
        job.record.append(
            new_entry(
                "work log",
                "work",
                {"activity": "open", "minutes": {"value": 5, "unit": "min"}, "done": "Plant902xwithdrawn"},
            )
        ),
        "Plant903x reason",
    )
    job.release("release", "release", "Plant904x because of haste")
    job.record.append(new_entry("unheard of", "thing", {"what": "Plant905xunknownstage"}, note="Plant906xunknownnote"))
    job.record.append(new_entry("intake", "odd", {"what": "Plant907xunknownkind"}))
    job.record.append(
        new_entry(
            "condition", "part", {"part": "cap", "seen": "a mark", "severity": "1", "later": "Plant908xunknownfield"}
        )
    )
    private |= {
        text: text
        for text in ("Plant902xwithdrawn", "Plant903x", "Plant904x", "Plant909xprivatecell", CONTACT, job.name)
    }
    # remarks, and what this version does not know, so that nobody has said who may see it
    bench |= {
        text: text
        for text in (
            "Plant901xcorrected", "Plant905xunknownstage", "Plant906xunknownnote", "Plant907xunknownkind",
            "Plant908xunknownfield",
        )
    }  # fmt: skip
    for path in public.values():
        if path.endswith(".jpg"):
            Image.new("RGB", (40, 20), "teal").save(job.folder / "photos" / path)
    cells = notebook(
        markdown("# The story\n\nStorytext here."),
        markdown("Plant909xprivatecell", "private"),
        markdown("Plant910xhowto", "how-to"),
        code(
            "'Plant911xuntagged'",
            outputs=[{"output_type": "execute_result", "data": {"text/plain": "Plant912xuntagged"}, "metadata": {}}],
        ),
        *(stage(which.key) for which in all_stages()),
    )
    return job, cells, public, private, bench


def test_private_strings_stay_off_the_page_for_publication(full_of_plants):
    job, cells, public, private, bench = full_of_plants
    page = render_page(job, "everybody", cells)
    assert len(private) >= 30
    assert {where: text for where, text in (private | bench).items() if text in page} == {}
    # the check can fail: public strings do stand there (a picture's file name is never shown)
    shown = [text for text in public.values() if not text.endswith(".jpg")]
    assert len(shown) >= 20
    assert [text for text in shown if text not in page] == []
    assert "Storytext here." in page


def test_the_clients_page_holds_every_string_but_the_benchs_own(full_of_plants):
    job, cells, public, private, bench = full_of_plants
    page = render_page(job, "owner", cells)
    squeezed = Parsed(page).text.replace("\u00a0", " ")
    assert {
        where: word for where, word in (public | private).items() if word.replace("\u00a0", " ") not in squeezed
    } == {}
    assert len(bench) >= 50
    assert {where: text for where, text in bench.items() if text in page} == {}


def test_instructions_and_untagged_code_are_on_neither_page(full_of_plants):
    job, cells, *_ = full_of_plants
    for audience in ("owner", "everybody"):
        page = render_page(job, audience, cells)
        assert "Plant910x" not in page
        assert "Plant911x" not in page
        assert "Plant912x" not in page


def test_pictures_need_consent_and_their_own_yes(new_job):
    job = new_job()
    colours = {"may.jpg": "yes", "not.jpg": "no", "unsaid.jpg": ""}
    for number, (name, word) in enumerate(colours.items()):
        Image.new("RGB", (40 + number, 20), "teal").save(job.folder / "photos" / name)
        job.add("pictures", "picture", {"photo": name, "moment": "during", "shows": f"shows {name}", "public": word})
    cells = notebook(markdown("Story ![one](photos/not.jpg) and ![two](photos/may.jpg)"), stage("pictures"))
    job.add("intake", "consent", {"publish": "yes", "pictures": "no"})
    assert Parsed(render_page(job, "everybody", cells)).images == []
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    page = Parsed(render_page(job, "everybody", cells))
    assert {image["width"] for image in page.images} == {"40"}
    assert "not.jpg" not in page.text
    assert "unsaid.jpg" not in page.text
    job.add("pictures", "picture", {"photo": "may.jpg", "moment": "after", "shows": "the same file", "public": "no"})
    assert Parsed(render_page(job, "everybody", cells)).images == []
    assert {image["width"] for image in Parsed(render_page(job, "owner", cells)).images} == {"40", "41", "42"}


class Words(Form, frozen=True):
    open_word: Annotated[str | None, ask("Open word", audience="everybody")] = None
    owners_word: Annotated[str | None, ask("Owner's word")] = None
    benchs_word: Annotated[str | None, ask("Bench's word", audience="bench")] = None


def test_a_stage_added_later_is_held_to_the_same_list(new_job, monkeypatch):
    later = Stage("later", "Later stage", "For the test.", (Kind("later", "trial", "Trial", Words),))
    monkeypatch.setitem(registry.STAGES, "later", "nowhere:LATER")
    registry.find_stage.cache_clear()
    real = registry.find_stage
    for module in (
        "pentools.record.job",
        "pentools.writeup.making",
        "pentools.writeup.closing",
        "pentools.record.registry",
    ):
        monkeypatch.setattr(f"{module}.find_stage", lambda key: later if key == "later" else real(key))
    job = new_job()
    job.add("intake", "consent", {"publish": "yes"})
    words = {"open_word": "openaaa", "owners_word": "ownersbbb", "benchs_word": "benchsccc"}
    job.add("later", "trial", words, note="noteddd")
    cells = notebook(stage("later"))
    shown = {audience: render_page(job, audience, cells) for audience in ("owner", "everybody")}
    found = {a: [word for word in (*words.values(), "noteddd") if word in page] for a, page in shown.items()}
    assert found == {"owner": ["openaaa", "ownersbbb"], "everybody": ["openaaa"]}


def test_why_a_section_cannot_be_shown_is_the_benchs_to_know(small_job, monkeypatch):
    def spoilt(*_):
        raise RecordError("ownersword")

    monkeypatch.setattr("pentools.writeup.sections.job.limits.section", spoilt)
    record, public = (render_page(small_job, audience) for audience in ("owner", "everybody"))
    assert "no result is drawn from them" in record
    assert "These entries cannot be shown." in public
    assert "ownersword" not in record + public


def test_a_picture_left_out_is_named_to_the_client_alone(small_job):
    story = notebook(markdown("Words ![x](photos/adela-quist.jpg) and ![y](attachment:gone.png)"))
    client, blog = (Parsed(render_page(small_job, audience, story)).text for audience in ("owner", "everybody"))
    for name in ("adela-quist.jpg", "gone.png"):
        assert f"A picture was left out: {name[:1].upper()}" in client or name in client
        assert name not in blog
    assert "left out" not in blog


def test_when_an_open_job_was_worked_on_and_what_holds_it_are_the_clients(new_job):
    job = new_job()
    job.record.append(new_entry("intake", "consent", {"publish": True}, at=datetime.fromisoformat("2026-03-16T10:00:00+01:00")))  # fmt: skip
    job.record.append(new_entry("intake", "arrival", {"pen": "a pen"}, at=datetime.fromisoformat("2026-03-14T10:00:00+01:00")))  # fmt: skip
    client, blog = (build_page(job, audience, notebook()).notices for audience in ("owner", "everybody"))
    assert [notice.word for notice in (*client, *blog)] == ["Unfinished", "Unfinished"]
    assert "the state of 16\u00a0March 2026" in client[0].text  # the newest by the clock
    assert "leak check" in client[0].text
    assert blog[0].text == "This job is not finished."
    empty = new_job()
    assert "Nothing has been entered yet." in build_page(empty, "owner", notebook()).notices[0].text
    draft = build_page(empty, "everybody", notebook(), draft=True).notices
    assert [notice.word for notice in draft] == ["Draft", "Unfinished"]


def test_the_log_stands_at_the_foot_for_the_owner_alone(small_job):
    feet = {a: [placed.section.key for placed in build_page(small_job, a).foot] for a in ("owner", "everybody")}
    assert feet == {"owner": ["methods", "log"], "everybody": ["methods"]}


@pytest.mark.parametrize("tag", ["private", "Private", " PRIVATE "])
def test_a_private_cell_of_any_sort_stays_off_the_page_for_publication(small_job, tag):
    shown = [{"output_type": "stream", "name": "stdout", "text": "printedword"}]
    cells = notebook(
        markdown("# Story"),
        markdown("ownword", tag),
        code("1", "publish", tag, outputs=shown),
        code("bench.stage('limits')", tag),
    )
    client, blog = (render_page(small_job, audience, cells) for audience in ("owner", "everybody"))
    for word in ("ownword", "printedword", "A hairline at the lip."):
        assert word in client
        assert word not in blog
