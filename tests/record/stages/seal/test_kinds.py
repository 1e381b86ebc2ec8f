"""What the seal stage asks keeps its names on disk: a record of years ago is still read."""

from record.on_disk import on_disk

from pentools.record.stages.seal import kinds

KEPT = {
    "seal/measure": (
        "place:c bore:qs bore_deep:qs groove:q width:q head:q rod:q housing:qs guide:q length:q "
        "thickness:q washer:c stack:c nipple:q nipple_length:q depth:q bar:q sac:q wall:q mouth:q rubber:q rubber_length:q fold "
        "tube:q tube_hole:q reach:q lip:q lip_reach:q lip_depth:q was was_outside:q was_length:q material:c cleaned:b "
        "bore_before:q duty:c altered:b"
    ),
    "seal/trial": "place:c what section:q inside:q outside:q lot dry:b happened:c",
    "seal/sealant": "sealant:c place:c reversible:b open_time:q cure:q lot ago:q",
    "seal/test": (
        "test:c pushed:q returned:q spring_back_seen:c volume:q vacuum_start:q vacuum_end:q seconds:q "
        "gauge:q vacuum_seen:c shaft_seen:c press_seen:c mouth_seen:c rested:q overnight_seen:c damp:l capped_seen:c "
        "tissue_seen:c powder_seen:c"
    ),
    "seal/tool": (
        "tool:c purpose inside_made:q outside_made:q length_made:q hole_made:q stuff kept tail:q "
        "shoulder:q bore:q depth:q front:q section:q material clearance:q"
    ),
}


def test_names_on_disk_stay():
    assert on_disk(kinds) == KEPT


# what an entry cannot do without, and between what a reading is taken for a reading; written down, not read from the forms
NEEDED = {
    "measure": {"place"}, "trial": {"place", "what", "dry", "happened"}, "sealant": {"sealant", "place"}, "test": {"test"},
    "tool": {"tool", "purpose"},
}  # fmt: skip
RANGES = {
    "measure": (
        "bore:2-30mm bore_deep:2-30mm groove:0.5-28mm width:0.5-15mm head:1-30mm rod:0.5-15mm housing:2-25mm guide:0.5-20mm "
        "length:1-30mm thickness:0.3-5mm nipple:1.5-14mm nipple_length:1-25mm depth:10-150mm bar:0-3mm sac:2-16mm wall:0.1-2mm "
        "mouth:1-25mm rubber:1-30mm rubber_length:1-80mm tube:0.3-8mm tube_hole:0.3-8mm reach:3-150mm lip:2-25mm "
        "lip_reach:0.5-80mm lip_depth:0.5-80mm was_outside:0.5-30mm was_length:0.3-150mm bore_before:2-30mm"
    ),
    "trial": "section:0.3-8mm inside:0.3-30mm outside:1-40mm",
    "sealant": "open_time:0-600min cure:0-1000h ago:0-20000min",
    "test": (
        "pushed:2-80mm returned:0-80mm volume:0.05-500ml vacuum_start:0.1-101kPa vacuum_end:0-101kPa seconds:1-100000s "
        "gauge:0.001-20kPa rested:0-2000h"
    ),
    "tool": (
        "inside_made:0.1-30mm outside_made:0.5-60mm length_made:1-300mm hole_made:0.5-40mm tail:0-8mm shoulder:0.5-14mm "
        "bore:1-15mm depth:0-60mm front:1-16mm section:3-20mm clearance:0.02-1mm"
    ),
}  # fmt: skip
KINDS = (kinds.MEASURE, kinds.TRIAL, kinds.SEALANT, kinds.TEST, kinds.TOOL)


WAS = ("was", "was_outside", "was_length")


def ranges(fields):
    return " ".join(f"{f.name}:{f.low:g}-{f.high:g}{f.unit}" for f in fields if f.low is not None)


def test_what_is_needed_and_what_is_plausible():
    assert {kind.key: {f.name for f in kind.fields if f.required} for kind in KINDS} == NEEDED
    assert {kind.key: ranges(kind.fields) for kind in KINDS} == RANGES


def test_a_tool_starts_from_no_sum_of_its_own():
    assert {f.name for f in kinds.TOOL.fields if f.default} == set()


def test_what_a_place_asks_and_needs():
    assert kinds.asked_for("packing") == ("rod", "housing", "width", "guide", "duty", "altered", *WAS)
    assert kinds.asked_for("section") == ("altered", *WAS)
    assert kinds.asked_for("lid") == ()
    for place in kinds.PLACES.values():
        assert set(place.needs) <= set(place.asks), place.key
        assert set(place.asks) <= {f.name for f in kinds.MEASURE.fields}, place.key
    assert kinds.place_words("sac") == "sac on its nipple"
    assert kinds.place_words("lid") == "lid"
    assert kinds.place_words(None) == "seal"


def test_every_test_has_its_own_fields():
    names = {f.name for f in kinds.TEST.fields} - {"test"}
    listed = [name for fields in kinds.TEST_FIELDS.values() for name in fields]
    assert sorted(listed) == sorted(names)
    assert set(kinds.TEST_FIELDS) == {key for key, _ in kinds.TEST.field("test").choices}
