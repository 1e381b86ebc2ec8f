"""Write docs/checks.md: every comparison with the outside, counted by a run of the tests beside this file.

python tests/published/write_checks.py            writes the page
python tests/published/write_checks.py --check    says whether it is true; exit 1 if not
"""

import collections
import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests"))

from outside import KINDS, SOURCES  # noqa: E402 - the tests' own folder comes first

PAGE = ROOT / "docs" / "checks.md"
HEAD = """# What was held against the outside

Made by `python tests/published/write_checks.py`, which runs the tests in `tests/published/` and counts what they compare.
"Digits" are the significant digits that agree, the fewest of the row; "all printed" means that ours rounds to every digit
the source gives, "the same" a word, date or list. Which text stands behind a source, and how it was read (the text itself,
a reprint, or from memory), says [sources.toml](sources.toml). Nothing here rests on our own tables or output.
"""


def measured():
    """The comparisons of one run of the published tests, each a dict of source, what, printed, digits."""
    with tempfile.TemporaryDirectory() as folder:
        notes = Path(folder) / "checks.jsonl"
        command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "tests/published"]
        run = subprocess.run(  # noqa: PLW1510 - its code is read below
            command, cwd=ROOT, env={**os.environ, "PENTOOLS_CHECKS": str(notes)}, capture_output=True, text=True
        )
        if run.returncode:
            sys.exit(f"the published tests fail:\n{run.stdout[-2000:]}")
        return [json.loads(line) for line in notes.read_text(encoding="utf-8").splitlines()]


def page(comparisons):
    """The page as text."""
    groups = collections.defaultdict(list)
    for one in comparisons:
        groups[one["what"], one["source"]].append(one["digits"])
    sources = {source for _, source in groups}
    by_kind = collections.Counter(SOURCES[one["source"]]["kind"] for one in comparisons)
    lines = [
        HEAD,
        f"**{len(comparisons)} values from {len(sources)} sources.**",
        "",
        "| kind | sources | values |",
        "|---|---|---|",
    ]
    for kind in KINDS:
        if by_kind[kind]:
            lines.append(f"| {kind} | {sum(SOURCES[s]['kind'] == kind for s in sources)} | {by_kind[kind]} |")
    lines += ["", "| what | source | kind | read | values | digits |", "|---|---|---|---|---|---|"]
    for (what, source), digits in sorted(
        groups.items(), key=lambda item: (KINDS.index(SOURCES[item[0][1]]["kind"]), item[0])
    ):
        about = SOURCES[source]
        numbers = [int(d) for d in digits if d.isdigit()]
        shown = str(min(numbers)) if numbers else " / ".join(sorted(set(digits)))
        lines.append(f"| {what} | {source} | {about['kind']} | {about['seen']} | {len(digits)} | {shown} |")
    return "\n".join(lines) + "\n"


def main():
    """Write the page, or hold it against a fresh run."""
    fresh = page(measured())
    if "--check" in sys.argv:
        if PAGE.read_text(encoding="utf-8") != fresh:
            sys.exit("docs/checks.md is not what the tests compare now: run python tests/published/write_checks.py")
        return
    PAGE.write_text(fresh, encoding="utf-8")
    print(fresh.split("\n| what")[0])


if __name__ == "__main__":
    main()
