"""Sixty planted strings: in every place where something of the owner's or the bench's is kept, and on no page for everybody.

A string is planted wherever it can be: fields for the owner and for the bench, remarks, corrected and withdrawn lines, lines
that cannot be read, ``bench.toml``, what stands inside and beside the pictures, and every part of the notebook that is not
for publication. The pages are searched as bytes, with the pictures in them unpacked.
"""

import base64
import io
import itertools
import json
import re
from datetime import date, timedelta

import pytest
from PIL import Image, PngImagePlugin

from pentools.errors import PentoolsError
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.job import job_in
from pentools.record.registry import all_stages
from pentools.writeup.exporters import StoryExporter
from pentools.writeup.forms import PAGE_FORMS, files_of
from pentools.writeup.outputs import published_html
from pentools.writeup.photos import PhotoBook
from pentools.writeup.words import date_in_words
from pentools.writeup.write import write_pages

PLANTED = {"text", "long text", "items", "money", "date"}
XMP = "<x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF>{}</rdf:RDF></x:xmpmeta>"


class Garden:
    """Words that stand nowhere else, each with the place it was planted in."""

    def __init__(self):
        self.words = {}
        self._count = itertools.count(1)

    def plant(self, place):
        number = next(self._count)
        word = f"Zq{'bcdfghjklmnpqrtv'[number % 16]}{number:03d}{'aeiou'[number % 5]}x"
        self.words[place] = word
        return word

    def day(self, place):
        day = date(1961, 1, 1) + timedelta(days=next(self._count))
        self.words[place] = date_in_words(day)
        return day.isoformat()


def open_value(field):
    """A value that anybody may read."""
    low = field.low if field.low is not None else 1.0
    quantity = {"value": low + 0.5, "unit": field.unit, "u": None, "typed": ""}
    values = {
        "text": "plain and open",
        "long text": "plain and open",
        "yes-no": field.name != "engraved_name",
        "quantity": quantity,
    }
    return field.choices[0][0] if field.kind == "choice" else values.get(field.kind)


def fill_forms(job, garden):
    """Every kind of entry once, a string of its own in each field that is not for everybody, and in the remark."""
    for stage in all_stages():
        for kind in (kind for kind in stage.kinds if kind.key != "shown all the same"):
            data = {}
            for field in kind.fields:
                place = f"{stage.key}/{kind.key}/{field.name}"
                if field.audience == "everybody" or field.kind not in PLANTED:
                    data[field.name] = open_value(field)
                elif field.kind == "date":
                    data[field.name] = garden.day(place)
                else:
                    data[field.name] = [garden.plant(place)] if field.kind == "items" else garden.plant(place)
            data = {name: value for name, value in data.items() if value is not None}
            job.record.append(new_entry(stage.key, kind.key, data, note=garden.plant(f"{stage.key}/{kind.key} remark")))


def fill_record(job, garden):
    fill_forms(job, garden)
    job.record.append(
        new_entry("pictures", "picture", {"photo": "open.jpg", "moment": "before", "shows": "the pen", "public": True})
    )
    refused = {
        "photo": "refused.jpg",
        "moment": "after",
        "shows": garden.plant("caption of a refused picture"),
        "public": False,
    }
    job.record.append(new_entry("pictures", "picture", refused))
    mark = {"where": "barrel, engraved", "text": f"E. {garden.plant('engraved name')} {garden.plant('engraved word')}"}
    job.record.append(new_entry("identify", "mark", mark))
    old = job.add("intake", "owner", {"owner": garden.plant("corrected owner")})
    job.add("intake", "owner", {"owner": garden.plant("owner after")}, replaces=old.id)
    gone = job.add(
        "work log", "work", {"activity": "look", "minutes": "5 min", "done": garden.plant("withdrawn public text")}
    )
    job.withdraw(gone, f"{garden.plant('reason of a withdrawal')} and why")
    job.release("release", "release", f"{garden.plant('reason of a release')} and why")
    for stage, kind in (("later", "thing"), ("intake", "later kind")):
        job.record.append(new_entry(stage, kind, {"text": garden.plant(f"{stage} {kind}")}))
    odd = {"part": "no such part", "seen": garden.plant("public text of an entry that cannot be read"), "severity": "1"}
    job.record.append(new_entry("condition", "part", odd))
    job.record.append(
        new_entry(
            "condition",
            "part",
            {"part": "cap", "seen": "a mark", "severity": "1", "later": garden.plant("unknown field")},
        )
    )
    with job.record.path.open("a") as file:
        file.write(json.dumps({"broken": garden.plant("line that is no entry")}) + "\n")
    job.record.refresh()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})


