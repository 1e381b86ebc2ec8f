"""A page of strokes from its picture elements to widths: what is traced, read across, freed of blur and summed up."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from pentools.calc.nib.arrays import Flags, Floats, Ints, grow, run_bounds, run_ids, runs_of
from pentools.calc.nib.chains import chains_of
from pentools.calc.nib.paper import Paper, coarse_factor, read_paper
from pentools.calc.nib.print_marks import Marks, look_for_print
from pentools.calc.nib.profiles import Lines, cut_across, lines_along, recentred
from pentools.calc.nib.skips import Core, Gap, core_along, gaps_in, inked_span
from pentools.calc.nib.strokes import Doubt, Skip, Stroke, stroke_of
from pentools.calc.nib.thin import branches_of, thin
from pentools.calc.nib.tone import FULL
from pentools.calc.nib.widths import Blurred, Raw, Usual, deblurred, raw_widths

__all__ = ["Progress", "Traced", "measure_strokes", "subset", "trace"]

Progress = Callable[[str, float], None]
"""Is told what is being done, and what share of the whole is behind it [1]."""
_STEP_UM = 85.0  # way between two cuts
_MEAN_UM = 130.0  # a cut is averaged with its neighbours within this
_PAST_UM = 170.0  # a middle line is read on past its end by this
_BROADEST_MM = 6.0  # what is broader is no stroke
_SHORTEST_MM = 1.2
_SHORT_RUN = 4.0  # a piece at a fork wants so many widths
_INNER_RUN = 10.0  # a run is long from so many widths on
_RUN_ALIKE = 0.1
_LEAST_MEASURED_MM = 0.7


@dataclass(frozen=True, slots=True)
class Traced:
    """A page with its strokes traced.

    Parameters
    ----------
    light : array of uint16
        Linear brightness, 0 to `tone.FULL`; turned round where lines were lighter than their ground.
    paper : Paper
        Its paper.
    lines : Lines
        Points along every stroke.
    um_per_px : float
        Size of a picture element [µm].
    marks : Marks
        Short marks on it; printed ones are left out of the lines.
    """

    light: Floats
    paper: Paper
    lines: Lines
    um_per_px: float
    marks: Marks


def trace(light: Floats, um_per_px: float, taken: Flags | None = None, tell: Progress | None = None) -> Traced:
    """Find the strokes of a page.

    Parameters
    ----------
    light : array of uint16
        Linear brightness, 0 to `tone.FULL`.
    um_per_px : float
        Size of a picture element [µm], 3 to 400.
    taken : array of bool or None
        Where things lie that are no ink, coarse page.
    tell : Progress or None
        Is told how far it is.

    Returns
    -------
    Traced
        With no line where the page is blank.
    """
    import cv2

    say = tell or _silent
    factor = coarse_factor(um_per_px)
    rows, columns = light.shape[0] // factor, light.shape[1] // factor
    small = cv2.resize(light[: rows * factor, : columns * factor], (columns, rows), interpolation=cv2.INTER_AREA)
    say("paper", 0.1)
    paper = read_paper(small.astype(np.float32) / FULL, um_per_px * factor, taken)
    paper = replace(paper, factor=factor)
    say("tracing", 0.2)
    marks, printed = look_for_print(paper.mask, um_per_px * factor)
    mask = _slender(paper.mask & ~printed, um_per_px * factor)
    depth = cv2.distanceTransform(mask.astype(np.uint8), cv2.DIST_L2, 5)
    chains = chains_of(branches_of(thin(mask), depth), depth, um_per_px * factor, factor)
    step = max(1.0, _STEP_UM / um_per_px)
    lines = lines_along(chains, step, max(4.0, _PAST_UM / um_per_px))
    return Traced(FULL - light if paper.light_on_dark else light, paper, lines, um_per_px, marks)


def _silent(_: str, __: float) -> None:
    return None


def _slender(mask: Flags, um_per_px: float) -> Flags:
    """The mask without things that are too broad to be strokes, and without what hangs on them."""
    import cv2

    depth = cv2.distanceTransform(mask.astype(np.uint8), cv2.DIST_L2, 3)
    core = depth > 500 * _BROADEST_MM / um_per_px
    if not core.any():
        return mask
    labels = cv2.connectedComponents(mask.astype(np.uint8), connectivity=8)[1]
    broad = np.zeros(int(labels.max()) + 1, np.bool_)
    broad[np.unique(labels[core])] = True
    broad[0] = False
    return mask & ~broad[labels]


def measure_strokes(traced: Traced, doubt: Doubt, tell: Progress | None = None) -> tuple[Stroke, ...]:
    """Measure every stroke of a traced page.

    Parameters
    ----------
    traced : Traced
        As of `trace`.
    doubt : Doubt
        What the widths are unsure by, and the threshold.
    tell : Progress or None
        Is told how far it is.

    Returns
    -------
    tuple of Stroke
        Longest first; strokes of which too little can be read are left out.
    """
    say = tell or _silent
    strokes: list[Stroke] = []
    groups, usual = _groups(traced.lines), Usual()
    for number, which in enumerate(groups):
        say("measuring", 0.3 + 0.65 * number / len(groups))
        made, usual = _measure_group(traced, subset(traced.lines, which), doubt, usual)
        strokes += made
    say("done", 1.0)
    return tuple(sorted(strokes, key=lambda stroke: -stroke.length_mm))


def _groups(lines: Lines) -> list[Ints]:
    """Strokes of about one width together, and not too many points at a time."""
    if not len(lines.closed):
        return []
    broad = np.array([np.percentile(lines.half[a:b], 95) for a, b in pairwise(lines.bounds)])
    kind = np.round(2 * np.log2(np.maximum(broad, 1.0))).astype(np.int64)
    lengths = np.diff(lines.bounds)
    groups = []
    for one in np.unique(kind)[::-1]:  # broad ones first
        which = np.nonzero(kind == one)[0]
        part = np.cumsum(lengths[which]) // 40000
        groups += [which[part == p] for p in np.unique(part)]
    return groups


def subset(lines: Lines, which: Ints) -> Lines:
    """Some of the strokes, in the order asked for."""
    rows = np.concatenate([np.arange(lines.bounds[i], lines.bounds[i + 1]) for i in which])
    bounds = run_bounds(np.diff(lines.bounds)[which])
    return Lines(
        lines.points[rows],
        lines.normals[rows],
        lines.half[rows],
        lines.bridged[rows],
        bounds,
        lines.closed[which],
        lines.forked[which],
        lines.step[which],
    )


def _level(traced: Traced, lines: Lines) -> Floats:
    """Brightness of bare paper at each point, as `tone.FULL` counts it."""
    shape = traced.paper.level.shape
    column, row = (
        np.clip((lines.points[:, i] / traced.paper.factor).astype(np.int64), 0, shape[1 - i] - 1) for i in (0, 1)
    )
    level: Floats = traced.paper.level[row, column].astype(np.float64) * FULL
    return level


def _measure_group(traced: Traced, lines: Lines, doubt: Doubt, usual: Usual) -> tuple[list[Stroke], Usual]:
    um = traced.um_per_px
    reach_px = 1.15 * float(lines.half.max()) + max(5.0, 260.0 / um)
    mean = max(1, round(_MEAN_UM / um / float(np.median(lines.step))))
    rows = np.arange(len(lines.points))
    level = _level(traced, lines)
    raw, _ = raw_widths(cut_across(traced.light, level, lines, rows, reach_px), lines.half, lines.bounds, mean)
    lines = recentred(lines, 0.5 * (raw.low + raw.high), raw.found & raw.clean)
    level = _level(traced, lines)
    raw, cuts = raw_widths(cut_across(traced.light, level, lines, rows, reach_px), lines.half, lines.bounds, mean)
    core = core_along(traced.light, level, lines)
    inked = _ends_and_gaps(core, raw, lines)
    good = _good(traced, lines, raw, inked, mean)
    blurred, usual = deblurred(
        cuts, raw, good, lines.bounds, um=(um, lines.step), threshold=doubt.threshold, usual=usual
    )
    good &= np.isfinite(blurred.width) & (blurred.width > 0)
    made = [_stroke(i, lines, (good, blurred, own), doubt) for i, own in enumerate(inked)]
    return [stroke for stroke in made if stroke is not None], usual


@dataclass(frozen=True, slots=True)
class _Inked:
    """Where a stroke's ink begins and ends [px along it], and its gaps; no span where there is no ink."""

    span: tuple[float, float] | None
    gaps: tuple[Gap, ...]


