"""The bench's own usual share stands beside the table's from ten pens on, and never in its place."""

from pentools.books.learning.usual_here import ENOUGH_PENS, usual_here
from pentools.calc.weighing.diagnosis import UsualShare

TABLE = UsualShare(0.45, 0.6, 0.75, "judged")


def test_under_ten_the_table_stands_alone():
    values, words = usual_here([0.6] * (ENOUGH_PENS - 1), TABLE)
    assert values["usual_by_table"] == {"low": 0.45, "typical": 0.6, "high": 0.75, "certainty": "judged"}
    assert values["usual_here"] == "10 pens are wanted, there are 9"
    assert words == "usual by the table 45\u202f% to 75\u202f% (judged)"


def test_from_ten_on_it_is_offered_with_what_it_is_to_hold():
    values, words = usual_here([0.5 + 0.01 * n for n in range(11)], TABLE)
    assert values["usual_here"]["low"] == 0.5
    assert values["usual_here"]["high"] == 0.6
    assert values["usual_here"]["holds_share"] == 0.8333
    assert "no verdict goes by it" in values["usual_here"]["stands"]
    assert words.endswith("on this bench 50\u202f% to 60\u202f%, to hold 83\u202f% of further pens")
    assert usual_here([0.5], None)[1] == "no usual share in the table"
