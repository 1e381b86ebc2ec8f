"""Grades as people type them, and the refusal of what is unclear."""

import pytest

from pentools.calc.finish.reading import meanings_of, read_grade, read_grades
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("P400", "P400"), ("p 400", "P400"), ("FEPA P400", "P400"), ("P-400", "P400"), ("F400", "F400"),
        ("CAMI 320", "CAMI 320"), ("ansi 320", "CAMI 320"), ("cushioned 4321", "cushioned cloth 4321"),
        ("cushioned cloth 2600", "cushioned cloth 2600"), ("cloth 7000", "cushioned cloth 7000"), ("9 um", "film 9 µm"), ("3 micron", "film 3 µm"), ("JIS 1000 electrical", "JIS 1000 electrical"),
        ("JIS #1000 (sedimentation)", "JIS 1000 sedimentation"), ("film 9 um", "film 9 µm"), ("9 µm film", "film 9 µm"),
        ("film 0,3 micron", "film 0.3 µm"), ("paste 1 um", "paste 1 µm"), ("diamond paste 6 um", "paste 6 µm"),
        ("paste tripoli", "paste tripoli"), ("Tripoli", "paste tripoli"), ("mesh 325", "mesh 325"),
    ],
)  # fmt: skip
def test_grades_are_read_as_people_write_them(text, label):
    assert read_grade(text, catalogue()).label == label


def test_every_label_reads_back():
    assert [grade.label for grade in catalogue().grades if read_grade(grade.label, catalogue()) != grade] == []


@pytest.mark.parametrize("text", ["400", "#400", " 400 grit"])
def test_a_bare_number_is_never_accepted(text):
    with pytest.raises(InputError) as caught:
        read_grade(text, catalogue())
    for part in (
        "Which scale",
        "P400 (35 µm)",
        "CAMI 400 (23 µm)",
        "F400 (17.3 µm)",
        "JIS 400 electrical (30 µm)",
        "mesh 400 (38 µm)",
    ):
        assert part in str(caught.value)


def test_a_bare_2500_lists_both_sizes_of_the_cloth_and_no_cami():
    with pytest.raises(
        InputError,
        match=r"cushioned cloth 2500 \(18 µm, finishes like 12 µm\), P2500 \(8.4 µm\), .*Above 600 a number has no CAMI",
    ):
        read_grade("2500", catalogue())
    assert all(g.scale != "CAMI" for g in meanings_of("2500", catalogue()))
    with pytest.raises(InputError) as caught:
        read_grade("600", catalogue())
    assert "no CAMI" not in str(caught.value)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("CAMI 800", "ends at 600"), ("CAMI 1000", "ends at 600"), ("JIS 1000", "two test methods"), ("cloth 20000", "1000 to 15000"),
        ("P450", "P400 or P500"), ("cloth 900", "own figure"), ("fine", "with its scale"), ("cloth 4000 = soft", "its grain, its finish"),
        ("cloth 4000 = 9 um, 8 um", "its grain, its finish"), ("cloth 4000 = 900 um", "0.05 to 200"),
        ("", "with its scale"), ("777", "which scale"), ("CAMI 601", "ends at 600"), ("F9999", "F1500 or F2000"), ("P0", "P12 or P16"), ("film 9000 um", "0.01 to 5000"),
    ],
)  # fmt: skip
def test_refusals_say_why(text, why):
    with pytest.raises(InputError, match=why):
        read_grade(text, catalogue())


def test_runs_and_repeats():
    labels = [g.label for g in read_grades("P400; F230 to F280; P400; F240", catalogue())]
    assert labels == ["P400", "F230", "F240", "F280"]
    assert [g.label for g in read_grades(["P400-P600"], catalogue())] == ["P400", "P500", "P600"]
    assert [g.label for g in read_grades("P600 to P400; JIS 1000 to 1500 electrical; CAMI 320..400", catalogue())] == [
        "P400", "P500", "P600", "JIS 1000 electrical", "JIS 1200 electrical", "JIS 1500 electrical", "CAMI 320", "CAMI 360", "CAMI 400",
    ]  # fmt: skip
    for two in ("P400-F400", "film 9 um to 3 um", "paste 6 um to paste 1 um"):
        with pytest.raises(InputError, match="with its scale"):
            read_grades(two, catalogue())
    with pytest.raises(InputError, match="by itself"):
        read_grades("cushioned cloth 2000 to 8000", catalogue())
    with pytest.raises(InputError, match="at least one"):
        read_grades(" ; ", catalogue())
    with pytest.raises(InputError, match="Which scale"):
        read_grades("P400; 600", catalogue())
