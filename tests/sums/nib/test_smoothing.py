"""The smoothing sum through the command line."""

import json

from pentools.cli import main


def plan(capsys, *words):
    code = main(["sums", "smoothing", "--own", "film 3 um; film 1 um; P600", *words, "--json"])
    out = capsys.readouterr()
    assert code == 0, out.err
    return json.loads(out.out)


def strokes(data):
    return [(step["grade"], step["most_strokes"], step["check_every"]) for step in data["steps"]]


def test_few_strokes_and_a_look(capsys):
    seen = plan(capsys, "--feel", "scratchy", "--aligned", "yes", "--tipped", "yes")
    assert strokes(seen) == [("film 3 µm", 12, 4), ("film 1 µm", 12, 4)]
    assert seen["sentence"].startswith("Film 3 µm and film 1 µm, 12 strokes each at most, a look")
    assert "not given back" in seen["sentence"]


def test_what_was_not_looked_at_is_taken_as_the_strictest(capsys):
    asked = plan(capsys, "--feel", "scratchy")
    assert {n for _, n, _ in strokes(asked)} == {6}
    assert {"align-first", "no-tipping"} <= {f["topic"] for f in asked["findings"]}
    bent = plan(capsys, "--feel", "scratchy", "--aligned", "no")
    assert (bent["steps"], bent["findings"][0]["level"]) == ([], "stop")
    assert bent["sentence"].startswith("No smoothing: Align the tines first")


def test_the_table(capsys):
    main(["sums", "smoothing", "--own", "film 1 um", "--feel", "reshaped", "--aligned", "yes", "--tipped", "yes"])
    out = capsys.readouterr().out
    assert "most strokes" in out
    assert "after 4 wipe, look, write a line" in out
