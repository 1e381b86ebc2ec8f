"""The order of work and care asked from a notebook."""

from signatures import agree

from pentools import care, order
from pentools.answers.asking import answer_to


def test_signatures_are_those_of_the_sums():
    assert agree(order, "order")
    assert agree(care, "care")


def test_they_answer_as_the_command_line_does():
    typed = {"system": "lever-sac", "way": "close", "material": "casein; celluloid", "fitted": "latex sac", "done": "1; 2", "tested": "1"}  # fmt: skip
    asked = order("lever-sac", "close", material=["casein", "celluloid"], fitted=["latex sac"], done=[1, 2], tested=[1])
    assert asked.data == answer_to("order", typed).data
    typed = {"system": "lever-sac", "material": "casein", "nib": "gold nib", "fitted": "latex sac; shellac"}
    asked = care("lever-sac", material="casein", nib="gold nib", fitted=["latex sac", "shellac"])
    assert asked.data == answer_to("care", typed).data


def test_both_draw_half_a_page():
    assert order("piston").figure().title == "Piston filler: how it goes together"
    assert care("piston").figure().title == "Care: Piston filler, a body that is not named"
