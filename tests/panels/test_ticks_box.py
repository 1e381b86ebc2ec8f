"""Several choices in one box: what is ticked is the text, and the text is what is ticked."""

from pentools.panels.ticks_box import TicksBox

CHOICES = (("heat", "heat"), ("soak", "soaking"), ("polish", "polishing"))


def labels(box):
    return [part.description for part in box._row.children]


def test_ticks_are_the_text_and_back():
    box = TicksBox(CHOICES, description="Yes to")
    box.ticks["polish"].value = box.ticks["heat"].value = True
    assert box.value == "heat; polish"
    box.value = "soak"
    assert [key for key, tick in box.ticks.items() if tick.value] == ["soak"]
    box.value = ""
    assert not any(tick.value for tick in box.ticks.values())


def test_all_of_these_takes_what_is_offered_and_no_more():
    box = TicksBox(CHOICES, description="Yes to")
    box.offer(("heat", "soak"))
    assert labels(box) == ["heat", "soaking", "all of these"]
    box._every.click()
    assert box.value == "heat; soak"


def test_what_is_ticked_stays_in_sight_whatever_is_offered():
    box = TicksBox(CHOICES, description="Yes to")
    box.value = "polish"
    box.offer(("heat",))
    assert labels(box) == ["heat", "polishing", "all of these"]
    box.value = ""
    assert labels(box) == ["heat"]
