"""``pentools unite``: the jobs of another bench taken over."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from pentools.exits import EXIT_FINDINGS, EXIT_OK
from pentools.record.bench import Bench

if TYPE_CHECKING:
    from pentools.books.exchange.uniting import Came, United
    from pentools.books.exchange.uniting_job import Taken

__all__ = ["arguments", "run", "taken_in_words", "taken_json"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("other", metavar="OTHER_BENCH", help="the other bench's folder; it is only read")
    command.add_argument("--look", action="store_true", help="say what would be done, and do nothing")
    command.add_argument("--json", action="store_true", help="print the report as JSON")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Take the other bench's jobs over and say what came of each."""
    from pentools.books.exchange.uniting import unite_benches
    from pentools.record.bench import open_bench_folder

    bench = bench if given.look else open_bench_folder(bench.folder, create=True)
    done = unite_benches(bench, given.other, write=not given.look)
    if given.json:
        say(json.dumps(_json(done, wrote=not given.look), ensure_ascii=False, indent=2))
    else:
        for line in _in_words(done, wrote=not given.look):
            say(line)
    odd = any(one.did == "left" or (one.taken is not None and one.taken.aside) for one in done.jobs)
    return EXIT_FINDINGS if odd else EXIT_OK


def _in_words(done: United, *, wrote: bool) -> list[str]:
    lines = [line for one in done.jobs if (line := _job_in_words(one))]
    counts = {did: sum(one.did == did for one in done.jobs) for did in ("copied", "merged", "the same", "left")}
    lines.append(
        f"{'' if wrote else 'Looked at only, nothing was done: '}{counts['copied']} copied, {counts['merged']} merged, "
        f"{counts['the same']} the same here, {counts['left']} left."
    )
    if done.facts:
        lines.append("The bench’s own files were not touched. They say here, and there:")
        lines += [f"  {fact.place}: {_shown(fact.here)}, and {_shown(fact.there)}" for fact in done.facts]
    for number, jobs in done.numbers:
        lines.append(
            f"The invoice number {number} stands in {' and '.join(jobs)}: correct one of them, which gives it a new number."
        )
    return lines


def _shown(value: Any) -> str:
    return "nothing" if value in (None, "", [], ()) else json.dumps(value, ensure_ascii=False, default=str)


def _job_in_words(one: Came) -> str:
    if one.did == "the same":
        return ""
    if one.did == "left":
        return f"{one.theirs}: left. {one.why}"
    if one.did == "copied" or one.taken is None:
        return f"{one.theirs}: copied. {one.why}".rstrip()
    return " ".join(part for part in (f"{one.theirs}: merged.", one.why, taken_in_words(one.taken)) if part)


def taken_in_words(taken: Taken) -> str:
    """What was taken over into a job, in a few sentences."""
    said = []
    if taken.record is not None:
        said.append(f"{taken.record.added} {'entry' if taken.record.added == 1 else 'entries'} taken over.")
        for id_ in taken.record.conflicts:
            said.append(f"Entry {id_} differs: this bench’s line stays.")
        if taken.record.aside or taken.aside:
            said.append(f"Lines set aside{f' in {taken.record.aside}' if taken.record.aside else ''}: {taken.aside}.")
    if taken.files:
        said.append(f"New here: {', '.join(taken.files)}.")
    said += [
        f"{theirs} is another file here, so theirs lies beside it as {here}." for theirs, here in taken.beside.items()
    ]
    if taken.renamed:
        said.append(f"{taken.renamed} {'entry was' if taken.renamed == 1 else 'entries were'} corrected to name it so.")
    return " ".join(said) or "Nothing is new."


def taken_json(taken: Taken | None) -> dict[str, Any]:
    """The same for a program."""
    if taken is None:
        return {}
    record = taken.record
    return {
        "added": record.added if record else 0,
        "there": record.there if record else 0,
        "conflicts": list(record.conflicts) if record else [],
        "unread": record.unread if record else 0,
        "aside": record.aside if record else "",
        "files": list(taken.files),
        "beside": dict(taken.beside),
        "renamed": taken.renamed,
    }


def _json(done: United, *, wrote: bool) -> dict[str, Any]:
    jobs = [
        {"theirs": one.theirs, "here": one.here, "did": one.did, "why": one.why, **taken_json(one.taken)}
        for one in done.jobs
    ]
    facts = [{"place": fact.place, "here": fact.here, "there": fact.there} for fact in done.facts]
    numbers = [{"number": number, "jobs": list(jobs)} for number, jobs in done.numbers]
    return {"wrote": wrote, "jobs": jobs, "bench_differs": facts, "numbers_twice": numbers}
