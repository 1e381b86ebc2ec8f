"""Nothing is said of fewer than three, whatever is asked for."""

from pentools.calc.books.few import enough


def test_three_is_the_least_and_more_may_be_asked_for():
    assert [enough(n) for n in (0, 2, 3)] == [False, False, True]
    assert not enough(2, 1)
    assert not enough(9, 10)
    assert enough(10, 10)
