"""Every hold point from the record: what holds it, what lets it go, and that a release keeps its reason."""

from decimal import Decimal

import pytest
from msgspec.structs import replace

from pentools.calc.base.hold_points import STEPS
from pentools.errors import InputError
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.holds import HOLDS, held, job_facts, passed_by, release_reason, state_of
from pentools.record.job import create_job
from pentools.record.kinds import StageState
from pentools.record.registry import find_stage
from pentools.record.review import review
from pentools.record.spending import spending_of


@pytest.fixture
def job(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    path = bench.folder / "bench.toml"
    path.write_text(path.read_text().replace("rate_per_hour = 0.0", "rate_per_hour = 30.0"))
    return create_job(open_bench_folder(bench.folder), "test-pen")


def test_there_is_a_hold_for_every_step():
    assert tuple(HOLDS) == STEPS


def test_a_fresh_job_holds_everything_but_spending(job):
    assert {key for key in HOLDS if held(job, key)} == set(STEPS) - {"spend", "repair", "flex", "close"}


@pytest.mark.parametrize("key", ["heat", "soak"])
def test_heat_and_soaking_wait_for_the_material(job, key):
    assert "material is not named" in held(job, key)
    job.add("intake", "arrival", {"pen": "a pen", "material": "unknown"})
    assert held(job, key)
    job.add("intake", "arrival", {"pen": "a pen", "material": "green marbled celluloid"})
    assert held(job, key) == ""


def test_polish_asks_for_consent_material_and_masks(job):
    assert all(word in held(job, "polish") for word in ("consent", "material", "masks"))
    job.add("intake", "arrival", {"pen": "a pen", "material": "celluloid"})
    job.add("finish", "masks on", {"masks": "yes"})
    assert held(job, "polish") == "the owner’s consent to polish is not recorded"
    job.add("finish", "consent to polish", {"agreed": "no"})
    assert "refused" in held(job, "polish")
    job.add("finish", "consent to polish", {"agreed": "yes"})
    assert held(job, "polish") == ""


def test_sealant_waits_for_a_dry_fit(job):
    assert "dry fit" in held(job, "sealant")


def test_release_waits_for_leak_check_and_limits(job):
    assert held(job, "release") == "the leak check has not been done and the limits have not been written"
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert held(job, "release") == "the limits have not been written"
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    assert held(job, "release") == ""


@pytest.mark.parametrize("ending", ["stopped", "returned"])
def test_a_pen_that_was_not_mended_is_not_held(job, ending):
    job.add("release", "result", {"ending": ending, "summary": "Left as it came."})
    assert held(job, "release") == ""
    assert passed_by(job) == ()


@pytest.mark.parametrize("key", [key for key in STEPS if key != "spend"])
def test_a_release_keeps_its_reason(job, key):
    stage = "limits"
    job.release(stage, key, "the owner asks for it in writing")
    assert held(job, key) == ""
    assert release_reason(job, key) == "the owner asks for it in writing"
    assert job_facts(job).releases == {key: "the owner asks for it in writing"}


NOT_NAMED = (
    "perhaps celluloid", "probably casein", "maybe hard rubber", "plastic", "blue stuff", "celluloid or acrylic",
    "looks like celluloid", "could be casein", "celluloid?", "unknown", "resin of some kind",
)  # fmt: skip


@pytest.mark.parametrize("words", NOT_NAMED)
def test_what_is_not_sure_is_not_named_for_any_step(job, words):
    job.add("intake", "arrival", {"pen": "a pen", "material": words})
    job.add("finish", "masks on", {"masks": "yes"})
    job.add("finish", "consent to polish", {"agreed": "yes"})
    for key in ("heat", "soak", "polish"):
        assert "the material is not named" in held(job, key)


def test_every_hold_names_the_entries_made_past_it(job):
    entries = (
        ("open", "heat pass", {"joint": "section", "surface": "50 °C"}, "heat-held"),
        ("clean", "soak started", {"part": "cap", "bath": "cold water soak"}, "soak-held"),
        ("finish", "step", {"grade": "P600"}, "polish-held"),
        ("seal", "sealant", {"sealant": "shellac", "place": "sac"}, "sealant-held"),
        ("work log", "material", {"what": "a nib", "way": "added", "cost": "80 EUR"}, "ceiling"),
        ("repairs", "repair", {"part": "cap", "method": "cap-lip-weld"}, "repair-held"),
        ("repairs", "sent out", {"part": "nib", "work": "tipping", "sent_on": "2026-03-14"}, "send out-held"),
        ("nib", "smoothing", {"grade": "film 1 um", "strokes": "4", "figure": "eight"}, "nib work-held"),
        (
            "nib",
            "flex",
            {"when": "after", "loads": "15 g; 60 g", "widths": "0.5 mm; 1.0 mm", "maximum": "yes"},
            "flex-held",
        ),
        ("closing", "order", {"done": "sac-on"}, "close-held"),
        ("release", "result", {"ending": "done", "summary": "It writes."}, "release-held"),
    )
    job.add("intake", "request", {"asked": "mend it", "price_limit": "50 EUR"})
    job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac"})
    assert len(entries) == len(HOLDS)
    named = []
    for stage, kind, texts, topic in entries:
        job.add(stage, kind, texts)
        named.append(topic)
        assert sorted(f.topic for f in passed_by(job)) == sorted(named)
    assert set(named) <= {finding.topic for finding in review(job)}
    for key in HOLDS:
        job.release("limits", key, "the owner asks for it in writing")
    assert passed_by(job) == ()


def test_no_sealant_and_a_part_altered_since_are_no_fault(job):
    job.add("seal", "sealant", {"sealant": "none", "place": "sac"})
    assert passed_by(job) == ()
    job.record.append(sealant(at="2026-03-01T10:00:00+01:00"))
    assert [f.topic for f in passed_by(job)] == ["sealant-held"]
    job.add("seal", "measure", {"place": "sac", "bore": "8 mm", "altered": "yes"})
    assert passed_by(job) == ()


def sealant(at):
    return replace(new_entry("seal", "sealant", {"sealant": "shellac", "place": "sac"}), at=at)


def test_a_stage_is_held_where_it_is_not_done_and_its_hold_stands(job):
    finish, release = find_stage("finish"), find_stage("release")
    assert state_of(job, finish).word == "not begun"
    assert (state_of(job, release).word, "leak check" in state_of(job, release).reason) == ("held", True)
    job.add("finish", "zone", {"part": "cap", "zone": "imprint"})
    assert (state_of(job, finish).word, "masks" in state_of(job, finish).reason) == ("held", True)
    job.release("finish", "polish", "a trial piece of my own")
    assert state_of(job, finish).word == "open"
    job.add("release", "result", {"ending": "stopped", "summary": "Not now."})
    assert state_of(job, release) == StageState("done", "stopped")


def test_spending_counts_costs_and_hours_against_the_ceiling(job):
    assert spending_of(job).ceiling is None
    job.add("intake", "request", {"asked": "mend it", "price_limit": "50 EUR"})
    job.add("work log", "work", {"activity": "seal", "minutes": "60 min", "done": "a cork"})
    job.add("work log", "material", {"what": "cork", "way": "added", "cost": "4.50 EUR"})
    job.add("work log", "material", {"what": "a tube", "way": "added", "cost": "3 GBP"})
    money = spending_of(job)
    assert (money.spent, money.ceiling, money.currency) == (Decimal("34.50"), Decimal(50), "EUR")
    assert money.not_counted == ("3 GBP",)
    assert held(job, "spend") == ""
    assert held(job, "spend", amount=Decimal("15.50")) == ""
    assert "50.01 EUR would be past the agreed ceiling of 50.00 EUR" in held(job, "spend", amount=Decimal("15.51"))
    job.add("work log", "work", {"activity": "seal", "minutes": "60 min", "done": "another"})
    assert "64.50 EUR are past" in held(job, "spend")
    topics = [f.topic for f in review(job)]
    assert "ceiling" in topics
    assert topics.count("cost") == 1


def test_an_unknown_hold_is_refused(job):
    with pytest.raises(InputError):
        held(job, "boil")


@pytest.mark.parametrize(
    ("place", "altered", "minute", "faults"),
    [("sac", True, 5, 0), ("sac", True, -5, 1), ("sac", False, 5, 1), ("section", True, 5, 1)],
)
def test_only_what_was_altered_since_at_the_same_place_takes_a_sealant_back(job, place, altered, minute, faults):
    job.record.append(sealant(at="2026-03-01T10:00:00+01:00"))
    at = f"2026-03-01T{10 if minute > 0 else 9}:{minute % 60:02d}:00+01:00"
    job.record.append(replace(new_entry("seal", "measure", {"place": place, "altered": altered}), at=at))
    assert [f.topic for f in passed_by(job)] == ["sealant-held"] * faults


def test_a_yes_counts_as_consent_and_a_no_as_refusal_for_every_step(job):
    for action in ("heat", "soak", "sealant"):
        for agreed in ("yes", "no"):
            job.add(
                "agree",
                "answer",
                {"action": action, "agreed": agreed, "answered_on": "2026-03-14", "channel": "letter"},
            )
            facts = job_facts(job)
            assert (action in facts.consents, action in facts.refusals) == (agreed == "yes", agreed == "no")
            assert ("said no" in held(job, action)) == (agreed == "no")


def test_the_price_at_the_end_is_released_like_any_spending(job):
    job.add("intake", "request", {"asked": "mend it", "price_limit": "50 EUR"})
    job.add("release", "result", {"ending": "returned", "summary": "As it came.", "price": "60 EUR"})
    assert [f.topic for f in passed_by(job)] == ["price-past"]
    job.release("limits", "spend", "the owner wrote that it may cost more")
    assert passed_by(job) == ()


@pytest.mark.parametrize(
    ("kind", "texts"),
    [
        ("adjust", {"what": "tines", "did": "by hand"}),
        ("smoothing", {"grade": "film 1 um", "strokes": "4", "figure": "eight"}),
    ],
)
def test_work_on_the_nib_waits_for_the_owners_yes(job, kind, texts):
    assert held(job, "nib work") == "the owner’s consent to work on the nib is not recorded"
    job.add("nib", kind, texts)
    assert [f.topic for f in passed_by(job)] == ["nib work-held"]
    job.add(
        "agree",
        "answer",
        {"action": "nib work", "agreed": "yes", "answered_on": "2026-03-14", "channel": "letter", "authority": "yes"},
    )
    assert (held(job, "nib work"), passed_by(job)) == ("", ())
    job.add(
        "agree",
        "answer",
        {"action": "nib work", "agreed": "no", "answered_on": "2026-03-15", "channel": "letter", "authority": "yes"},
    )
    assert held(job, "nib work") == "the owner said no to work on the nib"


@pytest.mark.parametrize(("way", "topics"), [("water", ["heat-held"]), ("dry", ["heat-held"]), ("cold", [])])
def test_heat_on_a_feed_counts_as_heat(job, way, topics):
    job.add("nib", "feed setting", {"way": way, "gap": "slides"})
    assert [f.topic for f in passed_by(job)] == topics


def test_a_load_that_is_no_limit_holds_nothing(job):
    job.add("nib", "flex", {"when": "after", "loads": "15 g; 60 g", "widths": "0.5 mm; 1.0 mm"})
    assert (held(job, "flex"), passed_by(job)) == ("", ())
    job.add("nib", "flex", {"when": "after", "loads": "15 g; 200 g", "widths": "0.5 mm; 1.0 mm"})
    assert "loaded past what gold bears" in held(job, "flex")
