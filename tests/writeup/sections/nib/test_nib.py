"""The nib on the client's page and on the page for publication."""

import pytest

from pentools.writeup.blocks import Details, Lead, Notice, Paragraph
from pentools.writeup.sections.nib.nib import nib_caution, section

PAGE = {"ink": "a blue ink", "paper": "smooth pad paper"}


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston", "nib_mm": "19.2 mm"})
    return job


def made(job, audience="owner"):
    return section(job, job.stage("nib"), audience).blocks


def words(blocks):
    return " ".join(block.text for block in blocks if isinstance(block, Lead | Paragraph | Notice)).replace(
        "\u202f", " "
    )


def write(job):
    job.add("nib", "loupe", {"when": "found", "tipping": "sound", "tines": "left high", "called": "F", "times": "10"})
    job.add("nib", "adjust", {"what": "tines", "did": "over a brass form"}, note="nearly lost it")
    job.add("nib", "writing test", {"when": "found", **PAGE, "wetness": "dry"})
    job.add("nib", "writing test", {"when": "after", **PAGE, "wetness": "medium", "scan": "after.png"})
    job.add("nib", "lines", {"when": "after", "line": "0.523 ± 0.004 mm", "scan": "after.png"})
    job.add("nib", "flow", {"when": "after", "before": "23.512 g", "after": "23.422 g", "length": "18 m"})
    job.add("nib", "flex", {"when": "after", "loads": "15 g; 60 g", "widths": "0.50 mm; 1.00 mm"})


def test_nothing_done_nothing_said(job):
    assert made(job) == ()


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_what_it_writes_leads(job, audience):
    write(job)
    blocks = made(job, audience)
    assert isinstance(blocks[0], Lead)
    said = words(blocks)
    assert said.startswith("It writes a medium wet line of 0.523 mm ± 0.008 on smooth pad paper, with a blue ink")
    for part in (
        "It wrote, as found, a dry line",
        "the left tine stands high",
        "The tines were set level",
        "calls it “F”",
    ):
        assert part in said
    assert "nearly lost it" not in str(blocks)
    assert "After the work: it takes 45 gf ± 12 more to widen its line by 0.5 mm" in said
    assert said.count("of ink on a metre") == 1, "no fact twice"
    [folded] = [block for block in blocks if isinstance(block, Details)]
    assert ("after.png" in str(folded)) is (audience == "owner")


def test_advice_to_the_bench_is_not_told(job):
    write(job)
    job.add("nib", "fit", {"when": "found", "inner_cap": "20.0 mm"})
    said = words(made(job))
    assert "Capped, the nib has 0.80 mm ± 0.28 of room" in said
    for advice in ("slowly", "Write", "measure", "would make a number"):
        assert advice not in said


def test_a_nib_that_touches_is_a_caution(job):
    job.add("nib", "fit", {"when": "found", "inner_cap": "19.0 mm"})
    [notice] = [block for block in made(job) if isinstance(block, Notice)]
    assert "must not be capped" in notice.text


def test_a_test_without_a_result_is_to_be_settled(job):
    job.add("nib", "flex", {"when": "after", "loads": "15 g; 60 g", "widths": "0.50 mm; 0.51 mm"})
    [notice] = [block for block in made(job) if isinstance(block, Notice)]
    assert notice.word == "To be settled"


def test_cautions_follow_what_was_done(job):
    assert nib_caution(job) == ""
    job.add("nib", "feed setting", {"way": "cold", "gap": "slides"})
    assert nib_caution(job) == ""
    job.add("nib", "feed setting", {"way": "water", "gap": "slides"})
    job.add("nib", "smoothing", {"grade": "film 1 um", "strokes": "4", "figure": "eight"})
    assert "scalds" in nib_caution(job)
    assert "not given back" in nib_caution(job)
    assert nib_caution(job).endswith("ask a licensed professional.")
