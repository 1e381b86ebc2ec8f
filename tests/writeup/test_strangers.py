"""A page for everybody is held where it says what is the owner's or the bench's; the place is named; a reason lets it go."""

import base64

import pytest
from PIL import Image
from writeup.pages import code, markdown, notebook, png, stage

from pentools.cli import main
from pentools.errors import HoldError, InputError
from pentools.record.job import job_in
from pentools.record.stages.job.intake_kinds import PASSED
from pentools.writeup.forms import PAGE_FORMS, files_of
from pentools.writeup.page import render_page
from pentools.writeup.strangers import StrangersError, check_public, held_by_strangers, pass_over, text_of_markup

OWNER = "Adela Quist"


@pytest.fixture
def job(new_job):
    made = new_job()
    made.add("intake", "owner", {"owner": OWNER, "address": "Mill Lane 4, 00417 Harrowmere"})
    made.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    return made


def places(job, *cells):
    with pytest.raises(StrangersError) as held:
        render_page(job, "everybody", notebook(*cells))
    return [hit.place for hit in held.value.hits]


def test_a_story_cell_is_named_by_its_number_in_the_notebook(job):
    cells = [markdown("# How it came"), markdown("For the bench: Quist.", "private"), markdown("Mrs Quist wrote.")]
    assert places(job, *cells) == ["story cell 3"]
    assert "story cell 3 (“Mrs Quist wrote.”) has “Quist”, part of the owner’s name" in held_by_strangers(
        job, "story", {"the page": "Mrs Quist wrote."}, notebook(*cells)
    )


def test_a_field_is_named_by_stage_form_and_label(job):
    job.add("limits", "limit", {"part": "cap", "left": "A hairline.", "why": "Mrs Quist wished it."})
    assert places(job, stage("limits")) == ["Limits: one thing left, Why"]
    job.add("limits", "limit", {"part": "barrel", "left": "A dent of Adela’s.", "why": "Stable."})
    assert places(job, stage("limits")) == [
        "Limits: one thing left (1 of 2), Why",
        "Limits: one thing left (2 of 2), What could not be mended, or was left alone",
    ]


def picture(job, file, shows, public="yes"):
    Image.new("RGB", (40, 20), "teal").save(job.folder / "photos" / file)
    job.add("pictures", "picture", {"photo": file, "moment": "before", "shows": shows, "public": public})


def test_a_caption_and_a_file_name_are_named_by_their_picture(job):
    picture(job, "open-before.jpg", "the pen in Adela’s hand")
    assert places(job, stage("pictures")) == ["the caption of open-before.jpg"]
    picture(job, "quist-side.jpg", "the side")
    assert places(job, stage("pictures")) == ["the caption of open-before.jpg", "the file name of quist-side.jpg"]


def test_an_output_a_title_and_a_town_are_found_too(job):
    shown = [{"output_type": "stream", "name": "stdout", "text": "weighed for QUIST"}]
    assert places(job, code("1", "publish", outputs=shown)) == ["published output 1"]
    job.add("intake", "arrival", {"pen": "the green pen from Harrowmere"})
    assert places(job) == ["Intake: what arrived, The pen in a few words"]


def test_the_letters_of_a_drawing_are_read(job):
    drawing = '<svg xmlns="http://www.w3.org/2000/svg"><text>Quist’s pen</text></svg>'
    shown = [{"output_type": "display_data", "data": {"image/svg+xml": drawing}, "metadata": {}}]
    assert places(job, code("1", "publish", outputs=shown)) == ["published output 1"]


def test_the_alternative_text_of_an_output_is_read(job):
    shown = [
        {
            "output_type": "display_data",
            "data": {"image/png": png()},
            "metadata": {"image/png": {"alt": "chart for Adela Quist"}},
        }
    ]
    assert places(job, code("1", "publish", outputs=shown)) == ["published output 1"]


def test_a_remark_taken_over_is_the_benchs(job):
    job.add("condition", "part", {"part": "cap", "seen": "A crack.", "severity": "1"}, note="Her nephew crushed it beneath a suitcase in a quarrel.")  # fmt: skip
    cell = markdown("In the end the nephew crushed it beneath a suitcase, as we know.")
    assert places(job, cell) == ["story cell 1"]


def test_what_is_not_on_the_page_holds_nothing(job):
    job.add("limits", "limit", {"part": "cap", "left": "A hairline.", "why": "Mrs Quist wished it."})
    assert "A pen" in render_page(job, "everybody", notebook(markdown("A quiet story."), markdown("Quist", "private")))
    assert "Adela Quist" in render_page(job, "owner", notebook(markdown("Adela Quist"), stage("intake")))


def test_a_draft_is_made_all_the_same(job):
    assert "Mrs Quist" in render_page(job, "everybody", notebook(markdown("Mrs Quist")), draft=True)


def test_every_form_for_everybody_is_held(job):
    job.add("intake", "arrival", {"pen": "green pen of Mrs Quist"})
    cells = notebook(markdown("A quiet story."), stage("intake"))
    forms = [form for form in PAGE_FORMS.values() if form.audience == "everybody"]
    assert forms
    for form in forms:
        with pytest.raises(StrangersError):
            files_of(form, job, cells)


