"""Abrasives asked from a notebook."""

import pandas as pd
from signatures import agree

from pentools import abrasive_grade, grit_progression
from pentools.answers.asking import answer_to


def test_signatures_are_those_of_the_sums():
    assert agree(grit_progression, "abrasives")
    assert agree(abrasive_grade, "grade")


def test_a_list_of_grades_is_what_a_text_with_semicolons_is():
    asked = grit_progression(material="celluloid", defect="light scratch", own=["P400", "P800", "film 3 um"])
    typed = {"material": "celluloid", "defect": "light scratch", "own": "P400; P800; film 3 um"}
    assert asked.data == answer_to("abrasives", typed).data


def test_many_grades_give_a_frame():
    frame = abrasive_grade(pd.Series(["P400", "P800"]))
    assert frame["sentence"].tolist() == [abrasive_grade("P400").sentence, abrasive_grade("P800").sentence]
