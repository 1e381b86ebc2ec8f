"""What is asked as a pen comes in keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.job import intake_kinds

KEPT = {
    "intake/owner": "owner contact address may_decide:b declared_value value_basis private_note",
    "intake/arrival": (
        "pen system:c material arrived_on:d pieces:l mass_g:q capped_mm:q cap_mm:q cap_outside_mm:q "
        "barrel_mm:q barrel_outside_mm:q section_mm:q section_outside_mm:q nib_mm:q end_mm:q"
    ),
    "intake/request": "asked work:c meant_for:c expectations must_not price_limit promised_by:d",
    "intake/consent": "publish:b pictures:b engraving:b consent_on:d channel",
    "intake/shown all the same": "word place around reason",
    "condition/part": "part:c seen means severity:c earlier_repair:b photo:p",
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "intake/owner*": "owner!",
    "intake/arrival*": (
        "pen! mass_g:0-200g capped_mm:60-220mm cap_mm:20-120mm cap_outside_mm:6-35mm barrel_mm:20-160mm "
        "barrel_outside_mm:5-30mm section_mm:5-50mm section_outside_mm:4-25mm nib_mm:3-45mm end_mm:2-60mm"
    ),
    "intake/request*": "asked!",
    "intake/consent*": "publish!",
    "intake/shown all the same": "word! reason!",
    "condition/part": "part! seen! severity!",
}


def test_names_on_disk_stay():
    assert on_disk(intake_kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(intake_kinds) == ASKED
