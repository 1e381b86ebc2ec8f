"""Which seal to suspect: from the pattern of several tests, never from one of them alone, in every filling system."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import msgspec

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = [
    "FaultTable",
    "FaultTree",
    "Mechanism",
    "SignRow",
    "SuspectRow",
    "Suspicion",
    "WayRow",
    "faults_from_rows",
    "suspect_seal",
]

NEEDED_SIGNS = 2
NEEDED_LEAD = 2
_POINTS = re.compile(r"\s*(?P<suspect>[a-z ]+?)\s+(?P<points>[+-]\d)\s*")


class SuspectRow(msgspec.Struct, frozen=True):
    """One row of the table ``seal_suspects``: what can leak, in words, and in which filling systems."""

    suspect: str
    words: str
    systems: tuple[str, ...]


class WayRow(msgspec.Struct, frozen=True):
    """One row of the table ``seal_tests``: a test, and how it is made in some filling systems."""

    test: str
    label: str
    systems: tuple[str, ...]
    how: str


class SignRow(msgspec.Struct, frozen=True):
    """One row of the table ``seal_signs``: what a result says, as suspects with their points."""

    test: str
    result: str
    points: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Mechanism:
    """One filling system as the fault tree sees it.

    Parameters
    ----------
    system : str
        Its key.
    suspects : mapping of str to str
        What can leak in it, with its words.
    ways : mapping of str to str
        Tests that can be made on it, with how.
    signs : mapping
        Test to result to points of its own suspects; only results that say something of this system.
    """

    system: str
    suspects: Mapping[str, str]
    ways: Mapping[str, str]
    signs: Mapping[str, Mapping[str, Mapping[str, int]]]


@dataclass(frozen=True, slots=True)
class FaultTable:
    """Suspects, tests and signs of every filling system.

    Parameters
    ----------
    mechanisms : mapping of str to Mechanism
        By the system's key; ``any`` for a pen whose system is not named.
    labels : mapping of str to str
        Every test with its name on the form.
    signs : mapping
        Test to result to points of all suspects.
    """

    mechanisms: Mapping[str, Mechanism]
    labels: Mapping[str, str]
    signs: Mapping[str, Mapping[str, Mapping[str, int]]]


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
        The suspect; empty where the pattern does not name one.
    suspicions : tuple of Suspicion
        All suspects of that system, most suspected first.
    next_test : str
        The test that best separates the first two; empty where none is left or one is named.
    clear : bool
        Whether two tests or more were made and none of them shows anything wrong.
    findings : tuple of Finding
        In words.
    """

    named: str
    suspicions: tuple[Suspicion, ...]
    next_test: str
    clear: bool
    findings: tuple[Finding, ...]


def faults_from_rows(suspects: Sequence[SuspectRow], tests: Sequence[WayRow], signs: Sequence[SignRow]) -> FaultTable:
    """The fault table from the rows of its three tables.

    Parameters
    ----------
    suspects : sequence of SuspectRow
        The table ``seal_suspects``.
    tests : sequence of WayRow
        The table ``seal_tests``.
    signs : sequence of SignRow
        The table ``seal_signs``.

    Returns
    -------
    FaultTable
        Every system with its own suspects, tests and results.

    Raises
    ------
    InputError
        If points cannot be read, or name a suspect or test that is not there.
    """
    known, labels = {row.suspect for row in suspects}, {row.test: row.label for row in tests}
    read: dict[str, dict[str, dict[str, int]]] = {}
    for row in signs:
        if row.test not in labels:
            raise InputError("test of a sign", "one of " + ", ".join(labels), row.test)
        read.setdefault(row.test, {})[row.result] = _points(row.points, known)
    systems = dict.fromkeys(key for row in suspects for key in row.systems)
    mechanisms = {}
    for system in systems:
        own = {row.suspect: row.words for row in suspects if system in row.systems}
        ways = {row.test: row.how for row in tests if system in row.systems}
        mechanisms[system] = Mechanism(system, own, ways, _signs_of(own, ways, read))
    return FaultTable(mechanisms, labels, read)


def _points(parts: Sequence[str], known: set[str]) -> dict[str, int]:
    if not parts:
        raise InputError("points of a sign", "suspects with their points, such as head +2", "none")
    found = {}
    for part in parts:
        match = _POINTS.fullmatch(part)
        if match is None or match["suspect"] not in known:
            raise InputError("points of a sign", "suspects with their points, such as head +2", part)
        found[match["suspect"]] = int(match["points"])
    return found


def _signs_of(
    own: Mapping[str, str], ways: Mapping[str, str], signs: Mapping[str, Mapping[str, Mapping[str, int]]]
) -> dict[str, dict[str, dict[str, int]]]:
    """The results that a system can show: the good ones, and those that speak for one of its own parts."""
    found: dict[str, dict[str, dict[str, int]]] = {}
    for test in ways:
        for result, points in signs[test].items():
            mine = {suspect: value for suspect, value in points.items() if suspect in own}
            good = all(value <= 0 for value in points.values())
            if good or any(value > 0 for value in mine.values()):
                found.setdefault(test, {})[result] = mine
    return found


