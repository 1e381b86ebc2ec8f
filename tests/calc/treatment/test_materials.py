"""Everyday names: what is a name, what is not, and what is never suggested."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools import tables
from pentools.calc.treatment.materials import material_name

KNOWN = sorted({*(row["material"] for row in tables.rows("heat_limits")), *(row["material"] for row in tables.rows("compatibility"))} - {"any"})  # fmt: skip
NOT_NAMES = """
perhaps celluloid | probably casein | maybe hard rubber | plastic | blue stuff | celluloid? | celluloid or acrylic | might be celluloid |
looks like casein | some resin | black material | possibly celluloid | presumably celluloid | likely celluloid | celluloid, I think |
I believe it is casein | celluloid-like | celluloid like | seems to be acrylic | appears to be celluloid | apparently ebonite |
not celluloid | non-celluloid | no celluloid | unknown plastic | unsure, celluloid | not sure: casein | uncertain celluloid |
unidentified celluloid | a sort of celluloid | kind of celluloid | celluloid type | celluloid or so | either casein or celluloid |
imitation celluloid | faux casein | said to be celluloid | sold as casein | described as ebonite | celluloid (doubtful) |
celluloid to be confirmed | tbd | n/a | none | resin | old plastic | hard plastic | thermoplastic | synthetic | precious resin |
celluloid/casein | celluloid and casein | casein celluloid | celluloid acetate | cellulose | rubber | sac | metal | alloy | plated |
gold | gold-coloured | silver plated | wood | horn | bone | shell | natural material | see note | as above | same | ditto | dark stuff |
could be celluloid | should be casein | supposedly casein | celluloid-ish | celluloid variant | similar to celluloid | guess: celluloid |
smells of camphor | camphor | no idea | don't know | hm | x | 1 | celluloid ??? | (celluloid?) | ? | ~celluloid maybe | "celluloid" they say |
celluloid if I am right | if celluloid | almost celluloid | celluloid substitute | pseudo celluloid | black | green marble | pearl | amber
"""
NAMES = """
celluloid: celluloid, Celluloid , green marbled celluloid, CELLULOSE NITRATE, black and pearl celluloid, silver pearl celluloid, gold and black celluloid, a celluloid barrel, celluloid (tortoiseshell), celluloid with gold-filled trim, celluloid; gold filled bands, tri-colour celluloid
degrading celluloid: crazed celluloid, sweating celluloid, degrading celluloid, crumbling green celluloid, decayed cellulose nitrate
hard rubber: hard rubber, hard-rubber, ebonite, EBONITE, vulcanite, black hard rubber, BHR, BCHR, black chased hard rubber, chased hard rubber, black chased ebonite, vulcanized rubber, smooth black ebonite, wave chased vulcanite
faded hard rubber: faded hard rubber, faded ebonite, faded black chased hard rubber, brown hard rubber, olive ebonite, oxidized vulcanite, hard rubber, faded
coloured hard rubber: red hard rubber, RHR, red ripple, red ripple hard rubber, mottled hard rubber, red and black mottled ebonite, woodgrain ebonite, faded red hard rubber, orange vulcanite, colored hard rubber, red mottled, mottled, faded ebonite
casein: casein, blue casein, casein formaldehyde, ivory casein
cellulose acetate: cellulose acetate, acetate, green acetate
acrylic: acrylic, PMMA, polymethyl methacrylate, acrylic resin, blue acrylic, acrylic (PMMA), cast acrylic barrel
polystyrene: polystyrene, styrene, clear polystyrene
ABS: ABS, abs, black ABS, acrylonitrile butadiene styrene
phenolic: phenolic, phenolic resin, phenol-formaldehyde, phenol formaldehyde resin
nylon: nylon, nylon 6,6, polyamide
lacquer: lacquer, urushi, black lacquer, maki-e, nitro lacquer, nitrocellulose lacquer, lacquered brass, red urushi, lacquer over metal
gold nib: gold nib, solid gold, 14 ct gold, 18k gold, 14k gold nib
gold-filled: gold-filled, gold filled, rolled gold, 1/20 12k gold filled, plated brass, gold-plated brass
gold-plated steel: gold-plated steel, gold plated steel nib
steel nib: steel, steel nib, carbon steel, nickel-plated steel
stainless steel: stainless steel, stainless, brushed stainless steel
chrome: chrome, chrome-plated brass, chromium plate, chromed steel
aluminium: aluminium, aluminum, anodized aluminum
brass: brass, copper, bronze, nickel silver, tarnished brass
silver: silver, sterling, sterling silver, hallmarked silver
metal overlay: silver overlay, metal overlay, gold filled overlay, hard rubber with silver overlay, sterling silver filigree over hard rubber
cork: cork, cork seal
latex: latex, latex sac, rubber sac, natural rubber
silicone: silicone, silicone sac
plasticised PVC: PVC, vinyl, pvc sac, plasticized pvc
bare metal: bare metal
"""


def not_names():
    return [text.strip() for line in NOT_NAMES.strip().splitlines() for text in line.split("|") if text.strip()]


def names():
    for line in NAMES.strip().splitlines():
        name, texts = line.split(": ", 1)
        for text in texts.replace("6,6", "6;6").replace("rubber, faded", "rubber; faded").replace("mottled, faded", "mottled; faded").split(","):  # fmt: skip
            yield name, text.strip().replace("6;6", "6,6").replace("; faded", ", faded")


def test_fifty_and_more_wordings_are_not_names():
    texts = not_names()
    assert len(texts) >= 90
    wrong = {text: material_name(text, KNOWN)[0] for text in texts if material_name(text, KNOWN)[0] != "unknown"}
    assert not wrong


def test_everyday_names_are_understood():
    found = [(name, text, *material_name(text, KNOWN)) for name, text in names()]
    assert len(found) >= 100
    assert not [one for one in found if one[0] != one[2] or one[3]]
    assert {name for name, _ in names()} == set(KNOWN) - {"unknown"}


@given(st.sampled_from([text for _, text in names()]), st.sampled_from(["perhaps", "probably", "like", "or casein glue", "not", "some", "hopefully", "xyz", "?"]), st.booleans())  # fmt: skip
def test_any_strange_word_beside_a_name_takes_it_away(text, word, before):
    assert material_name(f"{word} {text}" if before else f"{text} {word}", KNOWN)[0] == "unknown"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("perhaps celluloid", "not sure"), ("celluloid?", "not sure"), ("celluloid and casein", "more than one material"),
        ("teal-ish celluloid", "write the material alone, such as celluloid"), ("gold", "solid, filled or plated"), ("wood", "not in the table"),
    ],
)  # fmt: skip
def test_the_sentence_says_why_it_is_not_named(text, said):
    name, why = material_name(text, KNOWN)
    assert name == "unknown"
    assert said in why
    assert "strictest limits are used" in why


def test_gold_is_a_name_for_a_nib_only():
    assert material_name("gold", KNOWN, "nib") == ("gold nib", "")
    for part in ("", "barrel", "clip", "bands"):
        assert material_name("gold", KNOWN, part)[0] == "unknown"


def test_a_name_the_table_lacks_is_unknown_even_where_the_kit_knows_it():
    assert material_name("acrylic", ["celluloid"])[0] == "unknown"
    assert material_name("PVC", ["plasticised pvc"]) == ("plasticised pvc", "")


@pytest.mark.parametrize(("typed", "meant"), [("cellulod", "celluloid"), ("caseine", "casein"), ("hard ruber", "hard rubber"), ("acrilic", "acrylic"), ("ebonit", "ebonite")])  # fmt: skip
def test_a_slip_of_the_pen_is_asked_back(typed, meant):
    assert f"Did you mean {meant}?" in material_name(typed, KNOWN)[1]


def test_nothing_is_suggested_across_unlike_materials():
    like = {"celluloid": {"celluloid", "degrading celluloid"}, "rubber": {"hard rubber", "faded hard rubber", "coloured hard rubber"}}  # fmt: skip
    for _, text in list(names())[::2]:
        for typed in (text[:-1], text + "x", text.replace("e", "", 1)):
            said = material_name(typed, KNOWN)[1]
            if "Did you mean" in said:
                meant = material_name(said.partition("Did you mean ")[2].rstrip("?"), KNOWN)[0]
                right = material_name(text, KNOWN)[0]
                assert meant == right or any({meant, right} <= family for family in like.values()), (typed, said)
    for typed in ("cellulose", "cellulose a", "stell", "silver steel", "celluloid acetate", "polystyrol", "polyester"):
        assert "Did you mean" not in material_name(typed, KNOWN)[1], typed
