"""The pen of a job takes its proportions and its faults from the record, and bad dimensions never stop the drawing."""

import xml.etree.ElementTree as ET

import pytest

from pentools.figures.pen_from_record import pen_drawing, pen_shape
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "one")


def arrive(job, system, **lengths):
    job.add("intake", "arrival", {"pen": "a pen", "system": system, **lengths})


def fault(job, part, severity, seen):
    job.add("condition", "part", {"part": part, "severity": severity, "seen": seen})


def test_no_system_no_drawing(job):
    assert pen_shape(job) is None
    assert pen_drawing(job) is None


def test_lengths_come_from_intake_and_dimensions(job):
    arrive(job, "piston", barrel_mm="64.3 mm", barrel_outside_mm="12.7 mm")
    job.add("fill test", "dimensions", {"bore": "9.00 mm", "stroke": "28.3 mm"})
    shape = pen_shape(job)
    assert (shape.barrel_length_mm, shape.barrel_diameter_mm) == (64.3, 12.7)
    assert (shape.bore_mm, shape.stroke_mm) == (9.0, 28.3)
    assert shape.cap_length_mm is None
    drawing = pen_drawing(job)
    assert "12.70" in drawing.alt
    ET.fromstring(drawing.svg)


def test_a_contradiction_is_left_out(job):
    arrive(job, "piston", barrel_outside_mm="8.0 mm")
    job.add("fill test", "dimensions", {"bore": "9.00 mm", "stroke": "28.3 mm"})
    shape = pen_shape(job)
    assert shape.bore_mm is None or shape.barrel_diameter_mm is None
    assert shape.stroke_mm == 28.3
    assert pen_drawing(job) is not None


def test_faults_are_marked_and_sound_parts_are_not(job):
    arrive(job, "piston")
    fault(job, "seals", "4", "The cork is split.")
    fault(job, "feed", "2", "Clogged with crust.")
    fault(job, "section", "0", "Sound and clean.")
    alt = pen_drawing(job).alt
    assert "head seal: The cork is split." in alt
    assert "feed: Clogged with crust." in alt
    assert "Sound and clean." not in alt
    assert "The cork" not in pen_drawing(job, marks=()).alt
    assert "The cork" not in pen_drawing(job, highlight=("filler",)).alt


@pytest.mark.parametrize(
    ("system", "seen", "part"),
    [
        ("lever-sac", "The lever moves; the pressure bar is rusted.", "pressure bar"),
        ("diaphragm-pump", "The plunger comes back; the breather tube is broken.", "breather tube"),
        ("lever-sac", "It moves and meets nothing.", "lever"),
    ],
)
def test_the_mechanism_is_marked_at_the_part_that_the_words_name(job, system, seen, part):
    arrive(job, system)
    fault(job, "filler", "3", seen)
    assert f"{part}: {seen}" in pen_drawing(job).alt


def test_a_part_the_pen_has_not_is_passed_over(job):
    arrive(job, "capillary")
    fault(job, "seals", "3", "There is none.")
    fault(job, "inner-cap", "1", "A ring of ink.")
    assert pen_drawing(job, highlight=("no such part",)) is not None
    assert pen_drawing(job) is not None


def test_the_height_the_liquid_is_lifted_is_no_head_and_what_stands_in_the_barrel_no_nipple(job):
    arrive(job, "plunger-vacuum")
    job.add("fill test", "dimensions", {"bore": "8.50 mm", "rod": "2.60 mm", "head": "20 mm", "nipple": "6.0 mm"})
    shape = pen_shape(job)
    assert (shape.rod_mm, shape.head_diameter_mm, shape.nipple_mm) == (2.6, None, None)


def test_lengths_of_a_filler_are_those_of_its_own_parts(job):
    arrive(job, "lever-sac", end_mm="12.0 mm", nib_mm="19.0 mm")
    job.add("fill test", "dimensions", {"outside": "6.80 mm", "wall": "0.5 mm", "length": "44 mm"})
    shape = pen_shape(job)
    assert (shape.sac_outside_mm, shape.sac_wall_mm, shape.sac_length_mm) == (6.8, 0.5, 44.0)
    assert (shape.nib_length_mm, shape.end_length_mm) == (19.0, 12.0)


def test_the_title_says_how_much_was_noted_and_where_it_is_gravest(job):
    arrive(job, "piston")
    assert pen_drawing(job).title == "The parts of a piston filler, in section."
    fault(job, "clip", "1", "tarnished")
    assert pen_drawing(job).title == "1 fault was noted; the gravest is at the clip: slight."
    fault(job, "seals", "4", "shrunken")
    fault(job, "nib", "2", "bent")
    fault(job, "cap", "0", "sound")
    assert pen_drawing(job).title == "3 faults were noted; the gravest is at the head seal: lost."
    assert pen_drawing(job, title="Mine").title == "Mine"
