"""What tells the bench what to do stays at the bench; what is said of the pen stays whole."""

import ast
from importlib import resources

import pytest

from pentools.calc.base.findings import Finding
from pentools.writeup.blocks import Paragraph
from pentools.writeup.orders import told, without_orders


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("It lost 6 mg a day. A smaller one cannot be told.", "It lost 6 mg a day. A smaller one cannot be told."),
        ("Something broke or changed: the lip. Stop and tell the owner.", "Something broke or changed: the lip."),
        ("4 heatings, and not free: stop here. Leave it, try another day.", "4 heatings, and not free."),
        ("Whether it is short cannot be told. Next test: fill it again.", "Whether it is short cannot be told."),
        ("The ink is known only roughly. To know it, weigh one syringe.", "The ink is known only roughly."),
        ("Dip 3 still added 0.02 mL: dip and weigh again.", "Dip 3 still added 0.02 mL."),
        ("Trim is plated and stays masked.", "Trim is plated and stays masked."),
        ("Was the pen weighed with other parts?", ""),
        ("Stop, let it cool.", ""),
    ],
)
def test_orders_go_and_statements_stay(text, left):
    assert without_orders(text) == left


def test_no_word_of_the_kit_is_left_with_an_order_that_opens_a_sentence():
    """Every template of the words, its values as a figure: what is left begins no sentence with an order."""
    orders = ("Stop", "Weigh ", "Measure ", "Look ", "Take ", "Try ", "Leave ", "Next test", "Say ", "Never ")
    for file in resources.files("pentools.words").iterdir():
        if not file.name.endswith(".py") or file.name == "__init__.py":
            continue
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and len(node.value) > 30:
                left = without_orders(node.value)
                assert not any(f". {order}" in left or left.startswith(order) for order in orders), (file.name, left)


def test_findings_become_one_paragraph_and_orders_alone_nothing():
    heat = Finding("stop", "treatment.over-limit", heatings="2", limit=70.0)
    assert told([heat, heat]) == [Paragraph("Heating 2 went above the limit of 70 °C.")]
    assert told([Finding("note", "nib.stop-early")]) == []