def fill_bench(job, garden):
    path = job.bench.folder / "bench.toml"
    text = path.read_text()
    text = text.replace("contact = []", f'contact = ["{garden.plant("bench contact")} Row 7"]', 1)
    text = text.replace("rings = []", f'rings = ["{garden.plant("bench ring")}"]', 1)
    text = text.replace("abrasives = []", f'abrasives = ["{garden.plant("bench grade")}"]', 1)
    text = text.replace("[bench]", f'[bench]\nowner = "{garden.plant("unknown bench key")}"', 1)
    text += f'\n[{garden.plant("unknown bench table")}]\nnote = "{garden.plant("unknown bench value")}"\n'
    text += f"# {garden.plant('bench comment')}\n"
    path.write_text(text)


def telltale(garden, name, colour):
    exif = Image.Exif()
    exif[0x010F] = garden.plant(f"{name} exif make")
    exif[0x013B] = garden.plant(f"{name} exif artist")
    exif.get_ifd(0x8825)[29] = garden.plant(f"{name} exif gps")
    exif.get_ifd(0x8769)[0x9286] = b"ASCII\0\0\0" + garden.plant(f"{name} exif comment").encode()
    image = Image.new("RGB", (60, 30), "white")
    image.paste(colour, (0, 0, 20, 30))
    into = io.BytesIO()
    xmp = XMP.format(garden.plant(f"{name} xmp")).encode()
    image.save(into, "JPEG", exif=exif.tobytes(), comment=garden.plant(f"{name} comment").encode(), xmp=xmp)
    return into.getvalue() + garden.plant(f"{name} after its end").encode()


def telltale_png(garden):
    words = PngImagePlugin.PngInfo()
    words.add_text("Author", garden.plant("output png author"))
    words.add_itxt("XML:com.adobe.xmp", XMP.format(garden.plant("output png xmp")))
    into = io.BytesIO()
    Image.new("RGB", (9, 5), "navy").save(into, "PNG", pnginfo=words)
    return base64.b64encode(into.getvalue()).decode()


def fill_pictures(job, garden):
    folder = job.folder / "photos"
    (folder / "open.jpg").write_bytes(telltale(garden, "open picture", "teal"))
    refused = telltale(garden, "refused picture", "maroon")
    (folder / "refused.jpg").write_bytes(refused)
    (folder / f"{garden.plant('name of an unused picture')}.jpg").write_bytes(refused)
    return base64.b64encode(refused).decode()


def notebook_full(garden, refused):
    drawing = (
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:ed="http://editor.example/" width="9" height="9">'
        f"<!-- {garden.plant('drawing comment')} --><metadata>{garden.plant('drawing metadata')}</metadata>"
        f"<title>{garden.plant('drawing title')}</title><desc>{garden.plant('drawing description')}</desc>"
        f'<g ed:label="{garden.plant("drawing editor label")}" id="{garden.plant("drawing id")}"><path d="M0 0L9 9" stroke="red"/></g>'
        f"<foreignObject><p>{garden.plant('drawing foreign')}</p></foreignObject><text display='none'>{garden.plant('drawing hidden')}</text></svg>"
    )

    def cell(kind, source, *tags, **more):
        code = {"outputs": [], "execution_count": None} if kind == "code" else {}
        return {"cell_type": kind, "id": "c", "metadata": {"tags": list(tags)}, "source": source, **code, **more}

    def output(data, **metadata):
        return {"output_type": "display_data", "data": data, "metadata": metadata}

    html = (
        f"<p>Open words</p><!-- {garden.plant('html output comment')} --><style>.{garden.plant('html output style')} {{}}</style>"
        f'<img alt="{garden.plant("html output picture alt")}" src="data:image/png;base64,{telltale_png(garden)}">'
        f'<p title="{garden.plant("html output title")}" data-x="{garden.plant("html output attribute")}">more</p>'
        f"<svg><title>{garden.plant('html output drawing')}</title><metadata>{garden.plant('html output drawing metadata')}</metadata></svg>"
    )
    outputs = [
        output({"image/svg+xml": drawing}),
        output({"image/png": telltale_png(garden), "text/plain": garden.plant("plain text beside a picture")}),
        output({"image/jpeg": refused}, alt=garden.plant("alt of a refused picture")),
        output(
            {"text/html": html, "text/plain": garden.plant("plain text beside html")},
            note=garden.plant("output metadata"),
        ),
        output({"application/json": {"a": garden.plant("json output")}, "text/latex": garden.plant("latex output")}),
        output(
            {
                "application/vnd.jupyter.widget-view+json": {"model_id": garden.plant("widget output")},
                "text/plain": garden.plant("widget text"),
            }
        ),
        {"output_type": "stream", "name": "stderr", "text": garden.plant("warning")},
        {
            "output_type": "error",
            "ename": garden.plant("error"),
            "evalue": garden.plant("error value"),
            "traceback": [garden.plant("traceback")],
        },
    ]
    cells = [
        cell("markdown", f"# The story\n\nOpen words <!-- {garden.plant('comment in a cell')} --> here.\n\n<!--\n\n{garden.plant('long comment')}\n\n-->\n\nMore."),
        cell("markdown", f"[//]: # ({garden.plant('hidden reference')})\n\n![the pen](photos/open.jpg) ![{garden.plant('alt of a missing picture')}](photos/{garden.plant('missing picture')}.jpg)"),
        cell("markdown", f"![{garden.plant('alt of the refused picture')}](photos/refused.jpg)"),
        cell("markdown", f"![{garden.plant('alt of a pasted picture')}](attachment:{garden.plant('pasted picture')}.png)", attachments={"x.png": {"image/png": telltale_png(garden)}}),
        cell("markdown", garden.plant("private cell"), "private"),
        cell("markdown", garden.plant("how-to cell"), "how-to"),
        cell("raw", garden.plant("raw cell")),
        cell("code", f"'{garden.plant('untagged code')}'", outputs=[output({"text/plain": garden.plant("untagged output")})]),
        cell("code", f"'{garden.plant('published code')}'", "publish", garden.plant("cell tag"), outputs=outputs),
        cell("code", "1", "publish", "private", outputs=[output({"text/plain": garden.plant("private output")})]),
        *(cell("code", f'bench.stage("{stage.key}")') for stage in all_stages()),
        cell("code", f'bench.stage("{garden.plant("unknown stage")}")'),
    ]  # fmt: skip
    cells[0]["metadata"]["note"] = garden.plant("cell metadata")
    return {
        "nbformat": 4,
        "nbformat_minor": 5,
        "metadata": {"authors": [garden.plant("notebook metadata")]},
        "cells": cells,
    }


