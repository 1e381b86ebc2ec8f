"""The date sum: words, JSON keys, refusals."""

import json

import pytest

from pentools.errors import InputError
from pentools.sums.base import read_options
from pentools.sums.dating.date import DATE


def ask(chosen, **texts):
    return chosen.run(read_options(chosen.fields, texts))


def test_a_date_in_words_and_as_json():
    answer = ask(DATE, evidence="clip 1936/1942; patent 1934; barrel 1938/1945, sure; nib 1950, replaced")
    assert answer.sentence == "All evidence on original parts allows 1938 to 1942."
    data = json.loads(json.dumps(answer.data))
    assert (data["range"], data["edtf"], data["conflicts"]) == ([1938, 1942], "1938/1942", [])
    assert data["findings"] == json.loads(json.dumps([finding.as_json() for finding in answer.findings]))
    assert len(answer.table) == 5
    assert answer.table[0] == ("feature", "typed", "read as", "allows", "kind", "how sure", "part")
    assert answer.table[2] == ("patent", "1934", "1934 (1934)", "1934 or later", "patent", "likely", "original")


def test_a_contradiction_as_json():
    data = ask(DATE, evidence="clip 1936/1942; barrel 1938/1945; nib 1950/1955").data
    assert data["range"] is None
    assert data["edtf"] is None
    assert [way["doubt"] for way in data["conflicts"]] == [["nib"]]
    assert data["conflicts"][0]["leaves"] == "1938/1942"
    assert [way["doubt"] for way in data["other_ways"]] == [["clip", "barrel"]]


def test_an_open_end_is_null():
    assert ask(DATE, evidence="patent 1934").data["range"] == [1934, None]


def test_the_width_of_about_is_asked():
    assert ask(DATE, evidence="clip c. 1936", about="4").data["range"] == [1932, 1940]
    assert ask(DATE, evidence="clip c. 1936").data["range"] == [1934, 1938]


@pytest.mark.parametrize(
    ("evidence", "said"),
    [
        ("clip 1942/1936", "Was 1936/1942 meant"),
        ("clip", "clip 1936/1942"),
        ("clip 1396", "mistyped"),
        ("clip 9361", "mistyped"),
        ("", "filled in"),
    ],
)
def test_a_date_is_refused_in_a_sentence(evidence, said):
    with pytest.raises(InputError, match=said):
        ask(DATE, evidence=evidence)


def test_every_piece_says_how_it_was_read():
    pieces = ask(
        DATE, evidence="clip not later than 1942; cap late 1930s, sure, unknown, source: a list of 1938; nib c. 1940"
    ).data["evidence"]
    assert [piece["read_as"] for piece in pieces] == [
        "1942 or earlier (../1942)",
        "1936 to 1939 (1936/1939)",
        "1938 to 1942 (1940~)",
    ]
    assert [piece["feature"] for piece in pieces] == ["clip", "cap", "nib"]
    assert [piece["typed"] for piece in pieces] == ["not later than 1942", "late 1930s", "c. 1940"]
    assert pieces[0]["note"] is None
    assert "thirds" in pieces[1]["note"]
    assert {**pieces[1], "note": ""} == {
        "feature": "cap", "typed": "late 1930s", "edtf": "1936/1939", "meaning": "1936 to 1939", "read_as": "1936 to 1939 (1936/1939)", "note": "",
        "allows": "1936 to 1939", "kind": "production", "certainty": "sure", "part": "unknown", "source": "a list of 1938",
    }  # fmt: skip
    assert pieces[0]["source"] is None


def test_what_is_unknown_or_worth_finding_out_as_json():
    data = ask(DATE, evidence="clip 1936/1942; feed 1938/1939, unknown; patent 1938").data
    assert (data["edtf"], data["edtf_if_all_original"], data["meaning"]) == ("1938/1942", "1938/1939", "1938 to 1942")
    assert (data["start_set_by"], data["end_set_by"]) == (["patent"], ["clip"])
    fact = data["next_facts"][0]
    assert (fact["find_out"], fact["edtf_at_best"], fact["ways_out_left"]) == (
        "whether the feed is original",
        "1938/1939",
        None,
    )
    assert fact["years_at_best"] == pytest.approx(2, abs=0.01)
    torn = ask(DATE, evidence="clip 1930; cap 1940; nib 1950").data
    assert torn["next_facts"][0]["ways_out_left"] == 2
    assert torn["next_facts"][0]["years_at_best"] is None
    assert torn["meaning"] is None
    assert torn["conflicts"][0] == {
        "doubt": ["clip", "cap"], "places": [0, 1], "weight": 4, "least_weight": True, "fewest": True, "leaves": "1950",
    }  # fmt: skip


def test_years_of_no_pen_are_asked_about():
    for line in ("clip 1779", "clip 2101", "clip before 1780", "clip 1700/1936"):
        with pytest.raises(InputError, match=r"date of the clip must be within 1780 to 2100.*mistyped"):
            ask(DATE, evidence=line)
    for line in ("clip 1780", "clip 2100", "clip before 1781", "clip from 2100"):
        ask(DATE, evidence=line)
