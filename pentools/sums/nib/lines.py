"""The lines sum: a scanned page of strokes in, their widths with a doubt out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.nib.bar import Bar
from pentools.calc.nib.card import Card
from pentools.calc.nib.page import measure_strokes, trace
from pentools.calc.nib.strokes import Doubt, Stroke
from pentools.calc.nib.summary import Kind, PageLines, summed_up
from pentools.calc.nib.tone import Tone
from pentools.errors import InputError
from pentools.fields import Field
from pentools.numbers import fixed, plain
from pentools.sums.base import Inputs, Sum, SumAnswer
from pentools.sums.nib.scale import scaled
from pentools.sums.nib.scan_file import Scan, read_scan
from pentools.sums.progress import tell

__all__ = ["LINES", "lines_answer"]

SCALES = (
    ("auto", "the card if one lies there, else the file"),
    ("card", "a bank card on the page"),
    ("dpi", "dots an inch, as the file says"),
    ("bar", "a printed scale bar or a ruler"),
)
CURVES = (
    ("file", "as the file says, else the usual one"),
    ("srgb", "the usual one, IEC 61966-2-1"),
    ("linear", "in proportion to light, a raw scan"),
    ("1.8", "a power of 1.8"),
    ("2.2", "a power of 2.2"),
)
FIELDS = (
    Field("scan", "Scan", hint="a PNG, TIFF or JPEG of a page of strokes, such as scan.png; or sample, a page drawn by the kit", required=True),
    Field("scale", "Scale from", "choice", choices=SCALES, default="auto", hint="a card of 85.60 x 53.98 mm is found by itself"),
    Field("bar_length", "Bar, first to last mark", "quantity", unit="mm", low=10, high=500, hint="measured with a ruler, such as 99.6 mm; as it was drawn unless said"),
    Field("curve", "Curve of the codes", "choice", choices=CURVES, default="file", hint="a file that names none leaves about a blur in doubt"),
    Field("threshold", "Edge at", "number", low=0.3, high=0.7, default="0.5", hint="share of the way from paper to ink"),
)  # fmt: skip
_SOME_MARKS = 20
_MOST_LEFT_OUT = 0.6
_STROKE_A_MARK_MM = 1.0  # judged: a page with less line than this for each printed mark is a page of print
_UNKNOWN_TONE = 0.8  # blurs, standard uncertainty: codes in proportion to light, taken for the usual ones, read 1.4 to 1.6 too broad


def lines_answer(given: Inputs) -> SumAnswer:
    """The widths of the strokes on a page.

    Parameters
    ----------
    given : Inputs
        Values of the fields; missing ones None.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object; its result is a `PageLines`.

    Raises
    ------
    InputError
        If the file is no picture, has no scale, or shows no stroke that could be measured.
    """
    name = given.text("scan", "")
    tell("reading", 0.0)
    scan = _curved(read_scan(name), given.text("curve", "file"))
    page_at = scaled(scan, given.text("scale", "auto"), given.number("bar_length"))
    doubt = Doubt(
        page_at.share, page_at.um_per_px, 0.0 if scan.tone_said else _UNKNOWN_TONE, given.number("threshold", 0.5)
    )
    traced = trace(page_at.light, page_at.um_per_px, page_at.taken, tell)
    marks = traced.marks
    strokes = measure_strokes(traced, doubt, tell)
    if not strokes:
        why = f"{marks.count} short marks, like print" if marks.count > _SOME_MARKS else "none"
        raise InputError(
            "strokes", "on the page, a millimetre long and more", why, "Write a page of strokes and scan that."
        )
    page = summed_up(strokes, doubt)
    found = [*page_at.findings, *_of_scan(scan, page)]
    if traced.paper.light_on_dark:
        found.append(Finding("note", "nib.light-on-dark"))
    most_left_out = marks.left_out > _MOST_LEFT_OUT * marks.count
    if marks.printed and (page.length_mm < _STROKE_A_MARK_MM * marks.count or not most_left_out):
        found.append(Finding("warning", "nib.printed-text", count=marks.count))
    elif marks.left_out:
        found.append(Finding("note", "nib.print-left-out", count=marks.left_out))
    findings = gravest_first((*found, *page.findings))
    sentence = _sentence(page)
    data = _data(sentence, page, findings) | {
        "scale_from": page_at.kind,
        "card": _card(page_at.card),
        "bar": _bar(page_at.bar),
    }
    return SumAnswer(sentence, data, findings, _table(page), page)


def _curved(scan: Scan, curve: str) -> Scan:
    """The scan with its codes' curve, where somebody says which it is."""
    if curve == "file":
        return scan
    tone: Tone = "srgb" if curve == "srgb" else "linear" if curve == "linear" else float(curve)
    return replace(scan, tone=tone, tone_said=True)


def _of_scan(scan: Scan, page: PageLines) -> list[Finding]:
    found = [Finding("warning", "nib.bilevel")] if scan.bilevel else []
    if not scan.tone_said:
        found.append(Finding("note", "nib.curve-unsaid", wide=2 * _UNKNOWN_TONE * page.blur_um))
    return found


