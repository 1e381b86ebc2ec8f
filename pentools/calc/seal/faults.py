"""Which seal to suspect: from the pattern of several tests, never from one of them alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["SUSPECTS", "TESTS", "FaultTree", "Suspicion", "suspect_seal"]

SUSPECTS: dict[str, str] = {
    "head": "the head washer or ring",
    "packing": "the packing at the rod",
    "section": "the section joint",
    "sac": "the sac or its nipple",
    "inner cap": "the inner cap",
}

# test -> result -> (suspect -> points); a point for is one sign, a point against clears it in this test.
# Common practice, no source, apart from: bubbles at the shaft (a forum), a sound head pushes back (a repair page),
# damp places after a night (a blog), an inner cap that took the blame late (a blog).
TESTS: dict[str, dict[str, dict[str, int]]] = {
    # with the nib free the room's air is in front of the head: only head and packing close the space behind it
    "spring-back": {
        "returns": {"head": -2, "packing": -2},
        "part": {"head": 1, "packing": 1},
        "none": {"head": 1, "packing": 1},
    },
    # drawn at the section with the head in the middle of its stroke: the packing is beyond the head
    "vacuum": {
        "holds": {"head": -1, "section": -2, "sac": -2},
        "slow": {"head": 1, "section": 1, "sac": 1},
        "decays": {"head": 1, "section": 1, "sac": 1},
    },
    "shaft": {
        "no bubbles": {"packing": -2},
        "bubbles": {"packing": 2, "sac": -1},
    },
    "press": {
        "bubbles stop": {"sac": -2, "section": -1},
        "bubbles go on": {"sac": 2, "section": 1},
        "bubbles at the joint": {"section": 2},
    },
    "overnight": {
        "dry": {"head": -1, "packing": -1, "section": -2, "sac": -2},
        "behind the head": {"head": 2, "packing": -1},
        "at the rod's end": {"packing": 2, "head": 1},
        "at the section": {"section": 2},
        "in the barrel": {"sac": 2, "section": 1},
        "at lever or button": {"sac": 2},
        "in the cap": {"inner cap": 1, "section": 1},
    },
    "capped": {
        "dry": {"inner cap": -2},
        "ink in the cap, pen dry when open": {"inner cap": 2, "section": -1},
        "ink in the cap, section damp too": {"section": 2, "inner cap": 1},
    },
}
"""What each test can show, and what it says for (above 0) or against (below 0) each suspect."""

MECHANISMS: dict[str, tuple[str, ...]] = {
    "plunger": ("head", "packing", "section", "inner cap"),
    "piston": ("head", "section", "inner cap"),
    "sac": ("sac", "section", "inner cap"),
}
HOW: dict[str, str] = {
    "spring-back": "push the plunger half way with the nib free and let go",
    "vacuum": "with the head half way, draw a vacuum at the section and watch the gauge",
    "shaft": "hold the rod's end under water during a stroke and watch for bubbles",
    "press": "press the sac with the nib under water and watch where bubbles come, and whether they stop",
    "overnight": "fill it with water, leave it a night on tissue, and note every damp place",
    "capped": "cap it full, nib up and then nib down for an hour each, and look into the cap",
}
NEEDED_SIGNS = 2
NEEDED_LEAD = 2


@dataclass(frozen=True, slots=True)
class Suspicion:
    """One suspect with what speaks for and against it (test and result), and the points together."""

    suspect: str
    words: str
    points: int
    signs: tuple[str, ...]
    clears: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FaultTree:
    """What a pattern of tests says.

    Parameters
    ----------
    named : str
        The suspect, a key of `SUSPECTS`; empty where the pattern does not name one.
    suspicions : tuple of Suspicion
        All suspects of that mechanism, most suspected first.
    next_test : str
        The test that best separates the first two; empty where none is left or one is named.
    findings : tuple of Finding
        In words.
    """

    named: str
    suspicions: tuple[Suspicion, ...]
    next_test: str
    findings: tuple[Finding, ...]


def suspect_seal(results: Mapping[str, str], mechanism: str = "plunger") -> FaultTree:
    """Name the seal to suspect from the pattern of test results.

    Parameters
    ----------
    results : mapping of str to str
        Test to result, keys and values of `TESTS`. A test that was not made is left out.
    mechanism : {"plunger", "piston", "sac"}
        What the pen has.

    Returns
    -------
    FaultTree
        The suspect if the pattern names one, else the next test.

    Raises
    ------
    InputError
        If a test, a result or the mechanism is not known.

    Notes
    -----
    A suspect is named only if two tests or more were made, a sign for it is backed by a second test (another sign, or
    another suspect cleared), and it leads by two points or no other suspect has any left. Points are judged; the signs
    behind them are common practice, no source.

    Examples
    --------
    >>> suspect_seal({"shaft": "bubbles"}).named
    ''
    >>> suspect_seal({"shaft": "bubbles", "spring-back": "none", "overnight": "at the rod's end"}).named
    'packing'
    """
    if mechanism not in MECHANISMS:
        raise InputError("mechanism", "one of " + ", ".join(MECHANISMS), mechanism)
    for test, result in results.items():
        if test not in TESTS:
            raise InputError("test", "one of " + ", ".join(TESTS), test)
        if result not in TESTS[test]:
            raise InputError(f"result of the {test} test", "one of: " + ", ".join(TESTS[test]), result)
    suspicions = sorted((_weigh(name, results) for name in MECHANISMS[mechanism]), key=lambda s: -s.points)
    first, second = suspicions[0], suspicions[1]
    signs = [s for s in suspicions if s.signs]
    if not results:
        return FaultTree("", tuple(suspicions), "overnight", (Finding("note", "No test yet.", "no-tests"),))
    if not signs:
        return FaultTree("", tuple(suspicions), "", _nothing_wrong(results))
    if _may_be_named(first, second, suspicions[1:], results):
        text = f"The pattern points to {first.words}: {', '.join(first.signs)}{_cleared_words(suspicions[1:])}."
        return FaultTree(
            first.suspect, tuple(suspicions), "", (Finding("warning", text, first.suspect.replace(" ", "-")),)
        )
    better = _next_test(first.suspect, second.suspect, results, mechanism)
    if len(results) == 1:
        text = "One test does not name a seal."
    else:
        text = f"Not told yet: {first.words} and {second.words} stand too close."
    ahead = (
        f" Next: {HOW[better]}."
        if better
        else " No test is left that separates them: change the cheaper seal and repeat."
    )
    return FaultTree("", tuple(suspicions), better, (Finding("note", text + ahead, "not-told"),))


def _weigh(name: str, results: Mapping[str, str]) -> Suspicion:
    points, signs, clears = 0, [], []
    for test, result in results.items():
        value = TESTS[test][result].get(name, 0)
        points += value
        if value > 0:
            signs.append(f"{test}: {result}")
        elif value < 0:
            clears.append(f"{test}: {result}")
    return Suspicion(name, SUSPECTS[name], points, tuple(signs), tuple(clears))


def _may_be_named(first: Suspicion, second: Suspicion, others: list[Suspicion], results: Mapping[str, str]) -> bool:
    backed_by = set(first.signs)
    for other in others:
        backed_by |= set(other.clears)
    leads = first.points - second.points >= NEEDED_LEAD or not any(other.points > 0 for other in others)
    backed = len(results) >= NEEDED_SIGNS and len(backed_by) >= NEEDED_SIGNS
    return backed and bool(first.signs) and first.points > 0 and leads


def _cleared_words(others: list[Suspicion]) -> str:
    cleared = [other.words for other in others if other.points < 0]
    return f"; {', '.join(cleared)} {'is' if len(cleared) == 1 else 'are'} cleared" if cleared else ""


def _nothing_wrong(results: Mapping[str, str]) -> tuple[Finding, ...]:
    if len(results) == 1:
        return (Finding("note", "Nothing wrong in this one test; one test does not clear a pen.", "one-test"),)
    return (Finding("ok", f"Nothing wrong in {len(results)} tests.", "all-clear"),)


def _next_test(first: str, second: str, results: Mapping[str, str], mechanism: str) -> str:
    """The test not yet made whose results differ most between the two."""
    useless = {"sac": {"spring-back", "shaft"}, "piston": {"shaft", "press"}, "plunger": {"press"}}[mechanism]
    best, most = "", 0
    for test, outcomes in TESTS.items():
        if test in results or test in useless:
            continue
        spread = sum(abs(points.get(first, 0) - points.get(second, 0)) for points in outcomes.values())
        if spread > most:
            best, most = test, spread
    return best
