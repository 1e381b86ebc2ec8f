"""The HTML that panels, pages and answers share: escaped texts, levels in a word, columns of numbers at their decimal sign."""

import xml.etree.ElementTree as ET
from types import SimpleNamespace

import jinja2
import pytest

from pentools.markup import aligned, environment, findings_html, sentence_html, shown_alone, table_html

FIGURE, POINT = "\u2007", "\u2008"  # Unicode 15, ch. 6.2: as wide as a digit, and as a full stop


def test_a_sentence_is_escaped_and_nothing_said_is_no_paragraph():
    assert sentence_html("1 < 2 & “3”") == '<p class="pt-sentence">1 &lt; 2 &amp; “3”</p>'
    assert sentence_html("") == ""


def test_findings_begin_with_their_level_in_a_word():
    """WCAG 2.2, success criterion 1.4.1: colour is not the only sign."""
    found = [SimpleNamespace(level=level, text=f"<{level}>") for level in ("stop", "warning", "note", "ok")]
    items = ET.fromstring(findings_html(found)).findall("li")
    assert [item.get("class") for item in items] == ["stop", "warning", "note", "ok"]
    words = [item.find("span").find("span").tail.strip() for item in items]
    assert len(set(words)) == 4
    assert all(word.endswith(":") and len(word) > 2 for word in words)
    assert [item.find("span").tail.strip() for item in items] == ["<stop>", "<warning>", "<note>", "<ok>"]
    assert {item.find("span").find("span").get("aria-hidden") for item in items} == {"true"}
    assert findings_html([]) == ""


def test_a_table_has_scoped_headings_and_numbers_stand_under_each_other():
    html = table_html("Sizes & cuts", ("grade", "µm"), (("P<400>", "35"), ("P600", "25.8")), numeric=(1,))
    table = ET.fromstring(html)
    assert (table.get("class"), table.find("caption").text) == ("data columns-2", "Sizes & cuts")
    assert [(th.get("scope"), th.text, th.get("class")) for th in table.iter("th")] == [
        ("col", "grade", None),
        ("col", "µm", "num"),
    ]
    cells = [
        [(td.get("data-label"), td.get("class"), td.text) for td in row.findall("td")] for row in table.find("tbody")
    ]
    assert cells == [
        [("grade", None, "P<400>"), ("µm", "num", f"35{FIGURE}{POINT}")],
        [("grade", None, "P600"), ("µm", "num", "25.8")],
    ]
    assert ET.fromstring(table_html("", ("grade",), (("P400",),))).find("caption") is None
    assert 'class="num"' not in table_html("", ("grade",), (("P400",),))
    assert table_html("Sizes", ("grade",), ()) == ""


@pytest.mark.parametrize(
    ("texts", "shown"),
    [
        (("35", "25.8", "1.25"), (f"35{FIGURE * 2}{POINT}", f"25.8{FIGURE}", "1.25")),
        (("1,5 mm", "12,25 mm"), (f"1,5 mm{FIGURE}", "12,25 mm")),
        (("-1", "2"), ("-1", "2")),  # whole numbers need no room for a point
        (("1.5", "", "20"), ("1.5", "", f"20{FIGURE}{POINT}")),  # what is empty stays empty
        (("1.5", "none", "2"), ("1.5", "none", f"2{FIGURE}{POINT}")),
        (("1.5 mm", "2 µm"), ("1.5 mm", "2 µm")),  # of unlike units, no column of numbers
        (("P400", "none"), ("P400", "none")),
    ],
)  # fmt: skip
def test_decimal_signs_are_aligned(texts, shown):
    assert tuple(aligned([("x", text) for text in texts], 1)) == shown


def test_templates_are_strict_escape_and_know_the_blocks_and_their_own():
    made = environment({"own": "{{ text }}"}.get, finalize=lambda value: "none" if value is None else value)
    assert made.get_template("own").render(text="<b>") == "&lt;b&gt;"
    assert made.get_template("own").render(text=None) == "none"
    with pytest.raises(jinja2.UndefinedError):
        made.get_template("own").render()
    assert (
        made.from_string("a\n  {% if true %}\nb\n  {% endif %}\nc").render() == "a\nb\nc"
    )  # no empty lines where a block stood
    assert made.get_template("blocks.html.j2").module.findings([]) == ""
    for name in ("other", "own"):
        with pytest.raises(jinja2.TemplateNotFound):
            environment().get_template(name)


def test_alone_it_brings_its_style():
    html = shown_alone("<p>x</p>")
    assert html.startswith("<style>")
    assert html.endswith('<div class="pentools-answer"><p>x</p></div>')
