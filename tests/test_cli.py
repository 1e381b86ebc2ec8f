"""The command line: words a person can use, exit codes, and nothing outside the bench folder, ever."""

import json
import shlex
import sys

import pytest

from pentools.cli import main
from pentools.record.entries import new_entry
from pentools.record.storage import Record


@pytest.fixture
def bench(tmp_path, monkeypatch):
    monkeypatch.setenv("PENTOOLS_BENCH", str(tmp_path / "bench"))
    return tmp_path / "bench"


def run(capsys, *words):
    try:
        code = main(list(words))
    except SystemExit as stop:
        code = stop.code
    out = capsys.readouterr()
    assert "Traceback" not in out.err
    return code, out.out, out.err


def test_new_lays_out_a_job_and_the_bench_file(bench, capsys):
    code, out, _ = run(capsys, "new", "pen-1")
    assert code == 0
    assert "pentools open pen-1" in out
    assert (bench / "bench.toml").is_file()
    assert (bench / "pen-1" / "pen-1.ipynb").is_file()
    assert {p.name for p in (bench / "pen-1").iterdir()} >= {"photos", "scans", "writeup"}
    code, _, err = run(capsys, "new", "pen-1")
    assert code == 3
    assert "already" in err


def test_the_bench_option_goes_before_the_environment(bench, tmp_path, capsys):
    run(capsys, "new", "pen-1", "--bench", str(tmp_path / "other"))
    assert (tmp_path / "other" / "pen-1").is_dir()
    assert not bench.exists()


NO_NAMES = ["../pen", "..", ".", "a/b", "a\\b", "/etc", "pen ", " pen", "", "-pen", ".hidden", "pen.", "a..b", "CON", "con.txt", "nul", "x" * 65, "pen\n", "pén", "a:b", "~", "$HOME"]  # fmt: skip


def test_no_job_name_leaves_the_bench(bench, capsys):
    let_through = []
    for command in ("new", "check", "writeup", "open"):
        for name in NO_NAMES:
            code, _, err = run(capsys, command, "--bench", str(bench), "--", name)
            if code != 2 or "job name must be" not in err:
                let_through.append((command, name, code, err))
    assert let_through == []
    assert not bench.exists() or [p.name for p in bench.iterdir()] == ["bench.toml"]


def test_a_link_out_of_the_bench_is_refused(bench, tmp_path, capsys):
    (tmp_path / "elsewhere").mkdir()
    bench.mkdir()
    (bench / "pen-1").symlink_to(tmp_path / "elsewhere")
    code, _, err = run(capsys, "check", "pen-1")
    assert code == 2
    assert "leads elsewhere" in err


def test_a_missing_job_names_those_there_are(bench, capsys):
    run(capsys, "demo")
    code, _, err = run(capsys, "check", "pen-9")
    assert code == 3
    assert "green-piston" in err


def test_check_lists_what_is_missing(bench, capsys):
    run(capsys, "new", "pen-1")
    code, out, _ = run(capsys, "check", "pen-1")
    assert code == 1
    assert "Owed before it goes home: who, the pen, what is asked," in out


def test_check_reports_copies_torn_lines_and_unknown_kinds(bench, capsys):
    run(capsys, "new", "pen-1")
    record = Record.open(bench / "pen-1" / "record.jsonl")
    record.append(new_entry("future", "thing", {}))
    record.append(new_entry("fill test", "weighing", {"mass": "heavy", "state": "dry"}))
    with record.path.open("ab") as file:
        file.write(b'{"torn')
    (bench / "pen-1" / "record (copy).jsonl").write_text("")
    code, out, _ = run(capsys, "check", "pen-1")
    assert code == 1
    assert "set aside" in out
    assert "pentools merge" in out
    assert "does not know" in out
    assert "cannot be read" in out


def test_merge_takes_over_a_copy(bench, capsys):
    run(capsys, "new", "pen-1")
    path = bench / "pen-1" / "record.jsonl"
    Record.open(path).append(new_entry("limits", "limit", {}))
    copy = path.with_name("record-copy.jsonl")
    copy.write_bytes(path.read_bytes())
    Record.open(copy).append(new_entry("limits", "limit", {}))
    code, out, _ = run(capsys, "merge", "pen-1", "record-copy.jsonl")
    assert code == 0
    assert "1 entries taken over. 1 passed by" in out
    assert "0 set aside" in out
    assert run(capsys, "merge", "pen-1", "nowhere.jsonl")[0] == 3


