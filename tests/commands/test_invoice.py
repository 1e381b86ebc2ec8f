"""The command: one number a state, as words and as JSON, with exit codes as everywhere."""

import json

import pytest
from books.billing import USUAL, bench_that_bills, pen

from pentools.cli import main


@pytest.fixture
def bench(tmp_path):
    bench = bench_that_bills(tmp_path, USUAL + 'tax_name = "VAT"\ntax_rate = "19 %"\n')
    pen(bench)
    return str(tmp_path)


def told(capsys, *words):
    assert main([*words, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_a_draft_uses_no_number_and_the_invoice_is_given_once(bench, tmp_path, capsys):
    draft = told(capsys, "invoice", "a-pen", "--draft", "--bench", bench)
    assert (draft["number"], draft["new"], draft["total"]) == (None, False, "58.91")
    assert not (tmp_path / "invoices.csv").exists()
    first = told(capsys, "--bench", bench, "invoice", "a-pen")
    assert (first["number"], first["place"], first["new"], first["total"]) == (
        f"{first['date'][:4]}-001",
        1,
        True,
        "58.91",
    )
    assert [(line["amount"], line["agreed"]) for line in first["lines"]] == [("45.00", True), ("4.50", True)]
    assert (first["before_tax"], first["tax"], first["tax_words"], first["currency"]) == (
        "49.50",
        "9.41",
        "VAT 19 %",
        "EUR",
    )
    assert (first["agreed_most"], first["price_at_end"], first["difference"]) == ("130.00", None, None)
    assert (first["rounding"], first["tax_rounded_on"], first["open"]) == ("half up", "total", "58.91")
    again = told(capsys, "invoice", "a-pen", "--bench", bench)
    assert (again["number"], again["new"]) == (first["number"], False)
    for name in ("invoice.html", "invoice.csv", "invoice-draft.html", "invoice-draft.csv"):
        assert (tmp_path / "a-pen" / "writeup" / name).is_file()


def test_it_says_what_it_did_and_what_stands_in_the_way(bench, tmp_path, capsys):
    assert main(["invoice", "a-pen", "--bench", bench]) == 0
    said = capsys.readouterr().out
    assert "58.91 EUR" in said
    assert "Not ended yet: a-pen." in said
    assert "invoice.html" in said
    assert main(["invoice", "nobody", "--bench", bench]) == 3
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import open_job

    job = open_job("a-pen", bench=open_bench_folder(bench))
    job.add("agree", "bill", {"postage": "100"})
    assert main(["invoice", "a-pen", "--bench", bench]) == 4
    assert "at most 130.00 EUR was agreed" in capsys.readouterr().err
    job.add("agree", "bill", {"taken_off": "1000"})
    assert main(["invoice", "a-pen", "--bench", bench, "--draft"]) == 2
    assert "more" in capsys.readouterr().err
