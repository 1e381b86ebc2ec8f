"""What is meant for the bench alone is taken out of a section; what is said of the pen stays."""

from pentools.calc.base.findings import Finding
from pentools.writeup.blocks import Details, Findings, Notice, Paragraph, Section, Table
from pentools.writeup.record.reader import UNSETTLED, for_reader

HOT = Finding("stop", "treatment.over-limit", heatings="2", limit=70.0)
TABLE = Table("Limits", ("Part",), (("cap",),))


def test_findings_become_statements_and_cautions_go():
    blocks = (Findings((HOT,)), Notice("Mind the flame.", "Caution"), Notice("It was released.", "Hold released"))
    assert for_reader(Section("open", "Opening", blocks)).blocks == (
        Paragraph("Heating 2 went above the limit of 70 °C."),
        Notice("It was released.", "Hold released"),
    )


def test_what_does_not_add_up_is_said_without_what_to_do_about_it():
    [notice] = for_reader(Section("a", "A", (Notice("masses must be above 0. Weigh again.", "To be settled"),))).blocks
    assert notice == Notice(UNSETTLED, "To be settled")


def test_a_lone_table_loses_the_caption_that_repeats_the_heading_and_empty_folds_go():
    made = for_reader(Section("a", "A", (Details("What it can take", (TABLE,)), Details("Cautions", (Notice("x", "Caution"),)))))  # fmt: skip
    assert made.blocks == (Details("What it can take", (Table("", ("Part",), (("cap",),)),)),)
    assert for_reader(Section("a", "A", (TABLE,))).blocks == (Table("", ("Part",), (("cap",),)),)
    assert for_reader(Section("a", "A", (TABLE, TABLE))).blocks == (TABLE, TABLE)


def test_a_column_that_no_row_fills_goes_and_the_numbers_stay_numbers():
    table = Table("T", ("A", "B", "C"), (("a", "–", "1"), ("b", "", "2")), numeric=(1, 2))
    [made] = for_reader(Section("a", "A", (table,))).blocks
    assert made == Table("", ("A", "C"), (("a", "1"), ("b", "2")), numeric=(1,))
