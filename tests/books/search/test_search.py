"""A pen is found by all that is asked for, the nearest and newest first, and it is said why."""

import pytest

from pentools.books.search.search import Asked, find_on, pens_like
from pentools.errors import InputError
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, open_job
from pentools.units import Reading


@pytest.fixture
def shelf(tmp_path, monkeypatch):
    monkeypatch.setenv("PENTOOLS_KEPT", str(tmp_path / "kept"))
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def pens(shelf):
    """Three sac pens, of which one came back, and a piston filler."""

    def pen(name, system, material, bore, nipple, ended, pen="a pen"):
        job = create_job(shelf, name)
        job.add("intake", "arrival", {"pen": pen, "system": system, "material": material, "arrived_on": "2026-01-02", "barrel_outside_mm": "12.4 mm"})  # fmt: skip
        job.add("seal", "measure", {"place": "sac" if nipple else "cork", "bore": bore, **({"nipple": nipple} if nipple else {"groove": "4 mm"})})  # fmt: skip
        if ended:
            job.add("release", "result", {"ending": "done", "summary": "It writes.", "released_on": ended})
        return job

    one = pen("one", "lever-sac", "celluloid", "7.60 mm", "6.20 mm", "2026-03-01", "Grün marbled lever filler")
    one.add("work log", "material", {"what": "latex sac 16", "way": "added", "part": "seals", "lot": "L-7"})
    pen("two", "lever-sac", "black hard rubber", "7.66 mm", "6.22 mm", "2026-05-01")
    pen("three", "button-sac", "celluloid", "7.63 mm", "6.24 mm", "2026-04-01")
    pen("four", "piston", "celluloid", "8.50 mm", "", "2026-02-01").add("work log", "work", {"activity": "seal", "minutes": "20 min", "done": "Turned a cork, waxed it."})  # fmt: skip
    back = create_job(shelf, "one-again")
    back.add("intake", "coming back", {"older": "one", "failed": "the sac came off"})
    return shelf


def jobs(found):
    return [match.job for match in found.matches]


def mm(value, u=None):
    return Reading(value, "mm", u)


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        (Asked(("cork",)), ["four"]),
        (Asked(("CORK", "waxed")), ["four"]),
        (Asked(("cork", "sac")), []),
        (Asked(("ork",)), []),
        (Asked(("grun",)), ["one"]),
        (Asked(("Gruen",)), ["one"]),
        (Asked(("grün MARBLED lever",)), ["one"]),
        (Asked(("sac 16",)), ["one"]),
        (Asked(system="lever-sac"), ["two", "one"]),
        (Asked(material="Celluloid"), ["three", "one", "four"]),
        (Asked(material="hard rubber"), ["two"]),
        (Asked(part="seals", system="piston"), ["four"]),
        (Asked(part="clip"), []),
    ],
)
def test_everything_asked_for_must_be_so(pens, asked, found):
    assert jobs(find_on(pens, asked)) == found


def test_sizes_are_near_within_both_doubts_and_the_nearest_stands_first(pens):
    near = find_on(pens, Asked(sizes={"bore": mm(7.61)}))
    assert jobs(near) == ["one", "three", "two"]
    assert [round(match.sizes[0].near.distance, 3) for match in near.matches] == [-0.01, 0.02, 0.05]
    assert near.matches[0].sizes[0].near.window == pytest.approx(2 * 0.02 * 2**0.5)
    both = find_on(pens, Asked(sizes={"bore": mm(7.61), "nipple": mm(6.17)}))
    assert jobs(both) == ["one", "two"], "the size that is furthest off counts"
    assert jobs(find_on(pens, Asked(sizes={"bore": mm(8.3, 0.1)}))) == ["four"]
    assert find_on(pens, Asked(sizes={"bore": mm(8.3)})).matches == ()


def test_where_none_is_near_enough_the_nearest_are_named_and_those_without_counted(pens):
    far = find_on(pens, Asked(system="lever-sac", sizes={"nipple": mm(6.5)}))
    assert (far.matches, [match.job for match in far.nearest], far.without) == ((), ["two", "one"], 0)
    assert find_on(pens, Asked(sizes={"nipple": mm(6.2)})).without == 2


def test_a_barrel_is_its_inside_or_its_outside(pens):
    assert jobs(find_on(pens, Asked(sizes={"barrel": mm(7.6), "nipple": mm(6.2)}))) == ["one", "three"]
    assert len(find_on(pens, Asked(sizes={"barrel": mm(12.4)})).matches) == 4


def test_it_is_said_why_and_what_came_of_it(pens):
    [one] = find_on(pens, Asked(("latex",), system="lever-sac")).matches
    assert one.why == ("the system", "“latex” in part or material in or out: latex sac 16")
    assert one.came_back == "it came back as one-again: the sac came off"
    assert [(fitted.what, fitted.lot) for fitted in one.known.came_of_it.fitted] == [("latex sac 16", "L-7")]


def test_a_bad_job_is_named_and_hides_no_other(pens):
    (pens.folder / "four" / "record.jsonl").unlink()
    (pens.folder / "four" / "record.jsonl").mkdir()
    found = find_on(pens, Asked(material="celluloid"))
    assert (jobs(found), list(found.unread)) == (["three", "one"], ["four"])


@pytest.mark.parametrize(
    ("asked", "said"),
    [(Asked(), "what to look for"), (Asked(("—",)), "a word with a letter"), (Asked(sizes={"girth": mm(3)}), "one of")],
)
def test_what_cannot_be_looked_for_is_said(pens, asked, said):
    with pytest.raises(InputError, match=said):
        find_on(pens, asked)


def test_pens_like_this_one_by_its_own_sizes(pens):
    own = open_job("one", bench=pens)
    [two] = pens_like(own)
    assert (two.job, two.why[0]) == ("two", "the same system")
    assert any(why.startswith("bore 7.66 mm (+0.06)") for why in two.why)
    for name, material, bore in (
        ("five", "celluloid", "7.66 mm"),
        ("six", "celluloid", "7.59 mm"),
        ("seven", "casein", ""),
    ):
        job = create_job(pens, name)
        job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac", "material": material})
        if bore:
            job.add("seal", "measure", {"place": "sac", "bore": bore, "nipple": "6.20 mm"})
    found = pens_like(own)
    assert [match.job for match in found] == ["six", "two", "five", "seven"]
    assert [("the same material" in match.why) for match in found] == [True, False, True, False]
    assert [match.job for match in pens_like(own, most=1)] == ["six"]
    open_job("seven", bench=pens).add("open", "material", {"part": "section", "material": "celluloid", "sure": "yes"})
    assert "the same material" not in pens_like(own)[3].why, "its section is not its barrel"
    assert pens_like(create_job(pens, "unsaid")) == ()
