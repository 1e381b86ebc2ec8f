"""The card as a page: one heading, large type, nothing to fetch, nothing private."""

import re

import pytest
from writeup.pages import CONTACT, Parsed
from writeup.samples import SAMPLES, made

from pentools.record.job import job_in
from pentools.writeup.card.page import card_page
from pentools.writeup.template import resource


@pytest.mark.parametrize("name", SAMPLES)
def test_a_card_is_short_plain_and_self_contained(name):
    found = Parsed(made(name, "card")["card.html"])
    assert found.headings == [1]
    assert found.links == []
    assert 5 <= [tag for tag, _ in found.tags].count("li") <= 12
    assert len(found.text.split()) <= 180
    assert not {"script", "img", "svg", "table"} & {tag for tag, _ in found.tags}
    assert not re.search(r"\d\s?(?:mL|mm|h|min|%|°C)(?!\w)", found.text)  # units are words


def test_the_type_is_large():
    sizes = re.findall(r"@media print \{\s*html \{[^}]*font: (\d+)pt", resource("card/card.css"))
    assert [int(size) for size in sizes] == [22]


def test_neither_contact_nor_job_nor_price_nor_names(small_job):
    text = card_page(small_job)
    for private in (CONTACT, small_job.name, "118", "Adela", "That it writes again"):
        assert private not in text


def test_a_long_description_is_cut_at_a_word_and_a_draft_says_so(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "green " * 40})
    text = card_page(job, draft=True)
    assert "green green…</h1>" in text
    assert "Draft:</strong> Not for publication." in text
    assert "Not for publication" not in card_page(job)


def test_a_comma_for_the_decimal_sign(small_job):
    path = small_job.bench.folder / "bench.toml"
    path.write_text(path.read_text().replace('decimal_sign = "."', 'decimal_sign = ","'))
    text = Parsed(card_page(job_in(small_job.folder))).text
    assert re.search(r"draws 1,28\smillilitres", text)
