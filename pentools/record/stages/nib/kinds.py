"""What the nib stage asks: the nib under the loupe, what was done to it, and what it writes."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import Field, ask
from pentools.record.forms import Form, asked_by
from pentools.record.kinds import Kind
from pentools.record.stages.common import length, yes_no
from pentools.sums.nib.flex import FLEX
from pentools.sums.nib.flow import FLOW
from pentools.sums.nib.setting import ON_NIPPLE
from pentools.sums.nib.smoothing import SMOOTHING
from pentools.units import Reading

__all__ = [
    "ADJUST",
    "FEED_SETTING",
    "FIT",
    "FLEX_TEST",
    "FLOW_TEST",
    "LINES",
    "LOUPE",
    "SMOOTHED",
    "SMOOTHING_PLAN",
    "START",
    "TIPPED",
    "WRITING",
    "Adjust",
    "FeedSetting",
    "Fit",
    "FlexTest",
    "FlowTest",
    "Lines",
    "Loupe",
    "Smoothed",
    "SmoothingPlan",
    "Start",
    "Writing",
]

WHEN = (("found", "as found"), ("after", "after the work"))
TIPPING = (
    ("sound", "there, and sound"), ("flat", "there, worn flat"), ("chipped", "chipped"), ("cracked", "cracked or parting at the weld"),
    ("gone", "gone"),
)  # fmt: skip
TIPPED = {"sound": True, "flat": True, "chipped": False, "cracked": False, "gone": False}
"""Whether so much hard tipping is left that it may be smoothed as such."""
TINES = (
    ("level", "level"), ("left high", "the left one stands high"), ("right high", "the right one stands high"),
    ("crossed", "crossed"), ("apart", "apart"),
)  # fmt: skip
SLIT = (
    ("parallel", "parallel"), ("closing", "closing towards the tip"), ("opening", "opening towards the tip"),
    ("touching", "touching all along"),
)  # fmt: skip
CRACKS = (
    ("none", "none seen"), ("vent", "at the breather hole"), ("slit", "along the slit"), ("shoulder", "at a shoulder"), ("heel", "at the heel"),
    ("several", "at several places"),
)  # fmt: skip
DONE = (
    ("straighten", "straightened a bend"), ("tines", "set the tines level"), ("slit", "opened or closed the slit"),
    ("seat", "seated nib and feed afresh"), ("other", "something else"),
)  # fmt: skip
FIGURES = (("eight", "figures of eight"), ("line", "lines"), ("circle", "circles"), ("other", "other"))
WAYS = (("water", "hot water"), ("dry", "dry warmth"), ("cold", "cold, under the thumb"))
GAPS = (("slides", "a sheet of paper slides in"), ("refused", "it is refused"), ("falls", "it falls in"))
WETNESS = (
    ("dry", "dry"),
    ("rather dry", "rather dry"),
    ("medium", "medium"),
    ("rather wet", "rather wet"),
    ("wet", "wet"),
)


def _when(usual: str = "") -> Field:
    return ask(
        "When",
        "choice",
        choices=WHEN,
        required=True,
        audience="everybody",
        default=usual,
        hint="before anything moves, or after the work",
    )


# fmt: off
class Loupe(Form, frozen=True):
    """Under the loupe: what one entry holds."""

    when: Annotated[str | None, _when()] = None
    tipping: Annotated[str | None, ask("Tipping", "choice", choices=TIPPING, required=True, hint="from the side, against the light", audience="everybody")] = None
    tines: Annotated[str | None, ask("Tines, end on", "choice", choices=TINES, required=True, hint="left and right from above, the tip away from you", audience="everybody")] = None
    slit: Annotated[str | None, ask("Sides of the slit", "choice", choices=SLIT, hint="light from behind", audience="everybody")] = None
    step: Annotated[Reading | None, length("Step between the tips", "only if it was measured, such as 30 um", 0, 1)] = None
    gap: Annotated[Reading | None, length("Gap at the tip", "a firm nib about 0.025 mm, a flexible one closed; a loupe tells 0.01 mm at best", 0, 1)] = None
    cracks: Annotated[str | None, ask("Cracks", "choice", choices=CRACKS, hint="ink wiped in and off: a hairline stays dark", audience="everybody")] = None
    times: Annotated[float | None, ask("Loupe", "number", low=2, high=200, hint="how many times, such as 10", audience="everybody")] = None
    called: Annotated[str | None, ask("What its owner calls it", hint="such as F or broad: their word, never a width", audience="everybody")] = None
    seen: Annotated[str | None, ask("In your words", "long text", hint="such as: foot worn to the left, a bend behind the shoulder", audience="everybody")] = None
    photo: Annotated[str | None, ask("Photo", "photo", hint="a file in photos/", audience="everybody")] = None


LOUPE = Kind("nib", "loupe", "Under the loupe", Loupe, help="Clean first. Once as found, once after the work.")


class Fit(Form, frozen=True):
    """Set and cap: what one entry holds."""

    when: Annotated[str | None, _when()] = None
    reach: Annotated[Reading | None, length("Section face to tip", "three readings, their mean; empty as found: as the intake says, such as 19.2 mm", 2, 45)] = None
    inner_cap: Annotated[Reading | None, length("Depth of the inner cap", "from its mouth to its bottom, such as 21.5 mm", 3, 80)] = None
    overhang: Annotated[Reading | None, length("Nib beyond the feed", "from tip to tip, such as 3.5 mm", 0, 15)] = None
    seated: Annotated[bool | None, yes_no("Does the section stop on the inner cap's mouth?", "no: then wax tells, not the calliper", audience="everybody")] = None


FIT = Kind("nib", "fit", "Set depth and cap", Fit, help="Will the nib touch the inner cap? A straightened nib is longer.")


class Adjust(Form, frozen=True):
    """Straightening and setting: what one entry holds."""

    what: Annotated[str | None, ask("What", "choice", choices=DONE, required=True, audience="everybody")] = None
    did: Annotated[str | None, ask("What was done", "long text", required=True, hint="with what, how often, how far", audience="everybody")] = None
    bends: Annotated[int | None, ask("Bends", "count", low=0, high=200, hint="to and fro hardens gold, and then it cracks", audience="everybody")] = None
    broke: Annotated[str | None, ask("What broke or changed", "long text", hint="as it happened; empty for nothing", audience="everybody")] = None


ADJUST = Kind("nib", "adjust", "Straightening, setting", Adjust, help="Align before any abrasive. No shim is forced into old gold: the tines are bent.")


class SmoothingPlan(Form, frozen=True):
    """How it feels: what one entry holds."""

    feel: Annotated[str | None, asked_by(SMOOTHING)] = None


SMOOTHING_PLAN = Kind("nib", "smoothing plan", "Plan of smoothing", SmoothingPlan, log=False, help="Tines and tipping are taken from the loupe, the grades from the bench.")


class Smoothed(Form, frozen=True):
    """Smoothing: what one entry holds."""

    grade: Annotated[str | None, ask("Grade", required=True, hint="with its scale, such as film 1 um; the plan's stands beside", audience="everybody")] = None
    strokes: Annotated[int | None, ask("Strokes", "count", low=1, high=2000, required=True, hint="since the last entry, such as 4", audience="everybody")] = None
    figure: Annotated[str | None, ask("Which way", "choice", choices=FIGURES, required=True, audience="everybody")] = None
    looked: Annotated[bool | None, yes_no("Looked, and a line written?", "every few strokes", audience="everybody")] = None
    starts: Annotated[int | None, ask("Clean starts of ten", "count", low=0, high=10, hint="lifted and dry; ten of ten: stop", audience="everybody")] = None
    wrote: Annotated[str | None, ask("How it wrote", hint="such as smooth on the upstroke, a catch to the left", audience="everybody")] = None


SMOOTHED = Kind("nib", "smoothing", "Smoothing", Smoothed, help="One entry for each look. What is taken off a tip is not given back.")


class FeedSetting(Form, frozen=True):
    """Setting the feed: what one entry holds."""

    way: Annotated[str | None, ask("How", "choice", choices=WAYS, required=True, audience="everybody")] = None
    gap: Annotated[str | None, ask("Between nib and feed, after", "choice", choices=GAPS, required=True, hint="one sheet of office paper", audience="everybody")] = None
    alone: Annotated[bool | None, yes_no("Were nib and feed out of the section?", "not said: in it, so that section and nipple count", audience="everybody")] = None
    surface: Annotated[Reading | None, ask("Temperature, highest", "quantity", unit="degC", low=5, high=150, hint="of the water or the part, such as 85 °C", audience="everybody")] = None
    seconds: Annotated[Reading | None, ask("Time in it", "quantity", unit="s", low=1, high=600, hint="such as 20 s", audience="everybody")] = None
    cooled: Annotated[Reading | None, ask("Held while it cooled", "quantity", unit="s", low=1, high=600, hint="such as 20 s", audience="everybody")] = None
    nipple: Annotated[str | None, ask("On the nipple", "choice", choices=ON_NIPPLE, hint="empty: by the filling system", audience="everybody")] = None
    broke: Annotated[str | None, ask("What broke or changed", "long text", hint="as it happened; empty for nothing", audience="everybody")] = None


FEED_SETTING = Kind("nib", "feed setting", "Setting the feed", FeedSetting, help="Only hard rubber is set by heat. Hot water scalds: tongs.")


class Writing(Form, frozen=True):
    """Writing test: what one entry holds."""

    when: Annotated[str | None, _when("after")] = None
    ink: Annotated[str | None, ask("Ink", required=True, hint="its name and kind, the same before and after, such as a blue iron-gall ink", audience="everybody")] = None
    paper: Annotated[str | None, ask("Paper", required=True, hint="such as smooth 90 g/m² pad paper", audience="everybody")] = None
    wetness: Annotated[str | None, ask("Wetness, in a word", "choice", choices=WETNESS, audience="everybody")] = None
    scan: Annotated[str | None, ask("Scan", hint="a file in scans/, a card beside the lines; they are measured when you save", audience="owner")] = None
    feels: Annotated[str | None, ask("In your words", "long text", hint="such as: smooth, a little feedback, springs", audience="everybody")] = None


WRITING = Kind("nib", "writing test", "Writing test", Writing, help="The pen's own weight to a light hand, about 45 degrees; the same ink and paper before and after.")


class Lines(Form, frozen=True):
    """Lines measured: what one entry holds."""

    when: Annotated[str | None, _when("after")] = None
    line: Annotated[Reading | None, ask("Width of its line", "quantity", unit="mm", low=0.05, high=8, required=True, hint="such as 0.52 ± 0.01 mm; by a loupe's scale it is known to 0.025 mm", audience="everybody")] = None
    pressed: Annotated[Reading | None, length("Width of a pressed line", "lightly, never to its limit, such as 0.90 mm", 0.05, 10)] = None
    ratio: Annotated[float | None, ask("Widest over narrowest", "number", low=1, high=20, hint="of one line, such as 1.3", audience="everybody")] = None
    strokes: Annotated[int | None, ask("Lines measured", "count", low=1, high=100000, hint="such as 12", audience="everybody")] = None
    skips: Annotated[int | None, ask("Skips", "count", low=0, high=100000, hint="places left empty", audience="everybody")] = None
    written: Annotated[Reading | None, ask("Length of line looked at", "quantity", unit="m", low=0.001, high=2000, hint="such as 6 m", audience="everybody")] = None
    scan: Annotated[str | None, ask("Scan", hint="the file in scans/ they were measured on; empty: by a loupe", audience="owner")] = None
    drawn: Annotated[bool | None, yes_no("Is the scan a drawing?", "yes is said wherever its figures stand", audience="everybody")] = None


LINES = Kind("nib", "lines", "Lines measured", Lines, help="Saved by itself from a scan; by hand from a loupe's scale.")


class Start(Form, frozen=True):
    """Start: what one entry holds."""

    when: Annotated[str | None, _when("after")] = None
    way: Annotated[Reading | None, ask("Way to the first full line", "quantity", unit="mm", low=0, high=2000, required=True, hint="0 mm: at once", audience="everybody")] = None
    rested: Annotated[Reading | None, ask("Rested before, filled and capped", "quantity", unit="h", low=0, high=2000, hint="a night is 12 h", audience="everybody")] = None
    lay: Annotated[str | None, ask("How it lay", hint="nib up, nib down, flat", audience="everybody")] = None
    starts: Annotated[int | None, ask("Clean starts of ten", "count", low=0, high=10, hint="lifted and dry, on smooth paper", audience="everybody")] = None


START = Kind("nib", "start", "Start after a rest", Start)


class FlowTest(Form, frozen=True):
    """Flow: what one entry holds."""

    when: Annotated[str | None, _when("after")] = None
    before: Annotated[tuple[Reading, ...] | None, asked_by(FLOW)] = None
    after: Annotated[tuple[Reading, ...] | None, asked_by(FLOW)] = None
    length: Annotated[Reading | None, asked_by(FLOW)] = None
    minutes: Annotated[Reading | None, asked_by(FLOW)] = None
    idle: Annotated[Reading | None, asked_by(FLOW)] = None
    density: Annotated[Reading | None, asked_by(FLOW, usual=False)] = None


FLOW_TEST = Kind("nib", "flow", "Flow", FlowTest, help="Weigh the pen, capped, before and after a counted length of line; the first metre after filling is left out.")


class FlexTest(Form, frozen=True):
    """Flex: what one entry holds."""

    when: Annotated[str | None, _when("after")] = None
    loads: Annotated[tuple[Reading, ...] | None, asked_by(FLEX)] = None
    widths: Annotated[tuple[Reading, ...] | None, asked_by(FLEX)] = None
    angle: Annotated[Reading | None, asked_by(FLEX)] = None
    metal: Annotated[str | None, asked_by(FLEX)] = None
    width_doubt: Annotated[Reading | None, asked_by(FLEX, usual=False)] = None
    wobble: Annotated[Reading | None, asked_by(FLEX, usual=False)] = None
    extra: Annotated[Reading | None, asked_by(FLEX, usual=False)] = None
    maximum: Annotated[bool | None, yes_no("Was it driven to its limit?", "yes is held: it is never done", audience="everybody")] = None


FLEX_TEST = Kind("nib", "flex", "Flex", FlexTest, help="A line at rest and one half a millimetre wider, on a kitchen scale; there it ends.")


# fmt: on
