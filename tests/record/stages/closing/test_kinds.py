"""What is asked as a pen goes together keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools import tables
from pentools.record.stages.closing import kinds

KEPT = {
    "closing/order": "done:cs tested:cs left_out:cs so_before:cs sac_with:c section_with:c sac_length:q tube_reach:q bar_length:q presses:i",
    "closing/step": "step:c outcome:c happened photo:p",
    "closing/rest begun": "test:c",
    "closing/writing": "rested:q wrote:c",
}
ASKED = {
    "closing/order": "sac_length:10-120mm tube_reach:3-120mm bar_length:10-120mm presses:1-60",
    "closing/step": "step! outcome!",
    "closing/rest begun": "test!",
    "closing/writing": "rested!:0-2000h wrote!",
}


def test_names_on_disk_stay():
    assert on_disk(kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(kinds) == ASKED


def test_every_step_of_every_order_can_be_ticked_and_only_the_optional_left_out():
    rows = tables.rows("closing_steps")
    assert {key for key, _ in kinds.STEP_WORDS} == {row["key"] for row in rows}
    left = {key for key, _ in kinds.ROUND.field("left_out").choices}
    assert left == {row["key"] for row in rows if row["only_with"]}
    assert "dry-fit" not in left
    values = {row["value"] for row in rows} - {""}
    assert values <= {field.name for field in kinds.ROUND.fields}
