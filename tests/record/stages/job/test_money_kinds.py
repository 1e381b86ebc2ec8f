"""What is asked of money keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.job import money_kinds
from pentools.record.stages.job.agree import AGREE
from pentools.record.stages.job.works import FORMS_AT_ONCE

KEPT = {
    "agree/money received": "amount received_on:d how what_for:c",
    "agree/bill": "postage work_price taken_off why_off words",
    "agree/invoice": (
        "number place:i given_on:d lines:l before_tax tax tax_words total deposit replaces_number why remarks:l"
    ),
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "agree/money received": "amount! received_on!",
    "agree/bill*": "",
    "agree/invoice": "number! place!:1-1e+06 given_on! total!",
}


def test_names_on_disk_stay():
    assert on_disk(money_kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(money_kinds) == ASKED


def test_they_stand_under_more():
    keys = {kind.key for kind in (money_kinds.RECEIVED, money_kinds.BILL, money_kinds.INVOICE)}
    assert keys <= {kind.key for kind in AGREE.kinds}
    assert not keys & set(FORMS_AT_ONCE["agree"])
