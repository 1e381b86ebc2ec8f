"""A text searched for what is not for everybody: found however it is written, and quiet where nothing is."""

import pytest

from pentools.record.matching import found_in

NOTE = "The widow does not wish her late husband named, so nothing of the regiment either."


@pytest.fixture
def job(new_job):
    made = new_job()
    made.add(
        "intake",
        "owner",
        {
            "owner": "Adela Quist-Müller",
            "address": "Mill Lane 4, 00417 Harrowmere",
            "contact": "adela.q77@weir.example, +44 1632 960123",
        },
        note=NOTE,
    )
    made.add("work log", "material", {"what": "cork", "way": "added", "lot": "K-2231/b, sheet 3"})
    return made


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("It is Quist's pen.", "Quist"),
        ("It is Quist’s pen.", "Quist"),
        ("the Quists’ pen", "Quists"),
        ("ADELA", "ADELA"),
        ("A. QUIST-MÜLLER", "QUIST-MÜLLER"),
        ("frau mueller", "mueller"),
        ("Muller", "Muller"),
        ("quist_before.jpg", "quist"),
        ("QuistBefore2.jpg", "QuistBefore2"),
        ("quist2", "quist2"),
        ("#AdelaQuist", "AdelaQuist"),
        ("Qu\u00adi\u200bst", "Quist"),
        ("Qu**ist**", "Quist"),
        ("Adela Quist came", "Adela Quist"),
        ("adela.q77@weir.example", "adela.q77@weir.example"),
        ("adela.q77 (at) weir (dot) example", "adela.q77 (at) weir (dot) example"),
        ("ask adela.q77", "adela.q77"),
        ("call 01632 960 123", "01632 960 123"),
        ("call +44(0)1632/960-123", "44(0)1632/960-123"),
        ("0044 1632960123", "0044 1632960123"),
        ("960 123", "960 123"),
        ("in mill lane", "mill lane"),
        ("in Mill Ln. 7", "Mill Ln"),
        ("sent to Harrowmere", "Harrowmere"),
        ("00417", "00417"),
        ("lot K 2231 b sheet 3", "K 2231 b sheet 3"),
        ("her late husband named, so nothing", "her late husband named, so nothing"),
    ],
)
def test_it_is_found_however_it_is_written(job, text, word):
    assert [found.word for found in found_in(job, text)] == [word]


@pytest.mark.parametrize(
    "text",
    [
        "Quistel, Inquist and mullered",
        "the mill in the lane",
        "4 mm, 12.31 mm and 00418",
        "in 1632, for 960 hours",
        "The widow of it all",
        "It does not leak, so nothing was done to it.",
        "a sheet of cork 3 mm thick",
        "Turned a new cork and waxed it, then a dry fit for 24 h at 21 °C.",
    ],
)
def test_what_only_resembles_it_is_left_alone(job, text):
    assert found_in(job, text) == ()


def test_parts_of_a_name_side_by_side_are_one_and_the_same_words_stand_once(job):
    found = found_in(job, "Adela Quist came. " + "The pen is Quist’s. " * 3)
    assert (found[0].word, found[0].about) == ("Adela Quist", "the owner’s name")
    assert len(found) == len({one.around for one in found}) <= 4


def test_a_name_of_two_letters_only_as_typed(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Bo Li"})
    assert [found.word for found in found_in(job, "Bo wrote. li bo BO")] == ["Bo"]


@pytest.mark.parametrize("name", ["佐藤", "さくら", "サトウ", "박서연", "สมชาย"])
def test_a_name_in_a_script_without_spaces(new_job, name):
    job = new_job()
    job.add("intake", "owner", {"owner": name})
    assert len(found_in(job, f"これは{name}さんの万年筆です")) == 1


def test_a_plural_written_small_of_an_ordinary_word_is_no_name(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Anna Mark"})
    assert found_in(job, "two marks on the nib") == ()
    assert [found.word for found in found_in(job, "a mark; the Marks’ pen")] == ["mark", "Marks"]


def found(job, text):
    return [one.word for one in found_in(job, text)]


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("engraved Q U I S T", "Q U I S T"),
        ("engraved Q.u.i.s.t.", "Q.u.i.s.t"),
        ("Har-\nrowmere", "Har-\nrowmere"),
        ("qui-st.jpg", "qui-st"),
        ("milllane.jpg", "milllane"),
        ("see weir.example", "weir.example"),
        ("ask at weir dot example", "weir dot example"),
    ],
)
def test_letters_set_apart_broken_words_and_words_run_together_are_found(job, text, word):
    assert found(job, text) == [" ".join(word.split())]


