"""Rubber and lubricant chosen by what the seal meets."""

import pytest

from pentools import tables
from pentools.calc.seal.rubber import ElastomerRow, LubricantRow, choose_elastomer, choose_lubricant
from pentools.errors import InputError

RUBBER, LUBRICANTS = tables.read(ElastomerRow, "elastomers"), tables.read(LubricantRow, "lubricants")


def best(media, use="moving seal"):
    return choose_elastomer(media, use, RUBBER)[0]


def test_what_it_meets_decides():
    assert best(["water-based ink", "ammonia flush"]).elastomer in ("NBR", "EPDM")
    assert best(["mineral oil"]).elastomer == "FKM"
    assert best(["mineral oil", "ammonia flush"]).elastomer == "NBR"
    for medium in ("mineral oil", "silicone grease"):
        order = [c.elastomer for c in choose_elastomer([medium], "moving seal", RUBBER)]
        assert order[-1] == "silicone"


def test_latex_and_ammonia_is_warned_of_with_how_sure_it_is():
    latex = next(c for c in choose_elastomer(["ammonia flush"], "sac", RUBBER) if c.elastomer == "latex")
    assert latex.worst == "F"
    assert any("ammonia" in f.text and "secondary" in f.text for f in latex.findings)


def test_an_unknown_rating_counts_as_poor():
    order = choose_elastomer(["alcohol"], "sac", RUBBER)
    assert order[-1].elastomer == "PVC"
    assert order[-1].worst == ""
    assert any("not known" in f.text for f in order[-1].findings)


def test_what_each_is_for_is_told():
    used = {
        c.elastomer: [f.text for f in c.findings if f.topic == "use"]
        for c in choose_elastomer(["alcohol"], "moving seal", RUBBER)
    }
    assert used["NBR"] == ["NBR: usual choice for heads and rods (judged)."]
    assert used["silicone"] == ["silicone: poor in abrasion and tear: not for a seal that moves (secondary)."]


def test_every_rating_carries_its_source():
    for choice in choose_elastomer(["water-based ink", "alcohol", "silicone grease"], "moving seal", RUBBER):
        assert all(source and certainty for _, _, source, certainty, _ in choice.ratings)


def test_lubricants():
    verdicts = {
        rubber: {c.lubricant: c.verdict for c in choose_lubricant(rubber, LUBRICANTS)}
        for rubber in ("NBR", "EPDM", "silicone", "latex")
    }
    assert verdicts["NBR"]["silicone grease"] == "ok"
    assert verdicts["silicone"]["silicone grease"] == "avoid"
    assert verdicts["EPDM"]["petroleum jelly"] == "avoid"
    assert verdicts["latex"]["petroleum jelly"] == "avoid"
    assert choose_lubricant("EPDM", LUBRICANTS)[0].verdict == "ok"


def test_silicone_is_last_for_a_seal_that_moves_though_it_stands_alcohol_best():
    assert choose_elastomer(["alcohol"], "moving seal", RUBBER)[-1].elastomer == "silicone"
    assert choose_elastomer(["alcohol"], "static seal", RUBBER)[0].elastomer == "silicone"


def row(elastomer, medium, rating, note=""):
    return ElastomerRow(elastomer, medium, rating, "x", "judged", note)


def test_the_worst_rating_decides_and_then_their_sum():
    rows = [
        row("NBR", "a", "E"), row("NBR", "b", "F"), row("EPDM", "a", "G"), row("EPDM", "b", "G"), row("FKM", "a", "E"),
        row("FKM", "b", "G"), row("silicone", "a", "E"), row("silicone", "b", "E"), row("NBR", "note on use", "", "usual"),
    ]  # fmt: skip
    found = choose_elastomer(["a", "b"], "moving seal", rows)
    assert [c.elastomer for c in found] == ["FKM", "EPDM", "NBR", "silicone"]
    assert [c.worst for c in found] == ["G", "G", "F", "E"]
    assert choose_elastomer(["a", "b"], "static seal", rows)[0].elastomer == "silicone"
    by_name = {c.elastomer: [f.topic for f in c.findings] for c in found}
    assert by_name == {"FKM": [], "EPDM": [], "NBR": ["fair", "use"], "silicone": ["moving"]}


def test_words_say_poor_fair_or_not_known():
    rows = [
        row("latex", "a", "P", "it swells"),
        row("latex", "b", "F"),
        row("silicone", "b", "E"),
        row("PVC", "a", "E"),
    ]
    found = {c.elastomer: [f.text for f in c.findings] for c in choose_elastomer(["a", "b"], "sac", rows)}
    assert found["latex"] == ["latex is poor in a: it swells (judged).", "latex is only fair in b (judged)."]
    assert found["silicone"] == ["silicone is not known in a: no figure found (judged)."]


def test_lubricants_come_best_first():
    rows = [
        LubricantRow(name, "x", verdict, "", "", "")
        for name, verdict in (("a", "avoid"), ("b", "unknown"), ("c", "limited"), ("d", "ok"), ("e", "ok"))
    ]
    assert [c.lubricant for c in choose_lubricant("x", rows)] == ["d", "e", "c", "b", "a"]


@pytest.mark.parametrize(
    "call",
    [
        lambda: choose_elastomer([], "sac", RUBBER),
        lambda: choose_elastomer(["honey"], "sac", RUBBER),
        lambda: choose_elastomer(["alcohol"], "bung", RUBBER),
        lambda: choose_lubricant("felt", LUBRICANTS),
    ],
)
def test_refusals(call):
    with pytest.raises(InputError, match="must be"):
        call()
