"""Every hold point from the record: what holds it, what lets it go, and that a release keeps its reason."""

import pytest

from pentools.calc.base.hold_points import STEPS
from pentools.errors import InputError
from pentools.record.bench import open_bench_folder
from pentools.record.holds import HOLDS, held, job_facts, release_reason
from pentools.record.job import create_job
from pentools.record.spending import Money, read_money, spending_of


@pytest.fixture
def job(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    path = bench.folder / "bench.toml"
    path.write_text(path.read_text().replace("rate_per_hour = 0.0", "rate_per_hour = 30.0"))
    return create_job(open_bench_folder(bench.folder), "test-pen")


def test_there_is_a_hold_for_every_step():
    assert tuple(HOLDS) == STEPS


def test_a_fresh_job_holds_everything_but_spending(job):
    assert {key for key in HOLDS if held(job, key)} == set(STEPS) - {"spend"}


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


def test_a_pen_returned_unrepaired_is_not_held(job):
    job.add("release", "result", {"ending": "returned", "summary": "Left as it came."})
    assert held(job, "release") == ""


@pytest.mark.parametrize("key", [key for key in STEPS if key != "spend"])
def test_a_release_keeps_its_reason(job, key):
    stage = "limits"
    job.release(stage, key, "the owner asks for it in writing")
    assert held(job, key) == ""
    assert release_reason(job, key) == "the owner asks for it in writing"
    assert job_facts(job).releases == {key: "the owner asks for it in writing"}


def test_spending_counts_costs_and_hours_against_the_ceiling(job):
    assert spending_of(job).ceiling is None
    job.add("intake", "request", {"asked": "mend it", "price_limit": "50 EUR"})
    job.add("work log", "work", {"activity": "seal", "minutes": "60 min", "done": "a cork"})
    job.add("work log", "material", {"what": "cork", "way": "added", "cost": "4.50 EUR"})
    job.add("work log", "material", {"what": "a tube", "way": "added", "cost": "3 GBP"})
    money = spending_of(job)
    assert (money.spent, money.ceiling, money.currency, money.not_counted) == (34.5, 50.0, "EUR", ("3 GBP",))
    assert held(job, "spend") == ""
    assert held(job, "spend", amount=15.5) == ""
    assert "50.01 EUR would be past the agreed ceiling of 50.00 EUR" in held(job, "spend", amount=15.51)
    job.add("work log", "work", {"activity": "seal", "minutes": "60 min", "done": "another"})
    assert "64.50 EUR are past" in held(job, "spend")
    assert any(f.topic == "ceiling" for f in job.stage("work log").checks(job))


@pytest.mark.parametrize(
    ("text", "money"),
    [
        ("4.50 EUR", Money(4.5, "EUR")), ("€ 4,50", Money(4.5, "EUR")), ("30", Money(30.0)), ("£12", Money(12.0, "GBP")),
        ("12 usd", Money(12.0, "USD")), ("free", None), ("4 to 5 EUR", None), ("USD 4 EUR", None), ("1,200 EUR", None),
    ],
)  # fmt: skip
def test_money_as_typed(text, money):
    assert read_money(text) == money


def test_an_unknown_hold_is_refused(job):
    with pytest.raises(InputError):
        held(job, "boil")
