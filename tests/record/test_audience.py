"""Who may read what an entry holds: written down once more, so that a flag turned round is noticed."""

from pentools.record.registry import all_stages

BENCH = {
    "intake/owner": "private_note",
    "intake/came with": "lead",
    "release/result": "follow_up_on",
    "release/followed up": "again_on",
    "open/parts tray": "kept",
    "clean/drying": "begun_ago",
    "repairs/repair": "ago",
    "repairs/sent out": "whom",
    "seal/sealant": "ago",
    "seal/tool": "kept",
    "work log/note": "note",
}
OWNER = {
    "intake/owner": "owner contact address may_decide declared_value value_basis",
    "intake/request": "expectations must_not price_limit promised_by",
    "intake/consent": "publish pictures engraving consent_on channel",
    "intake/coming back": "older covered promised_until lots",
    "intake/shown all the same": "word place around reason",
    "identify/mark": "engraved_name",
    "agree/proposal": "permanent_told",
    "agree/estimate": "hours_low hours_likely hours_high parts_cost price_low price_high ceiling",
    "agree/answer": "action agreed answered_on channel by authority terms",
    "agree/yes": "to at_most answered_on channel not_to by authority terms",
    "agree/not applicable": "asked why",
    "agree/money received": "amount received_on how what_for",
    "agree/bill": "postage work_price taken_off why_off words",
    "agree/invoice": "number place given_on lines before_tax tax tax_words total deposit replaces_number why remarks",
    "open/met": "how",
    "open/caution read": "caution",
    "work log/work": "by",
    "work log/timer start": "activity",
    "work log/material": "lot cost",
    "work log/tool": "tool part dimensions made_from photo",
    "work log/wanted": "what part ordered_on expected_by arrived_on",
    "work log/departure": "what why agreed_on channel",
    "repairs/repair": "lot",
    "repairs/sent out": "sent_on price due_on",
    "repairs/back again": "back_on cost",
    "seal/measure": "altered",
    "nib/writing test": "scan",
    "nib/lines": "scan",
    "seal/trial": "lot",
    "seal/sealant": "lot",
    "finish/consent to polish": "agreed agreed_on channel agreed_words",
    "finish/masks on": "photo",
    "pictures/picture": "public",
    "posting/parcel": "carried sent_on packed empty insured basis weighs number border",
    "posting/arrived": "arrived_on state said",
    "release/result": "promise_until price",
    "release/followed up": "asked_on said",
}


def flagged(audience):
    return {
        f"{stage.key}/{kind.key}/{field.name}"
        for stage in all_stages()
        for kind in stage.kinds
        for field in kind.fields
        if field.audience == audience
    }


def listed(names):
    return {f"{place}/{name}" for place, fields in names.items() for name in fields.split()}


def test_what_is_for_the_bench_alone():
    assert flagged("bench") == listed(BENCH)


def test_what_is_for_the_owner_but_not_for_everybody():
    assert flagged("owner") == listed(OWNER)


def test_each_reader_sees_what_those_further_out_see():
    for stage in all_stages():
        for kind in stage.kinds:
            everybody, owner, bench = (set(kind.fields_for(who)) for who in ("everybody", "owner", "bench"))
            assert everybody <= owner <= bench == set(kind.fields)
