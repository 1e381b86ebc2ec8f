"""What is said of invoices: every amount reaches its sentence."""

from pentools.calc.base.findings import Finding


def test_an_invoice_against_the_price_that_was_said():
    more = Finding("warning", "books.invoice-price:more", total="96.75 EUR", said="95.00 EUR", by="1.75 EUR")
    assert more.text.startswith("The invoice comes to 96.75 EUR; the price said at the end was 95.00 EUR, so it is 1.75 EUR more.")  # fmt: skip
    less = Finding("warning", "books.invoice-price:less", total="90.00 EUR", said="95.00 EUR", by="5.00 EUR")
    assert less.text.endswith("so it is 5.00 EUR less.")


def test_what_was_not_agreed_is_named():
    assert "shellac and latex sac 16" in Finding("warning", "books.invoice-not-agreed", lines=["shellac", "latex sac 16"]).text  # fmt: skip