def test_demo_does_the_main_job_and_says_so(bench, capsys):
    code, out, _ = run(capsys, "demo")
    assert code == 0
    assert "mL ±" in out
    assert "% of what the stroke sweeps" in out
    assert "Result: done." in out
    assert "pentools open green-piston" in out
    pages = bench / "green-piston" / "writeup"
    assert {p.name for p in pages.iterdir()} >= {"client.html", "record.html", "blog.html"}
    code, out, _ = run(capsys, "demo")
    assert code == 0
    assert "left as it is" in out


def test_writeup_writes_what_is_asked_for_and_holds_back_without_consent(bench, capsys):
    run(capsys, "new", "pen-1")
    code, out, err = run(capsys, "writeup", "pen-1", "--for", "both")
    assert code == 4
    assert "owner" in out
    assert "consent" in err.lower() or "agreed" in err.lower()
    assert not (bench / "pen-1" / "writeup" / "blog.html").exists()
    assert run(capsys, "writeup", "pen-1", "--for", "owner")[0] == 0
    assert run(capsys, "writeup", "pen-1", "--for", "nobody")[0] == 2


def test_writeup_writes_the_forms_that_are_named_and_no_other(bench, capsys):
    run(capsys, "new", "pen-1")
    assert run(capsys, "writeup", "pen-1", "--only", "record")[0] == 0
    pages = bench / "pen-1" / "writeup"
    assert [p.name for p in pages.iterdir()] == ["record.html"]
    assert run(capsys, "writeup", "pen-1", "--only", "letter", "--only", "record")[0] == 0
    assert sorted(p.name for p in pages.iterdir()) == ["client.html", "record.html"]
    code, _, err = run(capsys, "writeup", "pen-1", "--only", "press")
    assert code == 2
    assert "one of letter, record" in err


def test_writeup_makes_pdfs_on_the_paper_asked_for(bench, capsys, monkeypatch):
    made = []
    monkeypatch.setattr("pentools.writeup.write.pdf_of", lambda page: made.append(page) or b"%PDF-1.7")
    run(capsys, "new", "pen-1")
    code, out, _ = run(capsys, "writeup", "pen-1", "--only", "packing", "--pdf", "--paper", "Letter")
    assert code == 0
    assert "packing.pdf" in out
    assert "size: letter" in made[0]
    assert (bench / "pen-1" / "writeup" / "papers" / "packing.pdf").read_bytes() == b"%PDF-1.7"
    run(capsys, "writeup", "pen-1", "--only", "packing", "--pdf")
    assert "size: A4" in made[1]  # what the bench's file says, unless something else is asked for
    assert run(capsys, "writeup", "pen-1", "--pdf", "--paper", "A6")[0] == 2


def test_a_pdf_that_cannot_be_made_is_said_and_the_pages_stand(bench, capsys, monkeypatch):
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    run(capsys, "new", "pen-1")
    code, _, err = run(capsys, "writeup", "pen-1", "--only", "packing", "--pdf")
    assert code == 3
    assert "pip install 'pentools[pdf]'" in err
    assert (bench / "pen-1" / "writeup" / "papers" / "packing.html").is_file()


@pytest.mark.parametrize(
    ("text", "said"),
    [("[balance\n", "bench.toml, line 1"), ('[balance]\nreadability = "0.01"\n', "unit is missing"), ("[money]\nrate_per_hour = -3\n", "rate_per_hour"), ("bench = 3\n", "must be a table")],
)  # fmt: skip
def test_a_bad_bench_file_is_said_in_words_and_stands_in_nobodys_way(bench, capsys, text, said):
    bench.mkdir()
    (bench / "bench.toml").write_text(text)
    code, _, err = run(capsys, "new", "pen-1")
    assert (code, said in err) == (0, True)
    code, out, _ = run(capsys, "check", "pen-1")
    assert (code, said in out) == (1, True)
    asked = ("sums", "capacity", "--empty", "1.00 g", "--filled", "2.00 g")
    code, out, _ = run(capsys, *asked)
    assert (code, said in out) == (0, True)
    assert any(said in finding["text"] for finding in json.loads(run(capsys, *asked, "--json")[1])["findings"])


def test_help_is_worth_reading(capsys):
    code, out, _ = run(capsys, "--help")
    assert code == 0
    for word in ("new", "open", "check", "writeup", "merge", "demo", "sums", "PENTOOLS_BENCH", "exit codes"):
        assert word in out
    assert run(capsys, "polish")[0] == 2
    assert run(capsys)[0] == 2


def test_version(capsys):
    from pentools import __version__

    assert run(capsys, "--version")[1].strip() == f"pentools {__version__}"


def test_json_is_json_and_nothing_else(capsys):
    _, out, _ = run(capsys, "sums", "capacity", "--empty", "1.00 g", "--filled", "2.00 g", "--json")
    assert json.loads(out)["gained_g"] == 1