def _ends_and_gaps(core: Core, raw: Raw, lines: Lines) -> list[_Inked]:
    found = []
    for i, (start, end) in enumerate(pairwise(core.bounds)):
        first, last = lines.bounds[i], lines.bounds[i + 1]
        along = core.along[start:end]
        own = np.arange(last - first) * lines.step[i]
        share = core.ink[start:end] / np.maximum(np.interp(along, own, raw.plateau[first:last]), 1e-3)
        span = inked_span(along, share)
        found.append(_Inked(span, gaps_in(along, share, span, float(raw.blur[first])) if span else ()))
    return found


def _good(traced: Traced, lines: Lines, raw: Raw, inked: list[_Inked], mean: int) -> Flags:
    """Cuts that may be measured: edges found, nothing beside, off ends, gaps, crossings and the page's rim."""
    width = raw.high - raw.low
    ids = run_ids(lines.bounds)
    clear = raw.found & raw.clean
    good = clear & (np.abs(raw.high + raw.low) < 0.5 * np.maximum(lines.half, 1.0) + 2.0)
    rows, columns = traced.light.shape
    rim = 0.5 * width + 3.0 * raw.blur
    x, y = lines.points[:, 0], lines.points[:, 1]
    good &= (x > rim) & (y > rim) & (x < columns - 1 - rim) & (y < rows - 1 - rim)
    along = (np.arange(len(ids)) - lines.bounds[:-1][ids]) * lines.step[ids]
    cap = 0.5 * width + 2.5 * raw.blur + mean * lines.step[ids]
    for i, own in enumerate(inked):
        part = slice(lines.bounds[i], lines.bounds[i + 1])
        good[part] &= _off_ends(along[part], own, cap[part], closed=bool(lines.closed[i]))
    # nor right beside what is not clear: there another stroke begins to lean in
    reach = np.ceil(0.5 * np.median(width[clear]) / lines.step[ids]).astype(np.int64) + mean if clear.any() else 1
    good &= ~grow(~clear, lines.bounds, reach)
    return _unmerged(good, width, lines)


