"""The fill test on the client's page and on the page for publication."""

import pytest

from pentools.writeup.blocks import Details, Facts, FigureBlock, Findings, Lead, Notice, Paragraph, Table
from pentools.writeup.sections.weighing.filling import leak_in_words, section


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "green piston filler", "system": "piston"})
    return job


def weigh(job, *pairs):
    for state, mass, *stroke in pairs:
        extra = {"strokes": str(stroke[0])} if stroke else {}
        job.add("fill test", "weighing", {"state": state, "mass": f"{mass} g", **extra})


def made(job, audience="owner"):
    return section(job, job.stage("fill test"), audience).blocks


def of(blocks, kind):
    return [block for block in blocks if isinstance(block, kind)]


def topics(blocks):
    return [f.topic for block in of(blocks, Findings) for f in block.findings]


def workings(job, audience="owner"):
    [folded] = of(made(job, audience), Details)
    return folded.blocks


def test_nothing_weighed_is_no_section(job):
    assert made(job) == ()


def test_the_sentence_leads_and_lesser_advice_is_for_the_client(job):
    weigh(job, ("dry", "18.30"), ("filled", "20.10"))
    client, public = made(job), made(job, "everybody")
    assert [block.text for block in of(client, Lead)] == ["It draws 1.79\u202fmL ± 0.05."]
    assert topics(client) == ["dimensions-missing", "start-dry", "few-weighings"]
    assert topics(public) == []
    assert topics(workings(job, "everybody")) == ["dimensions-missing", "start-dry", "few-weighings"]
    assert topics(workings(job)) == []


def test_graver_advice_stands_on_both_pages(job):
    weigh(job, ("dry", "18.3"), ("filled", "20.1"))
    assert topics(made(job, "everybody")) == ["digits-typed"]
    assert topics(made(job))[0] == "digits-typed"


def test_weighings_that_contradict_each_other_are_said(job):
    weigh(job, ("dry", "20.00"), ("filled", "18.00"))
    [notice] = of(made(job), Notice)
    assert notice.text.startswith("The weighings give no result: filled mass must be above the empty mass")
    assert of(made(job), Lead) == []


def test_strokes_are_told_in_a_sentence_with_their_chart(job):
    weigh(job, ("dry", "16.83"), ("stroke", "17.08", 1), ("stroke", "17.33", 2), ("stroke", "17.33", 3))
    blocks = made(job)
    text = of(blocks, Paragraph)[0].text
    assert text.startswith(
        "Weighed after each stroke, it gained about 0.25\u202fmL a stroke while it still rose, and after stroke 2"
    )
    assert text.endswith("it stops at 0.50\u202fmL.")
    assert "plateau" in topics(blocks)
    assert any("stops rising" in block.drawing.title for block in of(blocks, FigureBlock))


@pytest.mark.parametrize(
    ("texts", "words"),
    [
        ({"rested": "12 h", "dry": "yes"}, "After 12\u202fh at rest, filled, it was dry all over."),
        (
            {"rested": "1 d", "dry": "yes", "how": "nib up"},
            "After 24\u202fh at rest, filled (nib up), it was dry all over.",
        ),
        (
            {"rested": "12 h", "dry": "no", "damp": "slot; joint"},
            "After 12\u202fh at rest, filled, it was damp: slot and joint.",
        ),
        ({"rested": "12 h", "dry": "no"}, "After 12\u202fh at rest, filled, it was damp."),
        (
            {"rested": "12 h", "dry": "yes", "damp": "slot"},
            "After 12\u202fh at rest, filled, it was dry all over, though damp was noted here: slot.",
        ),
    ],
)
def test_the_last_leak_check_in_words(job, texts, words):
    assert leak_in_words(job) == ""
    job.add("fill test", "leak check", {"rested": "2 h", "dry": "no"})
    job.add("fill test", "leak check", texts)
    assert leak_in_words(job) == words
    assert of(made(job), Paragraph)[0].text == words
    assert [table.caption for table in of(made(job), Table)] == ["Leak checks"]


def test_weighings_at_rest_are_judged_with_their_chart(job):
    for hours, mass in ((0, "20.22"), (24, "20.16"), (48, "20.10")):
        job.add("fill test", "leak reading", {"after": f"{hours} h", "mass": f"{mass} g"})
    blocks = made(job)
    assert topics(blocks) == ["leak"]
    assert any(block.drawing.title.startswith("It leaks") for block in of(blocks, FigureBlock))
    assert of(blocks, Table) == []
    assert "Weighed at rest" in [table.caption for table in of(workings(job), Table)]


def test_the_workings_show_every_weighing_and_what_the_doubt_is_made_of(job):
    job.add("fill test", "setup", {"liquid": "water", "temperature": "21 °C"})
    weigh(job, ("dry", "18.30"), ("filled", "20.10"), ("drained", "18.60"), ("filled", "20.10"), ("drained", "18.61"))
    blocks = workings(job)
    tables = {table.caption: table for table in of(blocks, Table)}
    weighed = tables["Weighings in the order they were taken"]
    assert weighed.head == ("Date", "State of the pen", "Mass", "Filling")
    assert [row[-1] for row in weighed.rows] == ["1", "1", "2", "2", "–"]
    assert weighed.numeric == (2, 3)
    public = {table.caption: table for table in of(workings(job, "everybody"), Table)}
    assert public["Weighings in the order they were taken"].head == ("State of the pen", "Mass", "Filling")
    steps = [row[0] for row in tables["How the result was reached"].rows]
    assert steps == ["mass gained", "correction", "Z", "volume drawn"]
    doubts = tables["What the uncertainty is made of"].rows
    # by hand: linearity √2·0.02/√3 = 16.3 mg of 26.5 in all, squared 38 %
    assert doubts[0] == ("Linearity, counted twice", "16\u202fµL", "38\u202f%")
    shares = [int(row[2].removesuffix("\u202f%")) for row in doubts]
    assert shares == sorted(shares, reverse=True)
    assert any(isinstance(block, FigureBlock) for block in blocks)
    assert any(isinstance(block, Facts) for block in blocks)


def test_strokes_have_a_column_of_their_own(job):
    weigh(job, ("dry", "16.83"), ("stroke", "17.08", 1), ("stroke", "17.33", 2))
    [table] = [t for t in of(workings(job), Table) if t.caption.startswith("Weighings")]
    assert table.head == ("Date", "State of the pen", "Strokes", "Mass", "Filling")
    assert [row[2] for row in table.rows] == ["–", "1", "2"]
    assert table.numeric == (3, 4)
