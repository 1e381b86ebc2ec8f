"""What was measured of each seal is handed on whole, and what would fit there."""

import math

import pytest
from record.stages.seal.pens import HEAD, STOCK, WASHER, with_stock

from pentools.errors import InputError
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.seal.measure import (
    bore_mm,
    candidates,
    gland_of,
    measured,
    odd_readings,
    places_in_use,
    work_out,
)
from pentools.record.stages.seal.sealing import SEAL, dry_fit_passed


def test_places_are_measured_by_themselves_and_the_newest_counts(job):
    job.add("seal", "measure", {"place": "head", **HEAD})
    job.add("seal", "measure", WASHER)
    job.add("seal", "measure", {**WASHER, "rod": "2.50 mm"})
    assert measured(job, "washer").rod.value == 2.5
    assert measured(job, "head").groove.value == 5.3
    assert measured(job, "packing").rod is None
    assert candidates(job, "packing") is None
    assert work_out(job, "head") is None


def test_six_readings_make_mean_and_ovality_and_the_bench_its_calliper(job):
    job.add("seal", "measure", {"place": "head", **HEAD})
    gland = gland_of(job, "head")
    # worked by hand: (8.30 + 8.32 + 8.29 + 8.31 + 8.33 + 8.30)/6, 8.33 - 8.29, 0.02 mm times the root of three
    assert gland.outer_mm == pytest.approx(8.3083, abs=1e-4)
    assert gland.ovality_mm == pytest.approx(0.04)
    assert gland.half_width_mm == pytest.approx(0.03464, abs=1e-5)


def test_candidates_come_from_both_tables_and_the_drawer(job):
    job.add("seal", "measure", {"place": "head", **HEAD})
    names = {c.designation for c in candidates(job, "head").candidates}
    assert {"009", "5.28x1.78"} <= names
    assert not [name for name in names if name.startswith("own ")]
    own = [c for c in candidates(with_stock(job), "head").candidates if c.designation.startswith("own ")]
    assert len(own) == len(STOCK)
    assert all(c.fit.ring.measured for c in own)


def test_a_gland_that_contradicts_itself_is_said_and_stays_in_the_way_of_nothing(job):
    job.add("seal", "measure", {"place": "head", "bore": "5.0 mm", "groove": "5.3 mm"})
    with pytest.raises(InputError, match="groove diameter"):
        candidates(job, "head")
    assert [f.topic for f in SEAL.checks(job)] == ["measure"]
    job.add("seal", "trial", {"place": "head", "what": "a ring", "section": "1.7 mm", "dry": "yes", "happened": "pulls back"})  # fmt: skip
    assert dry_fit_passed(job) is True


def test_every_reading_of_a_head_is_handed_on(job):
    job.add(
        "seal",
        "measure",
        {"place": "head", **HEAD, "groove": "5.30 ± 0.02 mm", "bore_deep": "8.31 ± 0.05 mm", "width": "2.40 ± 0.1 mm"},
    )
    gland = gland_of(job, "head")
    assert (gland.kind, gland.inner_mm, gland.width_mm, gland.guide_mm) == ("piston", 5.3, 2.4, 8.1)
    assert gland.inner_half_mm == pytest.approx(0.02 * math.sqrt(3))
    assert gland.outer_half_mm == pytest.approx(0.05 * math.sqrt(3))
    assert gland.width_half_mm == pytest.approx(0.1 * math.sqrt(3))
    assert gland.guide_half_mm == gland.half_width_mm
    assert bore_mm(measured(job, "head")) == (8.30, 8.32, 8.29, 8.31)


def test_every_reading_of_a_packing_is_handed_on(job):
    job.add(
        "seal",
        "measure",
        {
            "place": "packing",
            "rod": "2.40 mm",
            "housing": "5.40 mm; 5.44 mm",
            "guide": "2.60 mm",
            "duty": "low-friction",
        },
    )
    gland = gland_of(job, "packing")
    assert (gland.kind, gland.inner_mm, gland.outer_mm, gland.guide_mm) == ("packing", 2.4, pytest.approx(5.42), 2.6)
    assert gland.ovality_mm == pytest.approx(0.04)
    assert gland.width_mm is None
    assert candidates(job, "packing").duty.key == "low-friction"
    assert gland_of(job, "washer") is None
    assert gland_of(job, "head") is None


def test_hand_turned_is_taken_where_no_duty_was_chosen(job):
    job.add("seal", "measure", {"place": "head", **HEAD})
    assert candidates(job, "head").duty.key == "hand-turned"


def test_an_odd_reading_is_named_among_the_findings(job):
    job.add("seal", "measure", {"place": "head", **HEAD, "bore_deep": "8.31 mm; 8.75 mm; 8.30 mm"})
    (odd,) = odd_readings(job, "head")
    assert "Reading 5 of 6, 8.75 mm" in odd.text
    assert any("Seal, O-ring on the head: Reading 5 of 6" in f.text for f in SEAL.checks(job))
    assert odd_readings(job, "washer") == ()


def test_places_in_the_order_they_were_first_named(job):
    job.add("seal", "sealant", {"sealant": "none", "place": "section"})
    job.add(
        "seal", "trial", {"place": "sac", "what": "16", "outside": "6.35 mm", "dry": "yes", "happened": "pulls back"}
    )
    job.add("seal", "measure", WASHER)
    assert places_in_use(job) == ("washer", "sac", "section")