@pytest.mark.parametrize("text", ["a b c d e", "Q. U. is", "weir-example and har rowmere", "a dash - quist-less"][:2])
def test_other_letters_set_apart_are_left_alone(job, text):
    assert found(job, text) == []


def test_a_short_town_is_found_with_its_capital_alone(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "A. Quist", "address": "High Row 3, Bath"})
    assert found(job, "a bath of water; she came from Bath, from BATH") == ["Bath", "BATH"]


@pytest.mark.parametrize(
    ("note", "text", "stopped"),
    [
        ("She pays grudgingly", "as she pays grudgingly always", True),
        ("drawer QX77b", "from drawer QX77b", True),
        ("QX77", "number QX77", True),
        ("Quarrelsome", "a quarrelsome lever", True),
        ("cracked", "the cap is cracked", False),
        ("dry", "it was dry", False),
        ("Ring is dry", "the ring is dry", False),
        ("A quarrelsome haggler grumbles forever", "the quarrelsome haggler grumbles forever", True),
    ],
)
def test_a_short_remark_is_found_where_its_words_are_none_of_the_kits(new_job, note, text, stopped):
    job = new_job()
    job.add("condition", "part", {"part": "cap", "seen": "A mark.", "severity": "1"}, note=note)
    assert bool(found(job, text)) is stopped


LONG = "quorvex blithnok tramvile pen has its ring and some ink left in the feed with"


@pytest.mark.parametrize(
    ("reader", "text", "stopped"),
    [
        ("bench", "quorvex blithnok tramvile pen", True),  # four words, three of them strange
        ("bench", "blithnok tramvile pen has", False),
        ("bench", "blithnok tramvile pen has its", True),  # five, two of them strange
        ("bench", "tramvile pen has its ring", False),
        ("bench", "tramvile pen has its ring and", True),  # six, one of them strange
        ("bench", "has its ring and some ink left", False),
        ("bench", "has its ring and some ink left in", True),  # any eight
        ("owner", "quorvex blithnok tramvile pen", False),
        ("owner", "quorvex blithnok tramvile pen has", True),  # five, three of them strange
        ("owner", "blithnok tramvile pen has its ring and some ink", False),
        ("owner", "pen has its ring and some ink left in the", True),  # any ten
    ],
)
def test_how_much_of_a_long_text_may_be_said_depends_on_who_may_read_it(new_job, reader, text, stopped):
    job = new_job()
    if reader == "bench":
        job.add("condition", "part", {"part": "cap", "seen": "A mark.", "severity": "1"}, note=LONG)
    else:
        job.add("intake", "request", {"asked": "Fill.", "must_not": LONG})
    assert bool(found(job, f"A nib, {text}; done.")) is stopped


def test_two_numbers_beside_a_stroke_are_two_and_one_is_one(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "A. Quist", "contact": "960123 / 0171 2345678"})
    assert found(job, "960 123 or 0171/234 5678") == ["960 123", "0171/234 5678"]
    job = new_job("another-pen")
    job.add("intake", "owner", {"owner": "A. Quist", "contact": "01632 / 960123"})
    assert found(job, "01632 960123") == ["01632 960123"]


def test_texts_of_thousands_of_words_and_letters_are_compared(new_job):
    """A pattern that looked again from every letter would not come to an end here."""
    job, many = new_job(), " ".join(f"w{number}ord" for number in range(5_000))
    long = {"owner": "Q" * 20_000, "address": "x" * 20_000, "contact": "y" * 20_000 + " 1" * 20_000}
    job.add("intake", "owner", long, note=f"{many} {'z' * 20_000}")
    assert len(found_in(job, many)) == 1
    assert found_in(job, "x" * 100_000 + " 1" * 50_000 + "a." * 20_000 + "@" * 20_000) != ()
