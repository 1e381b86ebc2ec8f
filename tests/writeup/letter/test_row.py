"""Texts cut at their sentences, and at no other full stop."""

import pytest

from pentools.writeup.letter.row import sentences, up_to


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("It is 9.2 mm wide. It slid.", ("It is 9.2 mm wide.", "It slid.")),
        ("One line\nand on. Two", ("One line and on.", "Two.")),
        ("By L. Tarn, at no. 7. Then home!", ("By L. Tarn, at no. 7.", "Then home!")),
        ("No stop at the end", ("No stop at the end.",)),
        ("", ()),
    ],
)
def test_sentences(text, found):
    assert sentences(text) == found


def test_whole_sentences_up_to_so_many_words_and_the_first_in_any_case():
    text = "One two three. Four five. Six."
    assert up_to(text, 5) == ("One two three. Four five.", False)
    assert up_to(text, 6) == (text, True)
    assert up_to(text, 1) == ("One two three.", False)
