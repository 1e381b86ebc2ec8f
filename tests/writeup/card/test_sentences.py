"""What the card says: the public numbers of the pages, in the order of the work, the most telling first when room is short."""

import pytest
from writeup.samples import LEAD, SAMPLES, sample

from pentools.record.stages.treatment.words import what_came_of_it
from pentools.writeup.card.sentences import LINES, CardSentence, card_sentences, that_fit


def said(job):
    return [one.text.replace("\u00a0", " ").replace("\u202f", " ") for one in card_sentences(job)]


def test_the_lead_sample_in_the_order_of_the_work():
    assert what_came_of_it(sample(LEAD)).startswith("It came apart in 8 steps")
    assert said(sample(LEAD)) == [
        "It came on 9 March 2026.",
        "All evidence on original parts allows 1935 to 1945.",
        "Of 13 parts looked at, 10 have a fault; the gravest is in the seals and sac.",
        "Before the work it drew 1.12 millilitres, give or take a hundredth: 62 percent of what the stroke sweeps.",
        what_came_of_it(sample(LEAD)),  # in the words of the pages
        "Cleaned in cool water: barrel, section, feed and nib. 4 baths, the longest for 25 minutes; none past what the material can take.",
        "The cork on the head holds dry: second ring, at 9.4 millimetres, after three that did not do.",
        "It now draws 1.75 millilitres, give or take a hundredth: 97 percent of what the stroke sweeps.",
        "After 70 hours at rest, filled: dry all over.",
        "The work took 7 hours 19 minutes; the largest share of it, 1 hour 18 minutes, went into seals and sac.",
        "Nothing that was found was left unmended.",
        "The work is done, and it went home on 30 March 2026.",
    ]


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("mixed-dates", "The warmest it got was 43 degrees; the limit is 60 degrees."),
        ("short-breather", "It is full after 7 strokes."),
        ("casein-returned", "It went home unrepaired on 20 April 2026."),
        ("casein-returned", "The dead sac is still in it; it does not fill."),
        ("lever-with-limits", "A hairline of 3.4 millimetres at the lip of the cap."),
    ],
)
def test_what_is_peculiar_to_a_job_is_said(name, sentence):
    assert sentence in said(sample(name))


def test_what_was_not_measured_is_not_said(new_job):
    job = new_job()
    assert said(job) == ["The work is not finished."]
    job.add("release", "result", {"ending": "stopped", "summary": "x"})
    assert said(job) == ["The work was stopped."]


def test_a_pen_weighed_only_before_the_work_does_not_draw_now(new_job):
    job = new_job()
    for state, mass in (("dry", "16.55 g"), ("filled", "17.85 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    job.add("work log", "work", {"activity": "seal", "minutes": "9 min", "done": "A new cork."})
    text = " ".join(said(job))
    assert "Before the work it drew" in text
    assert "It now draws" not in text


@pytest.mark.parametrize("name", SAMPLES)
def test_what_is_chosen_fits_and_keeps_its_order(name):
    every = card_sentences(sample(name))
    chosen = that_fit(every)
    assert sum(one.lines for one in chosen) <= LINES
    assert [one for one in every if one in chosen] == list(chosen)
    left_out = [one for one in every if one not in chosen]
    assert max((one.weight for one in left_out), default=0) <= 6  # what is told first is all there


def test_the_most_telling_come_first():
    long, short = CardSentence("x" * 40, 3), CardSentence("y" * 40, 9)
    assert that_fit((long, short), 1.5) == (short,)
    assert that_fit((long, short), 2.8) == (long, short)
    assert that_fit((CardSentence("z" * 400, 10), long), 2) == (long,)  # what is too long for the room is passed over
