"""What was agreed and departed from: one table of eight rows at most, no empty column."""

from pentools.record.stages.job.agree_kinds import ACTIONS
from pentools.writeup.letter.agreed import MOST_ROWS, agreed_table


def answer(job, action, agreed="yes", **more):
    job.add("agree", "answer", {"action": action, "agreed": agreed, "answered_on": "2026-03-11", "channel": "letter", "authority": "yes", **more})  # fmt: skip


def rows(job):
    return [tuple(cell.replace("\u00a0", " ") for cell in row) for row in agreed_table(job).rows]


def test_nothing_agreed_is_no_table(new_job):
    assert agreed_table(new_job()) is None


def test_the_newest_word_counts_with_its_day_and_its_terms(new_job):
    job = new_job()
    answer(job, "heat", terms="Never a flame.")
    answer(job, "heat", "no", answered_on="2026-03-12")
    answer(job, "proposal")
    answer(job, "publish")
    assert agreed_table(job).head == ("What", "Agreed")
    assert rows(job) == [
        ("The proposal as a whole", "yes, 11 March 2026, letter"),
        ("Heat", "no, 12 March 2026, letter"),
    ]
    answer(job, "soak", terms="Cool water.")
    assert rows(job)[-1] == ("Soaking", "yes, 11 March 2026, letter", "“Cool water.”")


def test_a_departure_with_its_reason_and_whether_it_was_agreed(new_job):
    job = new_job()
    job.add("work log", "departure", {"what": "The old bar was kept.", "why": "None fits.", "agreed_on": "2026-04-08", "channel": "telephone"})  # fmt: skip
    job.add("work log", "departure", {"what": "A pin was made.", "why": "It broke."})
    assert rows(job) == [
        ("Otherwise than agreed: The old bar was kept.", "yes, 8 April 2026, telephone", "None fits."),
        ("Otherwise than agreed: A pin was made.", "not agreed yet", "It broke."),
    ]
    answer(job, "departure", "no")
    assert [row[1] for row in rows(job)] == ["no", "no"]


def test_never_more_than_eight_rows(new_job):
    job = new_job()
    for number, (action, _) in enumerate(ACTIONS):
        answer(job, action, "no" if number % 3 == 0 else "yes", terms=f"Word {number}.")
    for number in range(9):
        job.add("work log", "departure", {"what": f"Thing {number}.", "why": "So.", "agreed_on": "2026-04-08"})
    assert len(rows(job)) == MOST_ROWS
    assert rows(job)[0][0].count(",") + rows(job)[1][0].count(",") >= 3


def test_a_no_given_elsewhere_does_not_borrow_the_day_and_the_words_of_an_older_yes(new_job):
    job = new_job()
    answer(job, "polish", terms="Until it shines.")
    job.add("finish", "consent to polish", {"agreed": "no", "agreed_on": "2026-04-01"})
    assert rows(job) == [("Polishing", "no")]


def test_what_was_said_to_several_things_in_one_breath_stands_in_one_row(small_job):
    yes = {
        "to": "heat; sealant",
        "not_to": "polish",
        "answered_on": "2026-03-11",
        "channel": "letter",
        "terms": "Go on.",
    }
    small_job.add("agree", "yes", yes)
    rows = {row[0]: row[1] for row in agreed_table(small_job).rows}
    assert rows["Heat and sealant or glue"].startswith("yes")
    assert rows["Polishing"].startswith("no")
