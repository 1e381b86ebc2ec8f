"""What a bench has set for its invoices: nothing where nothing was said, and what cannot be used is said."""

from decimal import Decimal

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.billing import Billing, billing_of


def bench_with(folder, lines):
    (folder / "bench.toml").write_text("[money]\n" + lines, encoding="utf-8")
    return open_bench_folder(folder)


def test_nothing_said_is_no_tax(tmp_path):
    found = billing_of(bench_with(tmp_path, ""))
    assert found == Billing("EUR", Decimal(0))
    assert (found.tax_name, found.tax_share, found.on_top, found.tax_wording) == ("", 0, 0, "")


def test_everything_said_arrives(tmp_path):
    bench = bench_with(
        tmp_path,
        'currency = "kwd"\nrate_per_hour = 12.5\ntax_name = "VAT"\ntax_rate = "8,1 %"\ntax_on = "each line"\nrounding = "half even"\n'
        'tax_wording = "words"\ninvoice_number = "R/YYYY/####"\nfirst_invoice = 17\npayment = ["by transfer", "IBAN"]\n',
    )  # fmt: skip
    found = billing_of(bench)
    assert bench.problems == ()
    assert found == Billing(
        "KWD", Decimal("12.5"), "VAT", Decimal("0.081"), False, True, "words", "half even", "R/YYYY/####", 17,
        ("by transfer", "IBAN"),
    )  # fmt: skip
    assert found.on_top == Decimal("0.081")
    assert found.number(17, 2026) == "R/2026/0017"
    assert found.number(123456, 2027) == "R/2027/123456"


def test_a_tax_that_prices_hold_adds_nothing(tmp_path):
    found = billing_of(bench_with(tmp_path, "tax_rate = 20\ntax_included = true\n"))
    assert (found.tax_share, found.on_top) == (Decimal("0.2"), 0)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("tax_rate = 0.19", "19.00 %"),
        ('tax_rate = "a fifth"', "per cent"),
        ("tax_rate = 120", "per cent"),
        ("tax_rate = true", ""),
        ('tax_on = "both"', "each line"),
        ('rounding = "down"', "half up"),
        ('invoice_number = "2026"', "one run of #"),
        ('invoice_number = "##-##"', "one run of #"),
        ("first_invoice = 0", "from 1 on"),
        ('tax_included = "yes"', "true or false"),
        ("payment = 3", "square brackets"),
    ],
)
def test_what_cannot_be_used_is_said_and_passed_by(tmp_path, line, said):
    bench = bench_with(tmp_path, line + "\n")
    assert said in " ".join(bench.problems)
    assert billing_of(bench) == Billing("EUR", Decimal(0))
