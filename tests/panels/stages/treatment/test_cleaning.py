"""The cleaning panel: no soak unnamed, the soak clock, the mix, drying."""

import asyncio
import datetime as dt

import pytest
from by_name import kind_of

from pentools.panels.stages.treatment import cleaning as clean_panel


@pytest.mark.parametrize(
    ("kind", "texts"),
    [
        ("bath", {"part": "barrel", "bath": "cold water soak", "minutes": "5 min"}),
        ("soak started", {"part": "barrel", "bath": "cold water soak"}),
        ("rinse", {"part": "barrel", "with_what": "a drop of washing-up liquid"}),
    ],
)
def test_no_soak_before_anything_is_named_and_a_release_keeps_its_reason(unnamed, sheet, kind, texts, put, release):
    panel = sheet.panel("clean")
    assert "Hold point on soaking" in panel.holds["soak"].text.value
    said = put(panel, kind, **texts)
    assert "NOT SAVED" in said
    assert "material" in said
    assert unnamed.log(kind_of("clean", kind)) == ()
    release(panel, "soak", "it is glass, as anyone can see")
    panel.forms[kind].button.click()
    assert panel.forms[kind].status.text.startswith("saved ")
    assert unnamed.record.releases("soak")[0].data["reason"].startswith("it is glass")


def test_no_soak_for_a_part_that_is_not_named(job, sheet, put):
    panel = sheet.panel("clean")
    assert panel.holder.layout.display == "none"
    assert "material of the feed is not named" in put(panel, "bath", part="feed", bath="ultrasonic", minutes="2 min")
    assert panel.holder.layout.display == ""
    opening = sheet.panel("open")
    put(opening, "material", part="feed", material="ebonite", sure="yes")
    panel.forms["bath"].button.click()
    assert panel.forms["bath"].status.text.startswith("saved ")


def test_a_bath_the_material_never_takes_is_refused_unless_overruled(job, sheet, type_into, put):
    panel = sheet.panel("clean")
    type_into(panel.forms["bath"], part="barrel", bath="ultrasonic")
    assert "celluloid, ultrasonic: never" in panel.verdicts["bath"].value
    assert "Refused. celluloid, ultrasonic: never, because" in put(panel, "bath", minutes="2 min")
    opening = sheet.panel("open")
    put(opening, "overrule", material="celluloid", treatment="ultrasonic", verdict="limited", reason="new stock, tried on an offcut")  # fmt: skip
    panel.forms["bath"].button.click()
    assert panel.forms["bath"].status.text.startswith("saved ")


def test_the_soak_clock_runs_and_stops(job, sheet, monkeypatch, put):
    panel = sheet.panel("clean")
    assert panel.look.layout.display == "none"
    assert put(panel, "soak started", part="barrel", bath="cold water soak").startswith("saved ")
    assert panel.look.layout.display == ""
    assert "15 min left of 15" in panel.result_text.value
    later = clean_panel.now() + dt.timedelta(minutes=20)
    monkeypatch.setattr(clean_panel, "now", lambda: later)
    panel.look.click()
    assert "5 min over its limit of 15 min. Take it out" in panel.result_text.value
    assert "out of its bath before the next one" in put(panel, "soak started", part="barrel", bath="cold water soak")
    assert put(panel, "soak ended", part="barrel", came_out="brown").startswith("saved ")
    assert "in a bath now" in put(panel, "soak ended", part="barrel")


def test_the_clock_looks_by_itself_while_a_soak_runs(job, sheet, monkeypatch, put):
    monkeypatch.setattr(clean_panel, "TICK_S", 0.01)

    async def at_the_bench():
        panel = sheet.panel("clean")
        assert not panel.ticker.running
        put(panel, "soak started", part="barrel", bath="cold water soak")
        assert panel.ticker.running
        later = clean_panel.now() + dt.timedelta(minutes=13)
        monkeypatch.setattr(clean_panel, "now", lambda: later)
        for _ in range(100):
            await asyncio.sleep(0.01)
            if "2.0 min left of 15" in panel.result_text.value:
                break
        assert "2.0 min left of 15" in panel.result_text.value
        put(panel, "soak ended", part="barrel")
        assert not panel.ticker.running

    asyncio.run(at_the_bench())


def test_the_mix_answers_while_it_is_typed_and_refuses_what_it_must_not_meet(job, sheet, type_into, put):
    panel = sheet.panel("clean")
    assert "Never with bleach" in panel.mix_shown.value
    type_into(panel.forms["flush mix"], ammonia="7 %")
    assert "0.68\u202f% of ammonia by weight" in panel.mix_shown.value
    assert job.log(kind_of("clean", "flush mix")) == ()
    for thing in ("bleach", "casein"):
        assert "Refused" in put(panel, "flush mix", beside=thing)
    assert put(panel, "flush mix", beside="").startswith("saved ")
    assert "ammonia bleach" in panel.cautions.line.value


def test_drying_leads_until_it_is_over(job, sheet, put):
    panel = sheet.panel("clean")
    put(panel, "drying", part="feed", hours="24 h", begun_ago="1 h")
    assert "The feed dries until" in panel.result_text.value
    assert "still wet" in panel.result_table.value
