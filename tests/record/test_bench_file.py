"""Reading the bench's file: each odd fact is said by its place and passed by, and all the rest is used."""

import pytest

from pentools.record.bench_file import BENCH_TEMPLATE, read_facts


def read(tmp_path, text):
    path = tmp_path / "bench.toml"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_facts(path)


AFTER = '\n[stock]\nabrasives = [\n  "cushioned cloth 4000 = 9 um",\n  "P400"\n]\n'


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[bench]\ncontact = 5", "[bench] contact must be texts"),
        ("[bench]\ncontact = [[1]]", "[bench] contact must be texts"),
        ("[bench]\nname = ['x']", "[bench] name must be a text"),
        ("[bench]\nlarge_type = 'false'", "[bench] large_type must be true or false"),
        ("[bench]\ndecimal_sign = ';'", "[bench] decimal_sign must be “.” or “,”"),
        ("[bench]\npaper = 4", "[bench] paper must be “A4” or “Letter”"),
        ("[money]\nrate_per_hour = nan", "rate_per_hour must be a number, zero or more: got nan"),
        ("[money]\nrate_per_hour = inf", "rate_per_hour must be a number, zero or more"),
        ("[money]\nrate_per_hour = -1", "rate_per_hour must be a number, zero or more: got -1"),
        ("[money]\nrate_per_hour = true", "rate_per_hour must be a number"),
        ("[money]\nrate_per_hour = 0x" + "f" * 5000, "[money] rate_per_hour cannot be read"),
        ("[money]\nrate_per_hour = " + "9" * 5000, "line 2 cannot be read"),
        ('[caliper]\nuncertainty = "0.02 g"', "[caliper] uncertainty"),
        ('[balance]\nreadability = "fine"', "[balance] readability"),
        ("[room]\ntemperature = 20", "[room] temperature must be a text with its unit"),
        ("room = 20", "[room] must be a table"),
        ("[bench]\nname = x", "line 2 cannot be read"),
        ('[bench]\ncontact = ["a"\nname = "kept"', "line 2 cannot be read"),
        ("[bench\nname = 'whose?'", "line 1 cannot be read and is passed by, and so is all up to the next table"),
        ("[bench]\npaper = 'A4'\npaper = 'A4'", "line 3 cannot be read"),
        ("deep = " + "[" * 3000, "line 1 cannot be read"),
    ],
)  # fmt: skip
def test_an_odd_fact_is_said_by_its_place_and_the_rest_is_used(tmp_path, text, said):
    facts, problems = read(tmp_path, text + AFTER)
    assert len(problems) == 1
    assert said in problems[0]
    assert problems[0].startswith("bench.toml")
    assert facts["stock"]["abrasives"] == ["cushioned cloth 4000 = 9 um", "P400"]
    usual = {"contact": [], "large_type": False, "decimal_sign": ".", "paper": "A4"}
    assert usual.items() <= facts["bench"].items()
    assert facts["bench"]["name"] in ("", "kept")
    assert facts["money"]["rate_per_hour"] == 0.0
    assert facts["balance"]["readability"] == "0.01 g"


@pytest.mark.parametrize(
    "text",
    [b"\xef\xbb\xbf[bench]\nname = 'A bench'\n", b"[bench]\r\nname = 'A bench'\r\n", b"[bench]\rname = 'A bench'\r"],
)
def test_a_mark_at_its_head_and_any_line_end_are_read(tmp_path, text):
    facts, problems = read(tmp_path, text)
    assert (facts["bench"]["name"], problems) == ("A bench", ())


def test_one_line_of_contact_needs_no_brackets(tmp_path):
    assert read(tmp_path, "[bench]\ncontact = 'by letter'")[0]["bench"]["contact"] == ["by letter"]


def test_unknown_facts_are_kept_and_the_template_has_no_problem(tmp_path):
    facts, problems = read(tmp_path, BENCH_TEMPLATE + "[lamp]\nbulb = 7\n")
    assert (facts["lamp"], problems) == ({"bulb": 7}, ())


def test_what_is_no_text_or_no_file_leaves_the_usual_facts(tmp_path):
    facts, problems = read(tmp_path, b"\xff\xfe[\0b\0")
    assert facts["money"]["currency"] == "EUR"
    assert "not text in UTF-8" in problems[0]
    assert read_facts(tmp_path)[1][0].endswith("is no file, so nothing of it is used.")
    assert read_facts(tmp_path / "not there")[1] == ()
