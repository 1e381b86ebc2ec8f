"""The setting sum through the command line: the strictest of feed, section and nipple."""

import json

import pytest

from pentools.cli import main
from pentools.sums.nib.setting import RUBBERS, neighbours_of, window_of


def setting(capsys, *words):
    code = main(["sums", "setting", *words, "--json"])
    out = capsys.readouterr()
    assert code == 0, out.err
    return json.loads(out.out)


@pytest.mark.parametrize(
    ("words", "kind", "high", "strictest"),
    [
        ([], "never", None, None),
        (["--feed", "plastic", "--alone", "yes"], "never", None, None),
        (["--feed", "ebonite", "--alone", "yes"], "open", 97, None),
        (["--feed", "ebonite"], "none", None, "sac on its nipple"),
        (["--feed", "ebonite", "--section", "celluloid", "--nipple", "none"], "none", 60, "section"),
        (["--feed", "ebonite", "--section", "hard rubber", "--nipple", "bare"], "none", 70, "section"),
        (["--feed", "ebonite", "--section", "phenolic", "--nipple", "bare"], "open", 90, "section"),
        (["--feed", "ebonite", "--section", "phenolic", "--nipple", "sac"], "none", None, "sac on its nipple"),
        (["--feed", "ebonite", "--nipple", "bare"], "none", 40, "section"),
    ],
)
def test_the_strictest_wins_and_what_is_not_known_is_strict(capsys, words, kind, high, strictest):
    data = setting(capsys, *words)
    assert (data["kind"], data["high_c"], data["strictest"]) == (kind, high, strictest)
    assert data["findings"][0]["level"] == ("note" if kind == "open" else "stop")


@pytest.mark.parametrize("feed", RUBBERS)
def test_every_hard_rubber_is_set(feed):
    assert window_of(feed, ()).kind == "open"


def test_every_neighbour_is_named():
    found = neighbours_of(("celluloid", "who knows"), "unknown")
    assert [(one.part, one.material, one.limit_c) for one in found] == [
        ("section", "celluloid", 60), ("section", "not named", 40), ("sac on its nipple", "as if there were one", None),
    ]  # fmt: skip
    assert neighbours_of(("celluloid",), "bare")[1:] == ()


def test_the_table(capsys):
    main(["sums", "setting", "--feed", "ebonite", "--section", "celluloid", "--nipple", "sac"])
    out = capsys.readouterr().out
    for words in ("70 to 80 °C", "section, celluloid", "never warmed", "10 to 60 s (from memory)"):
        assert words in out
