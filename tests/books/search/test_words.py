"""What was found as it is read, and every key for who reads it by program."""

import msgspec

from pentools.books.search.likeness import CameOfIt, Fitted, Known
from pentools.books.search.search import Found, Match, SizeMatch
from pentools.books.search.words import RULE, found_as_json, found_in_lines
from pentools.calc.books.nearness import near

KNOWN = Known(
    pen="a red pen", system="lever-sac", material="celluloid", made_of=" celluloid", body="celluloid", parts=("seals",), sizes=(),
    rest=msgspec.Raw(msgspec.msgpack.encode(CameOfIt((Fitted("seals and sac", "wax", None, False), Fitted("sac on its nipple", "sac 16", "L-7", True)),
    ("sac 17 at the sac on its nipple: too stiff",), ("hook",)))), ending="stopped", begun="2026-01-02",
    ended_on="2026-01-12", older=None, came_back="",
)  # fmt: skip
SIZE = SizeMatch("nipple", 6.2, 6.17, near(6.2, 0.03, 6.17, 0.04))
ONE = Match("pen-1", KNOWN, ("the system",), (SIZE,), "it came back as pen-2: it leaks")


def test_lines():
    assert list(found_in_lines(Found((ONE,)), 20)) == [
        "pen-1  a red pen; stopped 12 Jan 2026, after 10 days",
        "    found by the system; nipple diameter 6.17 mm (−0.03)",
        "    fitted: sac 16, sac on its nipple (lot L-7); wax, seals and sac",
        "    failed: sac 17 at the sac on its nipple: too stiff; it came back as pen-2: it leaks",
        "    tools: hook",
        "1 pen.",
        RULE,
    ]


def test_none_and_too_many():
    lines = list(found_in_lines(Found((), (ONE,), 3, {"bad": "no file"}), 20))
    assert lines[0] == "No pen on this bench is like that."
    assert lines[1] == "The nearest, though not near enough:"
    assert "3 pens have no such size on record." in lines
    assert lines[-1] == "Not looked through, because it cannot be read: bad."
    assert list(found_in_lines(Found((ONE, ONE)), 1))[-2] == "2 pens; the first is shown (--most 2 shows all)."


def test_every_key():
    told = found_as_json(Found((ONE, ONE), unread={"bad": "no file"}), 1)
    assert (told["n"], len(told["jobs"]), told["without_that_size"], told["unread"]) == (2, 1, 0, {"bad": "no file"})
    assert told["jobs"][0] == {
        "job": "pen-1", "pen": "a red pen", "system": "lever-sac", "material": "celluloid",
        "why": ["the system", "nipple diameter 6.17 mm (−0.03)"],
        "sizes": [{"name": "nipple", "asked": 6.2, "there": 6.17, "distance": -0.03, "near_enough": 0.1, "within": True}],
        "fitted": [
            {"place": "seals and sac", "what": "wax", "lot": None, "tried_dry": False},
            {"place": "sac on its nipple", "what": "sac 16", "lot": "L-7", "tried_dry": True},
        ],
        "failed": ["sac 17 at the sac on its nipple: too stiff", "it came back as pen-2: it leaks"],
        "came_back": "it came back as pen-2: it leaks", "tools": ["hook"], "ending": "stopped", "begun": "2026-01-02",
        "ended_on": "2026-01-12", "days": 10, "open": "pentools open pen-1",
    }  # fmt: skip
