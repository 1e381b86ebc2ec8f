"""Treatments, heat and mixes asked from a notebook."""

from signatures import agree

from pentools import dilution, flush_mix, heat_window, shellac_cut, treatment_limits
from pentools.answers.asking import answer_to


def test_signatures_are_those_of_the_sums():
    assert agree(treatment_limits, "treatment")
    assert agree(heat_window, "heat")
    assert agree(flush_mix, "mix")
    assert agree(dilution, "dilute")
    assert agree(shellac_cut, "shellac")


def test_they_answer_as_the_command_line_does():
    assert treatment_limits("casein", "flush mix soak").data == answer_to("treatment", {"material": "casein", "treatment": "flush mix soak"}).data  # fmt: skip
    assert heat_window("celluloid", "shellac", passes=[48, 55]).data == answer_to("heat", {"body": "celluloid", "sealant": "shellac", "passes": "48 °C; 55 °C"}).data  # fmt: skip
    assert flush_mix(ammonia=7, parts_water=9, beside=["brass", "casein"]).data == answer_to("mix", {"ammonia": "7 %", "parts_water": "9", "beside": "brass; casein"}).data  # fmt: skip
    assert dilution(liquid="alcohol", strong=91, wanted=70).data == answer_to("dilute", {"liquid": "alcohol", "strong": "91 %", "wanted": "70 %"}).data  # fmt: skip
    assert shellac_cut(cut=3, thin_to=1).data == answer_to("shellac", {"cut": "3", "thin_to": "1"}).data