def _sentence(page: PageLines) -> str:
    width, u = page.median_width_um / 1000, 2 * page.u_um / 1000
    decimals = 3 if u < 0.02 else 2
    text = f"It draws {fixed(width, decimals)} mm ± {fixed(u, decimals)} on this page"
    if page.variation_ratio > page.ratio_floor * 1.1:
        text += f", from {plain(page.p5_um / 1000, 2)} to {plain(page.p95_um / 1000, 2)} mm (a ratio of {fixed(page.variation_ratio, 2)})"
    text += f"; {len(page.strokes)} strokes of {plain(page.length_mm / 1000, 2)} m"
    return text + (f", {page.skips} skips." if page.skips else ", none of them skips.")


def _data(sentence: str, page: PageLines, findings: tuple[Finding, ...]) -> dict[str, object]:
    return {
        "sentence": sentence,
        "scale_um_per_px": page.doubt.um_per_px,
        "scale_standard_uncertainty_share": page.doubt.scale_share,
        "threshold": page.doubt.threshold,
        "strokes": [_stroke(stroke) for stroke in page.strokes],
        "median_width_um": page.median_width_um,
        "u_um": page.u_um,
        "p5_um": page.p5_um,
        "p50_um": page.median_width_um,
        "p95_um": page.p95_um,
        "variation_ratio": page.variation_ratio,
        "ratio_floor": page.ratio_floor,
        "light": _kind(page.light),
        "pressed": _kind(page.pressed),
        "length_mm": page.length_mm,
        "measured_mm": page.measured_mm,
        "skips": page.skips,
        "skips_per_m": page.skips_per_m,
        "blur_um": page.blur_um,
        "findings": [finding.as_json() for finding in findings],
    }


def _stroke(stroke: Stroke) -> dict[str, object]:
    names = (
        "width_um",
        "u_um",
        "p5_um",
        "p50_um",
        "p95_um",
        "length_mm",
        "measured_mm",
        "ratio",
        "ratio_floor",
        "blur_um",
    )
    return {
        **{name: getattr(stroke, name) for name in names},
        "skips": [{"length_um": skip.length_um, "at_mm": skip.at_mm, "x_px": skip.x_px, "y_px": skip.y_px} for skip in stroke.skips],
        "pale_places": stroke.pale_places,
        "too_fine": stroke.too_fine,
        "closed": stroke.closed,
    }  # fmt: skip


def _card(card: Card | None) -> dict[str, object] | None:
    return _with_corners(card, ("um_per_px", "u_share", "aslant", "tilt_deg", "height_mm"))


def _bar(bar: Bar | None) -> dict[str, object] | None:
    return _with_corners(bar, ("kind", "um_per_px", "u_share", "step_mm", "marks", "long_mm"))


def _with_corners(found: Card | Bar | None, names: Sequence[str]) -> dict[str, object] | None:
    if found is None:
        return None
    return {"corners_px": found.corners.tolist(), **{name: getattr(found, name) for name in names}}


def _kind(kind: Kind | None) -> dict[str, object] | None:
    if kind is None:
        return None
    return {"strokes": kind.count, "length_mm": kind.length_mm, "width_um": kind.width_um, "u_um": kind.u_um}


def _table(page: PageLines) -> tuple[tuple[str, ...], ...]:
    rows = [
        ("quantity", "value"),
        ("width, middle of all", f"{fixed(page.median_width_um / 1000, 3)} mm ± {fixed(page.u_um / 500, 3)}"),
        ("5 and 95 of 100 parts stay under", f"{fixed(page.p5_um / 1000, 3)} and {fixed(page.p95_um / 1000, 3)} mm"),
        ("ratio; an even line would show", f"{fixed(page.variation_ratio, 2)}; {fixed(page.ratio_floor, 2)}"),
        (
            "strokes; measured of their length",
            f"{len(page.strokes)}; {plain(page.measured_mm)} of {plain(page.length_mm)} mm",
        ),
        ("edge at; blur", f"{fixed(100 * page.doubt.threshold, 0)} % of the way to ink; {fixed(page.blur_um, 0)} µm"),
        ("element of the scan", f"{fixed(page.doubt.um_per_px, 2)} µm ± {fixed(200 * page.doubt.scale_share, 2)} %"),
    ]
    for name, kind in (("light strokes", page.light), ("pressed strokes", page.pressed)):
        if kind is not None:
            rows.append((name, f"{fixed(kind.width_um / 1000, 3)} mm ± {fixed(kind.u_um / 500, 3)}; {kind.count}"))
    return tuple(rows)


LINES = Sum(
    "lines",
    "Lines on paper",
    "How broad a nib's strokes are on a scanned page, with their doubt, their ratio and their skips.",
    FIELDS,
    lines_answer,
    "pentools sums lines sample",
    positional="scan",
)
