"""What the nib stage asks keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.nib import kinds

KEPT = {
    "nib/loupe": "when:c tipping:c tines:c slit:c step:q gap:q cracks:c times:n called seen photo:p",
    "nib/fit": "when:c reach:q inner_cap:q overhang:q seated:b",
    "nib/adjust": "what:c did bends:i broke",
    "nib/smoothing plan": "feel:c",
    "nib/smoothing": "grade strokes:i figure:c looked:b starts:i wrote",
    "nib/feed setting": "way:c gap:c alone:b surface:q seconds:q cooled:q nipple:c broke",
    "nib/writing test": "when:c ink paper wetness:c scan feels",
    "nib/lines": "when:c line:q pressed:q ratio:n strokes:i skips:i written:q scan drawn:b",
    "nib/start": "when:c way:q rested:q lay starts:i",
    "nib/flow": "when:c before:qs after:qs length:q minutes:q idle:q density:q",
    "nib/flex": "when:c loads:qs widths:qs angle:q metal:c width_doubt:q wobble:q extra:q maximum:b",
}

ASKED = {
    "nib/loupe": "when! tipping! tines! step:0-1mm gap:0-1mm times:2-200",
    "nib/fit": "when! reach:2-45mm inner_cap:3-80mm overhang:0-15mm",
    "nib/adjust": "what! did! bends:0-200",
    "nib/smoothing plan*": "feel!",
    "nib/smoothing": "grade! strokes!:1-2000 figure! starts:0-10",
    "nib/feed setting": "way! gap! surface:5-150degC seconds:1-600s cooled:1-600s",
    "nib/writing test": "when! ink! paper!",
    "nib/lines": "when! line!:0.05-8mm pressed:0.05-10mm ratio:1-20 strokes:1-100000 skips:0-100000 written:0.001-2000m",
    "nib/start": "when! way!:0-2000mm rested:0-2000h starts:0-10",
    "nib/flow": "when! before! after! length!",
    "nib/flex": "when! loads! widths!",
}


def test_names_on_disk_stay():
    assert on_disk(kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(kinds) == ASKED


def test_few_things_must_be_said():
    assert all(
        sum(f.required for f in kind.fields) <= 4 for kind in vars(kinds).values() if type(kind).__name__ == "Kind"
    )


def test_every_tipping_says_whether_it_may_be_smoothed():
    assert set(kinds.TIPPED) == {key for key, _ in kinds.TIPPING}
    assert [key for key, yes in kinds.TIPPED.items() if yes] == ["sound", "flat"]