def unpacked(content):
    """A file's bytes and, of all pictures in it, theirs."""
    raw = content if isinstance(content, bytes) else content.encode()
    packed = [base64.b64decode(part) for part in re.findall(rb"base64,([A-Za-z0-9+/=]+)", raw)]
    return b"\n".join([raw, *packed]).replace("\u00a0".encode(), b" ")


@pytest.fixture
def planted(tmp_path):
    garden = Garden()
    name = garden.plant("job name")
    folder = tmp_path / "bench" / name
    (folder / "photos").mkdir(parents=True)
    open_bench_folder(folder.parent, create=True)
    job = job_in(folder)
    refused = fill_pictures(job, garden)
    fill_bench(job, garden)
    notebook = notebook_full(garden, refused)
    job.notebook.write_text(json.dumps(notebook))
    fill_record(job_in(folder), garden)
    return job_in(folder), notebook, garden.words


def test_none_of_the_planted_strings_stands_in_a_form_for_everybody(planted):
    job, notebook, words = planted
    assert len(words) >= 60
    forms = [form for form in PAGE_FORMS.values() if form.audience == "everybody"]
    assert forms
    for form in forms:
        files = files_of(form, job, notebook)
        for path, content in files.items():
            page = unpacked(content) + path.encode()
            found = {place: word for place, word in words.items() if word.replace("\u00a0", " ").encode() in page}
            assert found == {}, (form.key, path)
    page = unpacked(files_of(PAGE_FORMS["story"], job, notebook)["blog.html"])
    # the search can find: what is open stands there, the open picture and two outputs too
    assert b"Open words" in page
    assert b"plain and open" in page
    assert page.count(b"<img ") >= 3
    # the owner's forms hold many of them: they are really there to be found
    owners = unpacked(files_of(PAGE_FORMS["record"], job, notebook)["record.html"])
    assert sum(word.replace("\u00a0", " ").encode() in owners for word in words.values()) >= 30


def test_without_consent_to_pictures_no_picture_goes_out_at_all(planted):
    """The kit's own drawings may: what must not are the photographs, and the pictures among published outputs."""
    job, notebook, _ = planted
    outputs = [output for cell in notebook["cells"] for output in cell.get("outputs", ())]
    packed = [uri for o in outputs for uri in re.findall(r"base64,([A-Za-z0-9+/=]+)", published_html(o))]
    packed.append(PhotoBook(job, "owner").embed("open.jpg").uri.partition(",")[2])
    assert len(packed) >= 4
    everybody = [form for form in PAGE_FORMS.values() if form.audience == "everybody"]

    def shown(form):
        return [
            one
            for content in files_of(form, job, notebook).values()
            for one in packed
            if base64.b64decode(one) in unpacked(content)
        ]

    assert any(shown(form) for form in everybody)
    job.add("intake", "consent", {"publish": "yes", "pictures": "no"})
    assert [shown(form) for form in everybody] == [[] for _ in everybody]