def test_the_sums_are_listed_each_with_its_line(capsys):
    from pentools.sums import SUMS, find

    code, out, _ = run(capsys, "sums", "--help")
    assert code == 0
    told = " ".join(out.split())
    for key in SUMS:
        assert f"{key} {find(key).summary.partition('. ')[0]}" in told


def test_a_sum_s_own_help_loads_no_other(capsys, monkeypatch):
    import pentools.sums

    asked = []
    find = pentools.sums.find
    monkeypatch.setattr(pentools.sums, "find", lambda key: asked.append(key) or find(key))
    run(capsys, "sums", "grade", "--help")
    assert asked == ["grade"]


@pytest.mark.parametrize("place", [0, 1, 2, 4])
def test_the_bench_stands_before_or_after_the_command(tmp_path, monkeypatch, capsys, place):
    monkeypatch.delenv("PENTOOLS_BENCH", raising=False)
    (tmp_path / "bench.toml").write_text('[room]\ntemperature = "25 °C"\n')
    words = ["sums", "capacity", "--empty", "23.26 g", "--filled", "25.06 g", "--json"]
    words[place:place] = ["--bench", str(tmp_path)]
    code, out, err = run(capsys, *words)
    assert (code, err) == (0, "")
    assert "temperature 25 °C" in json.loads(out)["findings"][-1]["text"]
    before = ["--bench", str(tmp_path / "made"), "new", "pen-1"]
    assert run(capsys, *before)[0] == 0
    assert (tmp_path / "made" / "pen-1").is_dir()


@pytest.mark.parametrize("system", ["plunger vacuum", "Plunger-Vacuum", "plunger_vacuum"])
def test_a_filling_system_is_understood_however_it_is_typed(system, capsys):
    words = ("sums", "capacity", "--empty", "23.26 g", "--filled", "25.06 g", "--bore", "9 mm", "--rod", "2.6 mm", "--stroke", "31 mm", "--json")  # fmt: skip
    plain = run(capsys, *words, "--system", "plunger-vacuum")
    assert run(capsys, *words, "--system", system) == plain
    assert json.loads(plain[1])["expected_ml"] is not None
    code, _, err = run(capsys, *words, "--system", "pipette")
    assert code == 2
    assert "plunger-vacuum (" in err


@pytest.mark.parametrize("words", [("check", "--bench"), ("check",), ("check", "--all"), ("check", "--bench", "DIR"), ("--bench", "DIR", "check", "--bench"), ("--bench", "DIR", "check")])  # fmt: skip
def test_check_looks_at_every_job_at_once_however_the_bench_is_named(bench, tmp_path, capsys, monkeypatch, words):
    for name in ("pen-1", "pen-2"):
        run(capsys, "new", name)
    words = [str(bench) if word == "DIR" else word for word in words]
    if str(bench) in words:
        monkeypatch.setenv("PENTOOLS_BENCH", str(tmp_path / "another"))
    code, out, err = run(capsys, *words)
    assert (code, err) == (1, "")
    assert "pen-1: 0 entries" in out
    assert "2 jobs: 2 to look at again" in out
    (bench / "pen-1" / "record.jsonl").mkdir()
    code, out, _ = run(capsys, *words)
    assert (code, "pen-1: cannot be read" in out, "pen-2: 0 entries" in out) == (3, True, True)


def test_check_of_one_job_takes_the_bench_as_before(bench, tmp_path, capsys):
    run(capsys, "new", "pen-1", "--bench", str(tmp_path / "other"))
    run(capsys, "new", "pen-2")
    assert "pen-1: 0 entries" in run(capsys, "check", "pen-1", "--bench", str(tmp_path / "other"))[1]
    assert "pen-1: 0 entries" in run(capsys, "check", "--bench", str(tmp_path / "other"), "pen-1")[1]
    assert "pen-2: 0 entries" in run(capsys, "check", "pen-2", "--bench")[1]
    assert run(capsys, "check", "pen-2", "--bench", str(tmp_path / "other"))[0] == 3
    code, _, err = run(capsys, "check", "--bench", str(tmp_path / "nowhere"))
    assert (code, "nowhere" in err) == (3, True)


def test_mend_sets_aside_and_says_what_it_did(bench, capsys):
    run(capsys, "new", "pen-1")
    path = bench / "pen-1" / "record.jsonl"
    Record.open(path).append(new_entry("limits", "limit", {}))
    whole = path.read_bytes()
    path.write_bytes(b"no entry\n" + whole + b'{"torn')
    before = path.read_bytes()
    assert "cannot be read" not in run(capsys, "check", "--mend")[1]
    assert run(capsys, "check", "--mend")[0] == 2
    assert path.read_bytes() == before
    code, out, _ = run(capsys, "check", "pen-1", "--mend")
    assert code == 1
    assert out.startswith("Lines 1, 3 of the record cannot be read and were set aside in record-unread-")
    assert path.read_bytes() == whole
    [kept] = path.parent.glob("record-before-*.txt")
    assert kept.read_bytes() == before
    assert "There is nothing to mend." in run(capsys, "check", "pen-1", "--mend")[1]


