"""What is said of nibs: the tip and its smoothing, flow, flex, the setting of the feed, lines on paper."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]

SMOOTHING: Mapping[str, Template] = {
    "finish-not-reached": (
        "The finest owned grade, {last}, leaves a finish like {leaves:.3g} µm: the nib will keep some feedback; {wanted:.3g} µm "
        "would end it."
    ),
    "too-coarse": "Nothing owned is {limit:.2g} µm or finer: no smoothing with what is here.",
    "align-first:now": "Align the tines first: most scratchy nibs are out of line, not rough.",
    "align-first:look": "Look first: tines level and the slit open under a 10x loupe? Grinding does not mend that.",
    "no-tipping:look": "Look first: is there hard tipping left? Without it the nib's own metal is cut, at once and for good.",
    "no-tipping:seen": "No tipping left: the nib's own metal is cut, at once and for good.",
    "stop-early": "Stop early: tipping does not grow back, and rounded inner edges make a nib skip.",
}

FLOW: Mapping[str, Template] = {
    "flow:number": "It lays down {said} of ink: about {metres:.2g} m of line from a millilitre.",
    "flow:about": (
        "It lays down about {flow:.2g} mg of ink on a metre, between {low:.2g} and {high:.2g}: a line of {needed:.2g} m would make a "
        "number of it on this balance."
    ),
    "flow:bound": (
        "This balance cannot tell from {length:.3g} m of line: less than {high:.2g} mg on a metre is all that can be said. Write "
        "{needed:.2g} m, or weigh on a balance with one more digit."
    ),
    "flow-ceiling": (
        "{flow:.2g} mg on a metre is more than a line {width:.2f} mm wide takes ({most:.2g} at most, from a bold gel ball-pen): look for a "
        "slip in length, masses or width."
    ),
    "flow-span": (
        "{flow:.2g} mg on a metre lies outside the {low:.2g} to {high:.2g} that few pages give for fountain pens: look again at length "
        "and masses."
    ),
    "flow-dried": "Taken off for what dries at an open tip: {dried:.2g} mg, an estimate. An idle twin, the same pen open and not writing, measures it.",
    "flow-change:wetter": "It is wetter than before: {before:.2g} to {after:.2g} mg on a metre, told apart above {wide:.2g}.",
    "flow-change:drier": "It is drier than before: {before:.2g} to {after:.2g} mg on a metre, told apart above {wide:.2g}.",
    "flow-change:same": "Wetter or drier than before cannot be told: {before:.2g} and {after:.2g} mg on a metre, told apart above {wide:.2g}.",
}

FLEX: Mapping[str, Template] = {
    "flex": "It takes {load_said} more to widen its line by {extra:.2g} mm: {said}.",
    "flex-bent": "Load and width do not run straight: a slip in one reading, or the nib nears its limit. Do not load it further.",
    "flex-load:past": "{load:.0f} gf is past what a gold nib is loaded with here ({limit:.0f} gf; two flexible old ones were stopped there).",
    "flex-load:past-taken": (
        "{load:.0f} gf is past what a gold nib is loaded with here ({limit:.0f} gf), and a nib of which nobody said the metal is taken as gold."
    ),
    "flex-load:near": "{load:.0f} gf on a gold nib is more than it is made for; {limit:.0f} gf is the end. Half a millimetre of extra width needs less.",
    "flex-load:near-taken": "{load:.0f} gf is a good deal for a nib that may be gold: {limit:.0f} gf is the end. Say which metal it is.",
    "flex-angle": "The angle of the pen is not said: raised from 45° to 55° the same load bends a nib a fifth less.",
    "flex-printed:agrees": "The printed {printed:.3g} N/mm agrees with these readings.",
    "flex-printed:unit": "The printed {printed:.3g} N/mm took 100 gf as 1 N, 2 % too much: these readings give {found:.4g} N/mm.",
    "flex-printed:other": "The printed {printed:.3g} N/mm is {ratio:.2g} times what these readings give ({found:.4g} N/mm): it cannot be used.",
}

FIT: Mapping[str, Template] = {
    "clearance:touches": "The nib will touch the inner cap: it is {short:.2f} mm too long for it. Do not cap it.",
    "clearance:may-touch": "The nib may touch the inner cap: {room:.2f} mm of room, known to {wide:.2f} mm. Do not cap it; measure both again.",
    "clearance:too-near": "Only {room:.2f} mm between nib and inner cap: below {least:.1f} mm it is not capped (judged).",
    "clearance:near": "{room:.2f} mm between nib and inner cap: less than the {good:.1f} mm that is wanted (judged). Cap it slowly, and look at the tip after.",
    "clearance:clear": "The nib stays {room:.2f} mm clear of the inner cap.",
    "clearance:cannot-tell": (
        "Whether the nib touches the inner cap cannot be told: the section does not stop on its mouth. Put a dab of soft wax on its "
        "bottom, cap it slowly, and look at the dab."
    ),
    "setting:open": "The feed is set between {low:.0f} and {high:.0f} °C; it is soft from {soft:.0f} °C.",
    "setting:open-part": "The feed is set between {low:.0f} and {high:.0f} °C; the end is set by the {part}.",
    "setting:none": "No heat on the feed where it sits: the {part} ({material}) bears {limit:.0f} °C, the feed softens from {low:.0f} °C. Take nib and feed out first.",
    "setting:none-never": "No heat on the feed where it sits: the {part} ({material}) is never warmed. Take nib and feed out first.",
    "setting:never": "This feed is not set by heat: only hard rubber is, and this is {feed}.",
}

SEEN: Mapping[str, Template] = {
    "step-out": "The tips stand {step:.0f} µm apart in height; above {limit:.0f} µm is out: set them level before any abrasive.",
    "cracked": "A crack was seen {where}: no bending, no load, and nothing forced into the slit. A crack is a matter for a nib-maker.",
    "slit-opens": "The slit opens towards the tip: ink breaks there, and more flow does not mend it.",
    "gap-wide": "A gap of {gap:.2f} mm is wide for a firm nib (about 0.025 mm); under a loupe it is known to 0.01 mm at best.",
    "tip-lost": "There is no sound tipping to smooth: what is taken off here is the nib's own metal, or opens the weld.",
    "strokes-past": "{grade}: {strokes} strokes, where the plan ends at {most}. What was taken off is not given back; stop, and write.",
    "strokes-unplanned": "{grade} is not in the plan of smoothing.",
    "strokes-unseen": "{grade}: {strokes} strokes without a look; after {every} wipe, look, write a line.",
    "starts-clean": "Ten clean starts of ten: stop here.",
    "starts-worse": "{now} clean starts of ten, {before} before: the inner edges may be rounding. Stop smoothing.",
    "starts-few": "{starts} clean starts of ten, lifted and dry: a nib that starts late may be over-polished, or its feed too far off.",
    "reach-moved": "The nib stood {before:.1f} mm out of the section and now stands {after:.1f}: measure the inner cap before it is capped.",
    "setting-unmeasured": "The feed was warmed and the temperature was not measured: how close it came to harm cannot be told.",
    "setting-hot": "The feed was warmed to {surface:.0f} °C; {high:.0f} °C is what it and its neighbours bear. Look at each of them before going on.",
    "feed-off": "The sheet falls in between nib and feed: too far apart, it writes dry or stops.",
    "feed-tight": "The sheet is refused between nib and feed: too tight, and the slit is pressed open.",
    "unlike-test": "Before and after were not written with the same ink on the same paper: paper alone moves a line by a tenth.",
    "test-refused": "{sentence}",
    "not-written": "It was worked on and not written with since.",
}

LINES: Mapping[str, Template] = {
    "too-fine": "Lines of {width:.2f} mm and less are too fine for this picture: its blur is {blur:.0f} µm and an element "
    "{px:.0f} µm, and a line should be five blurs wide. Scan at a higher resolution, or write with more ink.",
    "skips": "{count} places where the pen ran on without ink, the longest {longest:.2f} mm.",
    "pale-places": "{count} pale places that are not quite empty: skipping, shading or the two tines' lines side by side "
    "cannot be told apart here. Look at them through the loupe.",
    "ratio-floor": "A ratio of {ratio:.2f} is no more than an even line of this scatter shows ({floor:.2f}).",
    "light-on-dark": "The lines are lighter than their ground, so the page was turned round before measuring.",
    "scale-differs": "The card says {card:.0f} dots an inch, the file {dpi:.0f}: {share:.1%} apart. One of them is wrong; a card is seldom.",
    "bar-differs:file": "The bar says {bar:.0f} dots an inch, the file {other:.0f}: {share:.1%} apart. Was it printed at 100 %? A ruler held against it tells.",
    "bar-differs:card": "The bar says {bar:.0f} dots an inch, the card {other:.0f}: {share:.1%} apart. One of them is wrong; a card is seldom.",
    "scanner:true": "{way}: right within {off:.2%} ± {wide:.1%}. Widths by the file's own dots can be taken.",
    "scanner:cannot-tell": "{way}: {off:.2%} off, ± {wide:.1%}, which cannot be told from {limit:.1%}. Use a longer ruler, or lay a card beside the strokes.",
    "scanner:broad": "{way}: by the file's dots every line reads {off:.2%} too broad (± {wide:.1%}). Lay a card or this ruler beside the strokes.",
    "scanner:narrow": "{way}: by the file's dots every line reads {off:.2%} too narrow (± {wide:.1%}). Lay a card or this ruler beside the strokes.",
    "by-bar:bar": "Scale by a printed bar of {marks} fields over {long:.0f} mm, taken as true to ± {share:.1%}: a printer's own doubt, and the scanner's other way.",
    "by-bar:ruler": "Scale by a ruler: {marks} strokes over {long:.0f} mm, taken as true to ± {share:.1%}; most of that is the scanner's other way.",
    "aslant": "Taken aslant, by {tilt:.0f}°: turned straight by the card, which leaves the scale to ± {share:.1%}.",
    "printed-text": "This looks like a page of print, not of strokes: {count} short marks stand in even rows.",
    "print-left-out": "{count} printed marks, letters in even rows, were left out.",
    "curve-unsaid": "The file does not name the curve of its codes: the usual one is taken, and {wide:.0f} µm of the ± are for it. --curve says which it is.",
    "bilevel": "The file has black and white only, no greys at the edges, and widths come in steps: scan in greys.",
    "coarse": "{dpi:.0f} dots an inch is coarse for lines: scan at 600 or more.",
}

WORDS: Mapping[str, Template] = {**SMOOTHING, **FLOW, **FLEX, **FIT, **SEEN, **LINES}