def test_an_owner_called_like_a_word_is_asked_about_once_and_cheaply(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "May Green"})
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    job.add("intake", "arrival", {"pen": "green marbled pen", "arrived_on": "2026-05-14"})
    cells = [markdown("A green pen that came in May."), stage("intake")]
    assert places(job, *cells) == ["story cell 1", "story cell 1", "Intake: what arrived, The pen in a few words"]
    with pytest.raises(StrangersError) as held:
        render_page(job, "everybody", notebook(*cells))
    pass_over(job, held.value.hits, "it is the colour and the month")
    assert "green" in render_page(job, "everybody", notebook(*cells))
    # written small it may stand anywhere now; with a capital in another sentence it is asked about anew
    cells[0] = markdown("A green pen that came in May. Its cap is green too.")
    assert "green too" in render_page(job, "everybody", notebook(*cells))
    cells[0] = markdown("Mrs Green sent it.")
    assert places(job, *cells) == ["story cell 1"]


def test_the_kits_own_words_are_no_ones_name(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Mark May"})
    job.add("intake", "consent", {"publish": "yes"})
    job.add("intake", "arrival", {"pen": "a pen", "arrived_on": "2026-05-14"})
    job.add("identify", "mark", {"where": "barrel", "text": "14 K"})
    page = render_page(job, "everybody", notebook(stage("identify")))
    assert "The mark" in page
    assert "May 2026" in page.replace("\u00a0", " ")


def test_a_reason_is_an_entry_that_covers_these_words_and_no_others(job):
    cells = notebook(markdown("Mrs Quist wrote."))
    hits = check_public(job, "story", {"the page": render_page(job, "everybody", cells, draft=True)}, cells)
    with pytest.raises(InputError):
        pass_over(job, hits, "because")
    pass_over(job, hits, "she wants her name shown")
    (entry,) = job.log(PASSED)
    assert (entry.values.word, entry.values.place) == ("Quist", "story cell 1")
    assert "Mrs Quist" in render_page(job, "everybody", cells)
    assert places(job, markdown("Mrs Quist called.")) == ["story cell 1"]
    job.withdraw(entry.entry, "she does not want it now")
    assert places(job, markdown("Mrs Quist wrote.")) == ["story cell 1"]


def test_the_command_line_stops_names_the_place_and_takes_a_reason(small_job, capsys):
    small_job.add("intake", "arrival", {"pen": "green pen of Mrs Quist", "system": "piston"})
    words = ["writeup", small_job.name, "--only", "story", "--bench", str(small_job.bench.folder)]
    page = small_job.folder / "writeup" / "blog.html"
    assert main(words) == 4
    told = capsys.readouterr()
    assert "Intake: what arrived, The pen in a few words has “Quist”" in told.out + told.err
    assert not page.exists()
    assert main([*words, "--anyway", "no"]) == 2
    assert main([*words, "--anyway", "the owner wants her name shown"]) == 0
    assert "Mrs Quist" in page.read_text()
    assert main(words) == 0
    kept = job_in(small_job.folder).log(PASSED)
    assert [logged.values.reason for logged in kept] == ["the owner wants her name shown"]


def test_a_reason_is_no_consent(new_job, capsys):
    job = new_job(cells=[markdown("Mrs Quist wrote.")])
    job.add("intake", "owner", {"owner": OWNER})
    words = ["writeup", job.name, "--only", "story", "--bench", str(job.bench.folder), "--anyway", "she wants it"]
    assert main(words) == 4
    assert "consent" in capsys.readouterr().err
    assert not job_in(job.folder).log(PASSED)


def test_an_exported_page_that_says_it_is_held_says_no_name(job):
    from pentools.writeup.exporters import StoryExporter

    page, _ = StoryExporter().from_notebook_node(
        notebook(markdown("Mrs Quist wrote.")), {"metadata": {"path": str(job.folder)}}
    )
    assert "story cell 1: part of the owner’s name" in page
    assert "Quist" not in page


@pytest.mark.parametrize("agreed", ["yes", "no", ""])
def test_an_engraved_name_stands_on_a_page_for_everybody_only_by_consent(new_job, agreed):
    job = new_job()
    job.add("intake", "owner", {"owner": "Ivo Tarn"})
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes", "engraving": agreed})
    Image.new("RGB", (40, 20), "teal").save(job.folder / "photos" / "engraving.jpg")
    job.add("pictures", "picture", {"photo": "engraving.jpg", "moment": "before", "shows": "the engraving", "public": "yes"})  # fmt: skip
    job.add("identify", "mark", {"where": "barrel, engraved", "text": "E. VOSS 1948", "photo": "engraving.jpg"})
    cells = notebook(stage("identify"), stage("pictures"))
    page = render_page(job, "everybody", cells)
    assert ("E. VOSS 1948" in page) is ("<img" in page) is (agreed == "yes")
    assert "E. VOSS 1948" in render_page(job, "owner", cells)
    told = notebook(markdown("It was made for Voss."))
    if agreed == "yes":
        assert "made for Voss" in render_page(job, "everybody", told)
    else:
        with pytest.raises(HoldError, match="a name engraved on the pen"):
            render_page(job, "everybody", told)


def test_markup_is_read_as_the_eye_and_the_reader_take_it():
    drawing = base64.b64encode(b"<svg><text>drawn</text></svg>").decode()
    markup = (
        f'<style>.rose {{}}</style><p class="rose">Qu<b>ist</b></p><td>One</td><td>two</td><img alt="alt" src="data:image/svg+xml;base64,{drawing}">'
        '<a href="https://x.example/a%20b" title="over">x</a><!-- beside --><script>no()</script>'
    )
    assert text_of_markup(markup).split() == ["Quist", "One", "two", "x", "alt", "drawn", "https://x.example/a", "b", "over", "beside"]  # fmt: skip