def suspect_seal(results: Mapping[str, str], system: str, table: FaultTable) -> FaultTree:
    """Name the seal to suspect from the pattern of test results.

    Parameters
    ----------
    results : mapping of str to str
        Test to result. A test that was not made is left out.
    system : str
        The filling system's key, or ``any`` where it is not named.
    table : FaultTable
        Suspects, tests and signs.

    Returns
    -------
    FaultTree
        The suspect if the pattern names one, else the next test.

    Raises
    ------
    InputError
        If a test, a result or the system is not known.

    Notes
    -----
    A suspect is named only if two tests or more were made, a sign for it is backed by a second test (another sign, or
    another suspect cleared), and it leads by two points or no other suspect has any left. Only parts that the system
    has are suspected, and only tests that can be made on it are asked for. A bad sign that none of its parts explains
    keeps it from being cleared. Points are judged; the signs behind them are common practice, no source.
    """
    if system not in table.mechanisms:
        raise InputError("filling system", "one of " + ", ".join(table.mechanisms), system)
    for test, result in results.items():
        if test not in table.signs:
            raise InputError("test", "one of " + ", ".join(table.signs), test)
        if result not in table.signs[test]:
            raise InputError(f"result of the {test} test", "one of: " + ", ".join(table.signs[test]), result)
    mechanism = table.mechanisms[system]
    suspicions = tuple(
        sorted((_weigh(name, results, mechanism, table) for name in mechanism.suspects), key=lambda s: -s.points)
    )
    if not results:
        first = next(iter(mechanism.ways))
        return FaultTree("", suspicions, first, False, (Finding("note", "seal.no-tests", how=mechanism.ways[first]),))
    strange = [f"{test}: {result}" for test, result in results.items() if _unexplained(test, result, mechanism, table)]
    if strange:
        after = _next_test(suspicions, results, mechanism)
        how = mechanism.ways.get(after, "")
        return FaultTree("", suspicions, after, False, (Finding("warning", "seal.unexplained", seen=strange, how=how),))
    if not any(s.signs for s in suspicions):
        return _nothing_wrong(suspicions, results, mechanism)
    return _pointed(suspicions, results, mechanism)


def _unexplained(test: str, result: str, mechanism: Mechanism, table: FaultTable) -> bool:
    """Whether a result is a bad sign that none of the system's parts accounts for."""
    points = table.signs[test][result]
    return any(v > 0 for v in points.values()) and not any(v > 0 and s in mechanism.suspects for s, v in points.items())


def _weigh(name: str, results: Mapping[str, str], mechanism: Mechanism, table: FaultTable) -> Suspicion:
    points, signs, clears = 0, [], []
    for test, result in results.items():
        value = table.signs[test][result].get(name, 0)
        points += value
        if value > 0:
            signs.append(f"{test}: {result}")
        elif value < 0:
            clears.append(f"{test}: {result}")
    return Suspicion(name, mechanism.suspects[name], points, tuple(signs), tuple(clears))


def _nothing_wrong(suspicions: tuple[Suspicion, ...], results: Mapping[str, str], mechanism: Mechanism) -> FaultTree:
    if len(results) >= NEEDED_SIGNS:
        return FaultTree("", suspicions, "", True, (Finding("ok", "seal.all-clear", count=len(results)),))
    after = _next_test(suspicions, results, mechanism)
    finding = Finding("note", "seal.one-test", how=mechanism.ways.get(after, ""))
    return FaultTree("", suspicions, after, False, (finding,))


def _pointed(suspicions: tuple[Suspicion, ...], results: Mapping[str, str], mechanism: Mechanism) -> FaultTree:
    first, second = suspicions[0], suspicions[1]
    if _may_be_named(first, suspicions[1:], results):
        cleared = [other.words for other in suspicions[1:] if other.points < 0]
        said = Finding("warning", "seal.suspect", words=first.words, signs=first.signs, cleared=cleared)
        return FaultTree(first.suspect, suspicions, "", False, (said,))
    after = _next_test(suspicions, results, mechanism)
    how = mechanism.ways.get(after, "")
    close = Finding("note", "seal.not-told:close", first=first.words, second=second.words, how=how)
    said = Finding("note", "seal.not-told:one", how=how) if len(results) == 1 else close
    return FaultTree("", suspicions, after, False, (said,))


def _may_be_named(first: Suspicion, others: Sequence[Suspicion], results: Mapping[str, str]) -> bool:
    backed_by = set(first.signs)
    for other in others:
        backed_by |= set(other.clears)
    leads = first.points - others[0].points >= NEEDED_LEAD or not any(other.points > 0 for other in others)
    backed = len(results) >= NEEDED_SIGNS and len(backed_by) >= NEEDED_SIGNS
    return backed and bool(first.signs) and first.points > 0 and leads


def _next_test(suspicions: Sequence[Suspicion], results: Mapping[str, str], mechanism: Mechanism) -> str:
    """The test not yet made whose results differ most, on average, between the two most suspected."""
    first, second = suspicions[0].suspect, suspicions[1].suspect
    best, most = "", 0.0
    for test in mechanism.ways:
        if test in results:
            continue
        outcomes = mechanism.signs[test].values()
        spread = sum(abs(points.get(first, 0) - points.get(second, 0)) for points in outcomes) / len(outcomes)
        if spread > most:
            best, most = test, spread
    return best
