"""What `import pentools` offers: few names, pinned, and nothing heavy before it is asked for."""

import subprocess
import sys

import pentools

NAMES = {
    "Answer", "InputError", "RecordError", "__version__", "abrasive_grade", "capacity_from_weight", "care", "date_range",
    "dilution", "feed_setting", "flush_mix", "grit_progression", "heat_window", "ink_flow", "knockout_tool", "leak_from_weight", "learned",
    "ledger", "measure_lines", "nib_flex", "nib_smoothing",
    "open_bench", "open_door", "open_sums", "order", "parts_wanted", "price_today", "queue", "quote", "review", "sac_fit", "scanner_check", "seal_fit", "shellac_cut", "thread_match",
    "treatment_limits", "washer_fit", "write_sheet",
}  # fmt: skip


def test_the_public_names_are_these():
    assert set(pentools.__all__) == set(dir(pentools)) == NAMES
    assert len(NAMES) <= 44
    held = [name for names in pentools._WHERE.values() for name in names]
    assert sorted([*held, "__version__"]) == sorted(NAMES)
    assert all(getattr(pentools, name) is not None for name in NAMES)


def test_nothing_is_loaded_before_it_is_used():
    code = "import sys, pentools; print([m for m in sys.modules if m.startswith('pentools.') or m in ('pandas', 'matplotlib', 'pint', 'jinja2', 'msgspec')])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_an_answer_needs_no_pandas_and_no_charts_to_be_told():
    code = "import sys, pentools; print(pentools.capacity_from_weight(empty='23.26 g', filled='25.06 g')); print([m for m in sys.modules if m in ('pandas', 'matplotlib', 'pint', 'ipywidgets')])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"
