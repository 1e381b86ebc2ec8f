"""The slip for the box: what went in and out, by the owner's fields, and what holds the joints now."""

from pentools.writeup.papers.parts_slip import parts_slip


def rows(job):
    return {row.label: row for row in parts_slip(job).rows}


def test_nothing_entered_is_said(new_job):
    assert rows(new_job())["Parts"].lines == ("Nothing was entered as put in or taken out.",)


def test_each_part_stands_where_it_went_with_its_lot_and_whether_it_can_be_undone(new_job):
    job = new_job()
    job.add("work log", "material", {"what": "latex sac, 7.1 mm", "way": "added", "part": "seals", "reversible": "yes", "lot": "bag 7", "cost": "2.85 EUR"})  # fmt: skip
    job.add("work log", "material", {"what": "old sac, crumbs", "way": "removed", "part": "seals"})
    job.add("work log", "material", {"what": "bent bar", "way": "returned", "part": "filler"})
    found = rows(job)
    assert found["Put in"].grid.head == ("What", "Where", "Source and lot", "Can it be undone?")
    assert found["Put in"].grid.rows == (("Latex sac, 7.1 mm", "seals and sac", "bag 7", "yes"),)
    assert found["Taken out"].grid.rows == (
        ("Old sac, crumbs", "seals and sac", "taken out"),
        ("Bent bar", "filling mechanism", "taken out and given back"),
    )
    assert "2.85" not in str(parts_slip(job))  # a slip in a box names no price


def test_what_was_not_entered_is_not_claimed(new_job):
    job = new_job()
    job.add("work log", "material", {"what": "a shim", "way": "added"})
    assert rows(job)["Put in"].grid.rows == (("A shim", "not entered"),)
    job.add("work log", "material", {"what": "glue", "way": "added", "reversible": "no"})
    assert rows(job)["Put in"].grid.rows[1] == ("Glue", "no")


def test_of_each_joint_the_newest_sealant_is_told(new_job):
    job = new_job()
    job.add("seal", "sealant", {"sealant": "grease", "place": "section"})
    job.add("seal", "sealant", {"sealant": "none", "place": "head"})
    job.add("seal", "sealant", {"sealant": "shellac", "place": "sac", "reversible": "yes"})
    job.add("seal", "sealant", {"sealant": "rosin", "place": "section", "reversible": "no"})
    assert rows(job)["What holds the joints"].lines == (
        "Section joint: rosin-based thread sealant. It cannot be undone.",
        "Sac on its nipple: shellac. It can be undone.",
    )


def test_parts_mended_stand_on_it_with_lot_and_whether_that_can_be_undone(new_job):
    job = new_job()
    job.add("seal", "sealant", {"sealant": "silicone", "place": "diaphragm", "lot": "tube 3"})
    job.add("repairs", "repair", {"part": "clip", "method": "clip-spring", "lot": "wire 4"})
    job.add("repairs", "repair", {"part": "cap", "method": "cap-lip-leave"})
    job.add("repairs", "repair", {"part": "cap", "method": "cap-lip-weld"})
    assert rows(job)["Mended"].lines == (
        "Clip, spring: spring shimmed or made anew (lot: wire 4). It can be undone in part.",
        "Cap, lip: solvent weld. It cannot be undone.",
    )
    assert rows(job)["What holds the joints"].lines == ("Diaphragm on its seat: silicone adhesive (lot: tube 3).",)
