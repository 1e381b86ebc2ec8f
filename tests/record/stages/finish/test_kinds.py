"""What the finish asks keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.finish import kinds

KEPT = {
    "finish/zone": "part:c zone:c start_mm:q end_mm:q masked:b words",
    "finish/consent to polish": "agreed:b agreed_on:d channel agreed_words",
    "finish/masks on": "masks:b with_what photo:p",
    "finish/plan": (
        "material defect finish own:l as_given:b zone:c wall:q spent:q defect_length:q trim:c "
        "cushioned_finish:l scratch_share:n time_limit:q judged_by:c cautious:b worked_length:q "
        "worked_diameter:q"
    ),
    "finish/nib plan": "feel:c aligned:b tipped:b",
    "finish/step": "grade zone:c minutes:q strokes:i wet:c fresh:c direction:c seen cleared:b",
    "finish/measure": "station diameter:q weighed mass:q",
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "finish/zone": "part! zone! start_mm:0-160mm end_mm:0-160mm",
    "finish/consent to polish*": "agreed!",
    "finish/masks on*": "masks!",
    "finish/plan*": "defect! worked_length:1-200mm worked_diameter:2-40mm",
    "finish/nib plan*": "feel!",
    "finish/step": "grade! minutes:0.05-240min strokes:1-5000",
    "finish/measure": "diameter:2-40mm mass:0-200g",
}


def test_names_on_disk_stay():
    assert on_disk(kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(kinds) == ASKED
