"""What is asked at the agreement keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.job import agree_kinds

KEPT = {
    "agree/survey": "conclusion grade:c methods not_examined",
    "agree/proposal": (
        "part:c mendable:c proposed materials alternative leave_it risk reversible:b permanent permanent_told:b"
    ),
    "agree/estimate": "hours_low:q hours_likely:q hours_high:q parts_cost price_low price_high ceiling",
    "agree/yes": "to:cs at_most answered_on:d channel not_to:cs by authority:b terms",
    "agree/answer": "action:c agreed:b answered_on:d channel by authority:b terms",
    "agree/not applicable": "asked:c why",
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "agree/survey*": "conclusion!",
    "agree/proposal": "part! proposed!",
    "agree/estimate*": "hours_low:0-500h hours_likely:0-500h hours_high:0-500h",
    "agree/yes": "to! answered_on! channel!",
    "agree/answer": "action! agreed! answered_on! channel!",
    "agree/not applicable": "asked! why!",
}


def test_names_on_disk_stay():
    assert on_disk(agree_kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(agree_kinds) == ASKED