def test_a_washer_is_worked_out_of_its_own_readings(job):
    assert work_out(job, "washer") is None
    job.add("seal", "measure", {**WASHER, "washer": "cup", "head": "8.25 mm"})
    answer = work_out(job, "washer")
    assert answer.data["kind"] == "cup"
    assert answer.data["outside_mm"] == 8.6
    assert "overhang" not in {f.topic for f in answer.findings}
    assert answer.data["hole_mm"] == pytest.approx(2.26)
    job.add("seal", "measure", {**WASHER, "head": "5.0 mm"})
    assert work_out(job, "washer").data["kind"] == "flat"
    assert "overhang" in {f.topic for f in work_out(job, "washer").findings}


def test_a_cork_sits_on_its_groove_and_a_packing_in_its_housing(job):
    job.add(
        "seal", "measure", {"place": "cork", "bore": "9.0 mm", "groove": "5.0 mm", "head": "8.9 mm", "length": "6 mm"}
    )
    cork = work_out(job, "cork").data
    assert (cork["kind"], cork["hole_mm"], cork["thickness_mm"]) == ("cork", 4.7, 6)
    job.add(
        "seal",
        "measure",
        {"place": "stack", "rod": "3 mm", "housing": "6 mm", "length": "5 mm", "thickness": "1 mm", "stack": "felt"},
    )
    stack = work_out(job, "stack").data
    assert (stack["kind"], stack["count"], stack["hole_mm"]) == ("felt", 6, 3)
    job.add("seal", "measure", {"place": "stack", "rod": "3 mm", "housing": "6 mm", "length": "5 mm"})
    assert work_out(job, "stack").data["kind"] == "stacked"
    job.add("seal", "measure", {"place": "stack", "rod": "3 mm", "housing": "6 mm"})
    assert work_out(job, "stack") is None


def test_a_sac_is_worked_out_of_the_narrowest_place_and_its_own_material(job):
    texts = {
        "place": "sac", "bore": "8.20 mm; 8.00 mm", "bore_deep": "8.1 mm", "nipple": "6.60 mm", "nipple_length": "6 mm",
        "depth": "62 mm", "bar": "0.5 mm", "cleaned": "yes",
    }  # fmt: skip
    job.add("seal", "measure", {**texts, "material": "silicone", "wall": "0.5 mm"})
    data = work_out(job, "sac").data
    assert (data["material"], data["number"]) == ("silicone", 16)
    assert data["air_mm"] == pytest.approx((8.0 - 0.5 - 6.35) / 2, abs=0.001)
    assert data["nipple_stretch"] == pytest.approx(6.6 / (6.35 - 1.0) - 1, abs=0.001)
    assert data["cut_length_mm"] == pytest.approx(57.5 + 6)
    assert "old-rubber" not in {f["topic"] for f in data["findings"]}
    job.add(
        "seal",
        "measure",
        {**texts, "material": "pleated", "sac": "7.0 mm", "mouth": "6.2 mm", "bore_before": "7.5 mm", "cleaned": "yes"},
    )
    pleated = work_out(job, "sac").data
    assert (pleated["material"], pleated["outside_mm"], pleated["length_mm"]) == ("pleated", 7.0, None)
    assert pleated["nipple_stretch"] == pytest.approx(6.6 / 6.2 - 1)
    assert "old-rubber" in {f["topic"] for f in pleated["findings"]}
    job.add("seal", "measure", texts)
    assert work_out(job, "sac").data["material"] == "latex"


def test_a_pneumatic_pens_sac_reaches_its_guards_end(job):
    job.add("seal", "measure", {"place": "sac", "bore": "8.00 mm", "depth": "62 mm"})
    assert work_out(job, "sac").data["length_high_mm"] == 59
    job.add("intake", "arrival", {"pen": "x", "system": "pneumatic-down-stroke"})
    assert work_out(job, "sac").data["length_high_mm"] == 62


def test_a_bench_without_a_calliper_of_its_own_takes_three_hundredths(job, monkeypatch):
    job.add("seal", "measure", {"place": "head", **HEAD})
    monkeypatch.setattr(type(job.bench), "text", lambda self, *names: "")
    job.add("seal", "measure", {"place": "head", **HEAD})
    assert gland_of(job, "head").half_width_mm == 0.03


def test_sacs_and_sheet_of_the_drawer_reach_the_answer_for_a_pen(bench):
    (bench.folder / "bench.toml").write_text('[stock]\nsacs = ["latex 17", "odd"]\nwashers = ["sheet 0.64 mm"]\n')
    job = create_job(open_bench_folder(bench.folder), "with-a-drawer")
    job.add("seal", "measure", {"place": "sac", "bore": "8.00 mm", "nipple": "6.20 mm"})
    assert work_out(job, "sac").data["in_drawer"] is True
    job.add("seal", "measure", {"place": "washer", "bore": "8.30 mm", "rod": "1.60 mm"})
    assert work_out(job, "washer").data["in_drawer"] == ["sheet 0.64 mm"]


def test_the_benchs_own_rings_count_as_at_hand(bench):
    (bench.folder / "bench.toml").write_text('[stock]\nrings = ["1.78x5.28"]\n')
    job = create_job(open_bench_folder(bench.folder), "with-a-ring")
    job.add("seal", "measure", {"place": "head", **HEAD})
    assert [c.designation for c in candidates(job, "head").candidates if c.fit.ring.at_hand] == ["own 5.28x1.78"]