def test_merge_counts_what_it_took_passed_by_and_set_aside(bench, capsys):
    run(capsys, "new", "pen-1")
    path = bench / "pen-1" / "record.jsonl"
    record = Record.open(path)
    for number in range(2):
        record.append(new_entry("limits", "limit", {"n": number}))
    copy = path.with_name("record (1).jsonl")
    copy.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b'"n":1', b'"n":9').replace(b"\n", b"\r\n") + b"{torn")
    Record.open(copy).append(new_entry("limits", "limit", {"n": 3}))
    code, out, _ = run(capsys, "merge", "pen-1", copy.name)
    assert code == 1
    assert "1 entries taken over. 1 passed by" in out
    assert "1 line set aside in record-unlike-" in out
    for name, content in (("letter.txt", b"Dear owner"), ("photo.jpg", b"\xff\xd8\xff\xe0"), ("empty.jsonl", b"")):
        (bench / name).write_bytes(content)
        code, out, err = run(capsys, "merge", "pen-1", str(bench / name))
        assert (code, out, name in err) == (3, "", True)


def test_the_hint_quotes_a_bench_with_spaces(tmp_path, capsys):
    bench = tmp_path / "my pens"
    out = run(capsys, "new", "pen-1", "--bench", str(bench))[1]
    assert shlex.split(out.splitlines()[-1]) == ["pentools", "open", "pen-1", "--bench", str(bench)]
    out = run(capsys, "demo", "--bench", str(bench))[1]
    [hint] = [line for line in out.splitlines() if "pentools open" in line]
    assert shlex.split(hint.partition(": ")[2]) == ["pentools", "open", "green-piston", "--bench", str(bench)]


def test_a_pen_that_comes_back_goes_on_from_its_older_job(bench, capsys):
    run(capsys, "new", "pen-1")
    code, _, err = run(capsys, "new", "pen-2", "--continues", "pen-9")
    assert (code, "no job pen-9" in err) == (3, True)
    code, out, _ = run(capsys, "new", "pen-2", "--continues", "pen-1")
    assert (code, "pentools open pen-2" in out) == (0, True)
    _, out, _ = run(capsys, "check", "pen-2")
    assert "What failed" in out
    assert (bench / "pen-2" / "pen-2.ipynb").is_file()


def test_a_sum_s_drawing_goes_into_a_file(tmp_path, capsys):
    wall = tmp_path / "wall.svg"
    code, out, err = run(capsys, "sums", "order", "--system", "lever-sac", "--drawing", str(wall), "--json")
    assert (code, err) == (0, "")
    assert json.loads(out)["system"] == "lever-sac"
    assert "how it goes together" in wall.read_text(encoding="utf-8")
    code, _, err = run(capsys, "sums", "shellac", "--cut", "3", "--drawing", str(wall))
    assert code != 0
    assert "draws something" in err
    assert run(capsys, "sums", "order", "--system", "lever-sac", "--drawing", str(tmp_path / "wall.doc"))[0] != 0


def test_parts_wanted_are_listed_over_every_pen(bench, capsys):
    run(capsys, "new", "pen-1")
    _, out, _ = run(capsys, "wanted")
    assert out == "No parts wanted.\n"
    oiled = {"part": "threads", "method": "thread-oil", "wanted": "a section of its own"}
    Record(bench / "pen-1" / "record.jsonl").append(new_entry("repairs", "repair", oiled))
    _, out, _ = run(capsys, "wanted")
    assert "pen-1: threads: wanted: a section of its own. Now: trace of oil or grease, since 20" in out
    assert out.endswith("1 part wanted.\n")


def test_a_pen_that_came_with_another_takes_over_what_is_the_parcels(bench, capsys):
    run(capsys, "new", "pen-1")
    code, _, err = run(capsys, "new", "pen-2", "--with", "pen-9")
    assert (code, "no job pen-9" in err, (bench / "pen-2").exists()) == (3, True, False)
    code, out, _ = run(capsys, "new", "pen-2", "--with", "pen-1")
    assert (code, "pentools open pen-2" in out) == (0, True)
    for name in ("pen-1", "pen-2"):
        assert '"kind":"came with"' in (bench / name / "record.jsonl").read_text()