@pytest.mark.parametrize(
    "line", ['readability = "{}"', 'temperature = "{}"', "contact = {}", 'rings = "{}"', "= {}", 'rate_per_hour = "{}"']
)
def test_a_bad_line_of_bench_toml_is_said_on_no_page_for_everybody(planted, line, capsys):
    job, notebook, _ = planted
    path = job.bench.folder / "bench.toml"
    key = line.split(" ", maxsplit=1)[0]
    bad = line.format("Zqbadline77x")
    text = path.read_text()
    path.write_text(re.sub(rf"(?m)^{key} = .*$", bad, text, count=1) if key != "=" else text + bad)
    page, _ = StoryExporter().from_notebook_node(notebook, {"metadata": {"path": str(job.folder)}})
    assert "Zqbadline77x" not in page
    assert str(job.bench.folder) not in page
    try:
        write_pages(job_in(job.folder), ["story"])
    except PentoolsError:
        assert not (job.folder / "writeup" / "blog.html").exists()
    else:
        assert "Zqbadline77x" not in (job.folder / "writeup" / "blog.html").read_text()


WHERE_TYPED = [
    ("story", "Mrs {} wrote to me."),
    ("condition", "The cap, said {}, was whole."),
    ("caption", "the pen as {} sent it"),
    ("output", "weighed for {}"),
    ("drawing", "drawn for {}"),
    ("title", "the green pen of {}"),
]
OWNERS_OWN = ["Quistorp", "Quistorp’s", "QUISTORP", "Adela", "adela.quistorp@weir.example", "01632 960 123", "+44 1632 960123", "Mill Lane 4", "Harrowmere"]  # fmt: skip


@pytest.mark.parametrize("word", OWNERS_OWN)
@pytest.mark.parametrize(("where", "text"), WHERE_TYPED)
def test_what_is_the_owners_is_stopped_wherever_it_was_typed(tmp_path, where, text, word):
    folder = tmp_path / "bench" / "pen"
    (folder / "photos").mkdir(parents=True)
    open_bench_folder(folder.parent, create=True)
    job = job_in(folder)
    contact = "adela.quistorp@weir.example, 01632 960123"
    job.add(
        "intake", "owner", {"owner": "Adela Quistorp", "address": "Mill Lane 4, 00417 Harrowmere", "contact": contact}
    )
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    told = text.format(word)
    stages = "intake", "condition", "pictures"
    cells = [
        {"cell_type": "markdown", "id": "a", "metadata": {}, "source": told if where == "story" else "A quiet story."}
    ]
    drawn = f'<svg xmlns="http://www.w3.org/2000/svg" width="90" height="20"><text y="9">{told}</text></svg>'
    outputs = {
        "output": {"output_type": "stream", "name": "stdout", "text": told},
        "drawing": {"output_type": "display_data", "data": {"image/svg+xml": drawn}, "metadata": {}},
    }
    shown = [outputs[where]] if where in outputs else []
    cells.append(
        {
            "cell_type": "code",
            "id": "b",
            "metadata": {"tags": ["publish"]},
            "source": "1",
            "outputs": shown,
            "execution_count": None,
        }
    )
    cells += [
        {
            "cell_type": "code",
            "id": s,
            "metadata": {},
            "source": f'bench.stage("{s}")',
            "outputs": [],
            "execution_count": None,
        }
        for s in stages
    ]
    job.add("intake", "arrival", {"pen": told if where == "title" else "a green pen", "system": "piston"})
    job.add("condition", "part", {"part": "cap", "seen": told if where == "condition" else "Whole.", "severity": "4"})
    Image.new("RGB", (20, 10), "teal").save(folder / "photos" / "side.jpg")
    job.add(
        "pictures",
        "picture",
        {"photo": "side.jpg", "moment": "before", "shows": told if where == "caption" else "the side", "public": "yes"},
    )
    notebook = {"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": cells}
    places = {
        "story": "story cell 1", "condition": "Condition: one part, What is seen", "caption": "the caption of side.jpg",
        "output": "published output 1", "drawing": "published output 1", "title": "Intake: what arrived, The pen in a few words",
    }  # fmt: skip
    with pytest.raises(PentoolsError, match=re.escape(places[where])):
        files_of(PAGE_FORMS["story"], job, notebook)
