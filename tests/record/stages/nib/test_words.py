"""What is said of a nib, in one line each."""

from pentools.record.stages.nib.paper import writes
from pentools.record.stages.nib.tip import loupe
from pentools.record.stages.nib.words import done_in_words, line_in_words, loupe_in_words, nib_sentence, writes_in_words

PAGE = {"ink": "a blue ink", "paper": "smooth pad paper", "wetness": "medium"}


def said(job):
    return writes_in_words(writes(job)).replace("\u202f", " ")


def test_what_it_writes_with_its_doubt_on_what(job):
    job.add("nib", "writing test", {"when": "after", **PAGE})
    assert said(job) == "It writes a medium wet line on smooth pad paper, with a blue ink."
    job.add("nib", "lines", {"when": "after", "line": "0.523 ± 0.004 mm", "skips": "0", "written": "6 m"})
    job.add("nib", "start", {"when": "after", "way": "0 mm"})
    assert said(job) == (
        "It writes a medium wet line of 0.523 mm ± 0.008 on smooth pad paper, with a blue ink; no skips in 6 m; it starts at once."
    )
    job.add("nib", "lines", {"when": "after", "line": "0.52 mm", "skips": "3", "written": "6 m", "drawn": "yes"})
    job.add("nib", "start", {"when": "after", "way": "12 mm"})
    assert said(job) == (
        "It writes a medium wet line of 0.52 mm ± 0.05 on smooth pad paper, with a blue ink (measured on a drawing); "
        "0.5 skips on a metre; it starts after 12 mm."
    )
    assert line_in_words(writes(job)) == "0.52\u202fmm ± 0.05"


def test_ink_on_a_metre_as_a_number_a_round_one_and_a_bound(job):
    job.add("fill test", "setup", {"readability": "0.0001 g"})
    for after, length, words in (
        ("23.4220 g", "18 m", "It writes a line; 4.99 mg ± 0.11 of ink on a metre."),
        ("23.5100 g", "0.4 m", "It writes a line; about 5 mg of ink on a metre."),
        ("23.5115 g", "0.1 m", "It writes a line; less than 11 mg of ink on a metre."),
    ):
        job.add("nib", "flow", {"when": "after", "before": "23.5120 g", "after": after, "length": length})
        assert said(job) == words


def test_as_found_is_called_so(job):
    job.add("nib", "writing test", {"when": "found", **PAGE})
    assert said(job).startswith("It wrote, as found, a medium wet line")


def test_a_look_in_words(job, look):
    look(tines="left high", tipping="flat", cracks="vent", times="10", slit="opening")
    assert loupe_in_words(loupe(job)) == (
        "As found, at 10x: the tipping is worn flat, the left tine stands high, the slit is opening towards the tip and "
        "there is a crack at the breather hole."
    )
    look("after", cracks="none")
    assert (
        loupe_in_words(loupe(job)) == "After the work: the tipping is sound, the tines are level and no crack is seen."
    )


def test_what_was_done(job):
    assert done_in_words(job) == ""
    job.add("nib", "adjust", {"what": "straighten", "did": "over a form"})
    job.add("nib", "adjust", {"what": "tines", "did": "by hand"})
    job.add("nib", "smoothing", {"grade": "film 1 um", "strokes": "4", "figure": "eight"})
    job.add("nib", "smoothing", {"grade": "film 1 um", "strokes": "2", "figure": "eight"})
    job.add("nib", "feed setting", {"way": "cold", "gap": "slides"})
    assert done_in_words(job) == (
        "A bend was straightened, the tines were set level, the tip was smoothed with 6 strokes on film 1 µm and "
        "the feed was set to the nib."
    )


def test_what_matters_now(job, look):
    assert nib_sentence(job) == "Nobody has looked at the nib under a loupe yet."
    job.add("nib", "adjust", {"what": "tines", "did": "by hand"})
    assert nib_sentence(job) == "Something was done to the nib; nothing is written with it yet."
    look()
    assert nib_sentence(job).startswith("As found: the tipping is sound")
    job.add("nib", "fit", {"when": "found", "inner_cap": "19.0 mm"})
    assert "may touch the inner cap" in nib_sentence(job)
    job.add("nib", "writing test", {"when": "after", **PAGE})
    assert nib_sentence(job).startswith("It writes a medium wet line")
