"""Small jobs made for these tests."""

import itertools
import json

import pytest
from PIL import Image
from writeup.pages import CONTACT, markdown, notebook, stage

from pentools.record.bench import open_bench_folder
from pentools.record.job import job_in


@pytest.fixture
def new_job(tmp_path):
    """Makes an empty job in a folder of its own."""
    count = itertools.count(1)

    def make(name="job-4711", cells=()):
        folder = tmp_path / f"bench{next(count)}" / name
        (folder / "photos").mkdir(parents=True)
        bench = open_bench_folder(folder.parent, create=True)
        path = bench.folder / "bench.toml"
        path.write_text(
            path.read_text()
            .replace("contact = []", f'contact = ["{CONTACT}"]')
            .replace('name = ""', 'name = "Bench by the Weir"')
        )
        if cells:
            (folder / f"{name}.ipynb").write_text(json.dumps(notebook(*cells)))
        return job_in(folder)

    return make


@pytest.fixture
def small_job(new_job):
    """A finished job with a little of everything, agreed to be published."""
    job = new_job(
        cells=[
            markdown("# How it came\n\nIn a glove box."),
            *(stage(k) for k in ("intake", "condition", "work log", "fill test", "limits", "pictures", "release")),
        ]
    )
    fill(job)
    return job


def fill(job):
    job.add("intake", "owner", {"owner": "Adela Quist"})
    job.add(
        "intake",
        "arrival",
        {
            "pen": "green piston filler",
            "system": "piston",
            "arrived_on": "2026-03-14",
            "mass_g": "16.42 g",
            "pieces": "cap; barrel",
        },
    )
    job.add("intake", "request", {"asked": "That it writes again."})
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    job.add("condition", "part", {"part": "seals", "seen": "The cork has shrunk.", "severity": "3"})
    job.add("work log", "work", {"activity": "seal", "minutes": "90 min", "done": "Turned a new cork."})
    for state, mass in (("dry", "16.55 g"), ("filled", "17.85 g"), ("drained", "16.70 g"), ("filled", "17.99 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    job.add("fill test", "leak check", {"rested": "24 h", "dry": "yes"})
    job.add("limits", "limit", {"part": "cap", "left": "A hairline at the lip.", "why": "It is stable."})
    for name, moment in (("side-a.jpg", "before"), ("side-b.jpg", "after")):
        Image.new("RGB", (60, 30), "olive").save(job.folder / "photos" / name)
        job.add(
            "pictures",
            "picture",
            {"photo": name, "moment": moment, "shows": f"the pen {moment}", "view": "side", "public": "yes"},
        )
    job.add(
        "release",
        "result",
        {
            "ending": "done with limits",
            "summary": "It writes.",
            "care": "Flush it with water.",
            "price": "118 EUR",
            "released_on": "2026-03-28",
        },
    )
