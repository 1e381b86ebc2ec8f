"""How long a job takes whose record is far longer than any bench's: python tests/bench/bench_long.py [words|letters|entries|caption]"""

import itertools
import json
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
from faults import harmless

from pentools.panels.bench import BenchSheet
from pentools.record.holds import state_of
from pentools.record.job import job_in
from pentools.record.registry import STAGES, all_stages
from pentools.record.review import review
from pentools.writeup.forms import files_of, page_forms
from pentools.writeup.notebook import read_notebook

SAMPLE = "green-piston"
WORDS = " ".join(["lorem"] * 20_000)
LETTERS = "x" * 20_000


def newest():
    """The data of the newest entry of each kind of the sample."""
    return {
        (line["stage"], line["kind"]): line["data"] for line in map(json.loads, harmless.record_of(SAMPLE).splitlines())
    }


def filled(kinds, text):
    """One entry a kind of the sample, with this text in every field of these kinds."""
    for stage in all_stages():
        for kind in stage.kinds:
            fields = {f.name: [text] if f.kind == "items" else text for f in kind.fields if f.kind in kinds}
            if fields:
                yield harmless.line_of(stage.key, kind.key, {**newest().get((stage.key, kind.key), {}), **fields})


def many(count):
    """So many entries, those of the sample over and over."""
    lines = [line for line in map(json.loads, harmless.record_of(SAMPLE).splitlines()) if not line["replaces"]]
    for line in itertools.islice(itertools.cycle(lines), count):
        yield harmless.line_of(line["stage"], line["kind"], line["data"])


def caption(letters):
    """A picture whose caption has so many letters."""
    data = newest()["pictures", "picture"]
    yield harmless.line_of("pictures", "picture", {**data, "shows": "a pen, and " * (letters // 11)})


CASES = {
    "words": ("20,000 words in every long text", lambda: filled({"long text"}, WORDS)),
    "letters": ("20,000 unbroken letters in every text", lambda: filled({"text", "long text", "items"}, LETTERS)),
    "entries": ("5,000 entries", lambda: many(5000)),
    "caption": ("a caption of 100,000 letters", lambda: caption(100_000)),
}


def timed(what, call):
    start, begun = time.perf_counter(), time.process_time()
    found = call()
    print(
        f"    {what:<22} {time.process_time() - begun:6.2f} s of the processor, {time.perf_counter() - start:6.2f} s by the clock"
    )
    return found


def shown(key, folder):
    said, lines = CASES[key]
    place = harmless.lay_out(folder / key, SAMPLE, harmless.record_of(SAMPLE) + b"".join(lines()))
    print(f"  {said} ({(place / 'record.jsonl').stat().st_size // 1024} KiB)")
    job = timed("opening", lambda: job_in(place))
    timed("states", lambda: [state_of(job, stage) for stage in all_stages()])
    timed("check", lambda: review(job))
    sheet = timed("sheet", lambda: BenchSheet(job))
    timed("all panels", lambda: [harmless.panel_of(sheet, stage) for stage in STAGES])
    notebook = read_notebook(job.notebook)
    for form in page_forms():
        timed(form.words, lambda form=form: files_of(form, job, notebook, draft=True))


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as held:
        for key in sys.argv[1:] or CASES:
            shown(key, Path(held))
