"""``pentools find``: pens by words, system, material, part and sizes, with what was fitted and what failed."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable

from pentools.exits import EXIT_OK
from pentools.fields import Field
from pentools.record.bench import Bench

__all__ = ["arguments", "run"]

_MOST = 20


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes: words, and an option for every size."""
    from pentools.books.search.sizes import SIZE_FIELDS

    command.add_argument("words", metavar="WORD", nargs="*", help="words that must all be found; in quotes, a phrase")
    command.add_argument("--system", metavar="SYSTEM", default="", help="how it fills, such as lever-sac")
    command.add_argument("--material", metavar="WORDS", default="", help="what it is made of, such as celluloid")
    command.add_argument("--part", metavar="PART", default="", help="a part that something was seen at or done to")
    command.add_argument("--most", metavar="N", type=int, default=_MOST, help=f"how many are shown (default: {_MOST})")
    command.add_argument("--json", action="store_true", help="print what was found as JSON")
    sizes = command.add_argument_group("sizes", 'with their unit, such as --nipple "6.2 mm" or "6.2 mm ± 0.1 mm"')
    for name, field in SIZE_FIELDS.items():
        text = f"{field.label}{f' [{field.unit}]' if field.unit not in ('', '1') else ''}".replace("%", "%%")
        sizes.add_argument(f"--{name.replace('_', '-')}", metavar="SIZE", dest=f"size_{name}", help=text)


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Look through the bench and say what is like it."""
    from pentools.books.search.search import Asked, find_on
    from pentools.books.search.sizes import SIZE_FIELDS
    from pentools.books.search.words import found_as_json, found_in_lines
    from pentools.errors import InputError
    from pentools.record.stages.common import PARTS
    from pentools.record.stages.job.intake_kinds import ARRIVAL

    if given.most < 0:
        raise InputError("--most", "0 or more", str(given.most))
    sign = bench.text("bench", "decimal_sign")
    typed = {name: text for name in SIZE_FIELDS if (text := getattr(given, f"size_{name}")) is not None}
    system = ARRIVAL.field("system").read(given.system)
    part = Field("part", "--part", "choice", choices=PARTS).read(given.part)
    sizes = {name: SIZE_FIELDS[name].read(text, "", sign) for name, text in typed.items()}
    for name, value in sizes.items():
        if value is None:
            raise InputError(f"--{name.replace('_', '-')}", "a size with its unit", typed[name])
    asked = Asked(tuple(given.words), system, given.material, part, sizes)  # type: ignore[arg-type]
    found = find_on(bench, asked, most=given.most)
    if given.json:
        say(json.dumps(found_as_json(found, given.most), ensure_ascii=False, indent=2))
        return EXIT_OK
    for line in found_in_lines(found, given.most):
        say(line)
    return EXIT_OK
