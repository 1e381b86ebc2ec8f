"""What the seal stage asks keeps its names on disk: a record of years ago is still read."""

from record.on_disk import on_disk

from pentools.record.stages.seal import kinds

KEPT = {
    "seal/measure": (
        "place:c bore:qs bore_deep:qs groove:q width:q head:q rod:q housing:qs guide:q length:q "
        "thickness:q washer:c stack:c nipple:q nipple_length:q depth:q bar:q sac:q wall:q mouth:q material:c cleaned:b "
        "bore_before:q duty:c altered:b"
    ),
    "seal/trial": "place:c what section:q inside:q outside:q dry:b happened:c",
    "seal/sealant": "sealant:c place:c reversible:b open_time:q cure:q ago:q",
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
