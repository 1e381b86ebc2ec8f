"""A bench that bills, and a pen on it: what the tests of invoices begin with."""

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job

USUAL = 'currency = "EUR"\nrate_per_hour = 30.0\n'


def bench_that_bills(folder, money=USUAL):
    """A bench with nothing but its money said."""
    folder.mkdir(exist_ok=True)
    (folder / "bench.toml").write_text("[money]\n" + money, encoding="utf-8")
    return open_bench_folder(folder)


def pen(bench, name="a-pen", *, agreed=True, most="130 EUR", minutes="90 min", parts=("4.50 EUR",)):
    """A pen with an hour and a half of work and a sac."""
    job = create_job(bench, name)
    job.add("intake", "arrival", {"pen": f"pen {name}", "system": "lever-sac"})
    if agreed:
        job.add("agree", "yes", {"to": "replace part; sealant; proposal", "at_most": most, "answered_on": "2026-03-03", "channel": "letter"})  # fmt: skip
    if minutes:
        job.add("work log", "work", {"activity": "seal", "minutes": minutes, "done": "a sac"})
    for cost in parts:
        job.add("work log", "material", {"what": "latex sac 16", "way": "added", "part": "seals", "cost": cost})
    return job