def _off_ends(along: Floats, inked: _Inked, cap: Floats, *, closed: bool) -> Flags:
    """Which points of a stroke lie far enough from its ends and gaps."""
    if inked.span is None:
        return np.zeros(len(along), np.bool_)
    fine = np.ones(len(along), np.bool_)
    if not closed:
        fine &= (along > inked.span[0] + cap) & (along < inked.span[1] - cap)
    for gap in inked.gaps:
        fine &= (along < gap.start - cap) | (along > gap.end + cap)
    return fine


def _unmerged(good: Flags, width: Floats, lines: Lines) -> Flags:
    """Without runs that are too short, and short ones broader or narrower than the long ones next to them.

    Where two strokes lie over each other at a small angle, what is between their forks looks like one stroke.
    """
    kept = good.copy()
    for i, (start, end) in enumerate(pairwise(lines.bounds)):
        own, broad = good[start:end], width[start:end]
        least = float(np.median(lines.half[start:end])) / max(float(lines.step[i]), 1e-9)
        runs = [run for run in runs_of(own) if run[1] - run[0] >= max(3, least)]
        long = [run for run in runs if run[1] - run[0] >= _INNER_RUN * 2 * least]
        kept[start:end] = False
        for run in runs:
            if run in long or not long or _alike(broad, run, long):
                kept[start + run[0] : start + run[1]] = True
    return kept


def _alike(broad: Floats, run: tuple[int, int], long: list[tuple[int, int]]) -> bool:
    """Whether a run is about as broad as the end of the nearest long one."""
    near = min(long, key=lambda other: max(other[0] - run[1], run[0] - other[1]))
    edge = broad[near[0] : near[0] + 5] if near[0] >= run[1] else broad[near[1] - 5 : near[1]]
    return abs(float(np.median(broad[run[0] : run[1]])) / float(np.median(edge)) - 1) < _RUN_ALIKE


def _stroke(i: int, lines: Lines, read: tuple[Flags, Blurred, _Inked], doubt: Doubt) -> Stroke | None:
    """A stroke, where enough of it can be measured."""
    good, blurred, inked = read
    part = slice(lines.bounds[i], lines.bounds[i + 1])
    use = good[part]
    um, step = doubt.um_per_px, float(lines.step[i])
    if inked.span is None or use.sum() < 3 or use.sum() * step * um < 1000 * _LEAST_MEASURED_MM:
        return None
    own = np.arange(len(use)) * step
    start, end = (0.0, float(own[-1])) if lines.closed[i] else inked.span
    length = (end - start) * um / 1000
    if length < _SHORTEST_MM or (lines.forked[i] and _short(use, step, lines.half[part])):
        return None
    points = lines.points[part]
    track = np.column_stack([points[use], (own[use] - start) * um / 1000, blurred.width[part][use] * um])
    blur, ink, unlike = (float(np.median(v[part][use])) for v in (blurred.blur, blurred.ink, blurred.unlike))
    skips = tuple(_skip(gap, start, own, points, um) for gap in inked.gaps if gap.empty)
    counted = (skips, len(inked.gaps) - len(skips))
    return stroke_of(
        track, step * um, blur * um, (ink, unlike), doubt, length_mm=length, closed=bool(lines.closed[i]), gaps=counted
    )


def _short(use: Flags, step: float, half: Floats) -> bool:
    """Whether so little is measured that at a fork it may be two strokes lying over each other."""
    return float(use.sum()) * step < _SHORT_RUN * 2 * float(np.median(half))


def _skip(gap: Gap, start: float, own: Floats, points: Floats, um: float) -> Skip:
    middle = 0.5 * (gap.start + gap.end)
    x, y = (float(np.interp(middle, own, points[:, k])) for k in (0, 1))
    return Skip(gap.length * um, (gap.start - start) * um / 1000, x, y)
