"""What is said of seals, sacs, threads and tools."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pentools.numbers import in_words, percent
from pentools.words import Template

__all__ = ["WORDS"]


_REASONS = {
    "loose": "it is loose on its seat",
    "stretch": "it is stretched a good deal",
    "squeeze-low": "in the worst case it touches only lightly",
    "squeeze-high": "in the worst case it is firm",
    "fill": "the groove may be full",
    "eccentric": "a head resting on the wall may take the touch from the far side",
}


def _reservation(*, ring: str, reasons: Sequence[str]) -> str:
    said = in_words([_REASONS[reason] for reason in dict.fromkeys(reasons)]) or "its own size decides, so measure it"
    return f"{ring} may be tried, with a reservation: {said}. The dry trial decides; seal nothing before it pulls back."


_MEASURE = "Measure this ring: by its tolerance it may squeeze anything from {least:+.0%} to {most:+.0%}"

RINGS: Mapping[str, Template] = {
    "odd-reading": (
        "Reading {place} of {count}, {value:.2f} mm, is the odd one: the others lie from {low:.2f} to {high:.2f} mm "
        "(Dixon's Q {q:.2f}, odd above {limit:.2f}). Measure there again: a slip, a burr or old rubber. "
        "Without it the bore would be {mean:.2f} mm, {ovality:.2f} mm out of round."
    ),
    "no-contact:never": "It cannot touch both walls: the section is {short:.2f} mm too thin.",
    "no-contact:likely": "It most likely does not touch both walls (squeeze {nominal:.1%}, at worst {least:.1%} to {most:.1%}).",
    "contact-lost": "In the worst case it does not touch at all (squeeze {nominal:.1%}, at worst {least:.1%} to {most:.1%}).",
    "squeeze-low": "In the worst case it hardly touches (squeeze {nominal:.1%}, at worst {least:.1%} to {most:.1%}); at least {limit:.1%} is wanted.",
    "squeeze-high:far": "Far too tight for this duty (squeeze {nominal:.1%}, at worst {least:.1%} to {most:.1%}); at most {limit:.1%} is wanted.",
    "squeeze-high:may": "It may come out too tight (squeeze {nominal:.1%}, at worst {least:.1%} to {most:.1%}); at most {limit:.1%} is wanted.",
    "squeeze:right": "Right in the band: squeeze {nominal:.1%}, at worst {least:.1%} to {most:.1%}.",
    "squeeze:light": "Light, but within bounds: squeeze {nominal:.1%}, at worst {least:.1%} to {most:.1%}; {low:.1%} to {high:.1%} is the band.",
    "squeeze:firm": "Firm, but within bounds: squeeze {nominal:.1%}, at worst {least:.1%} to {most:.1%}; {low:.1%} to {high:.1%} is the band.",
    "loose:folds": "Loose on the {seat} by {by:.2f} mm ({loose:.1%}): it will fold when it goes in.",
    "loose:twists": (
        "Loose on the {seat} by {by:.2f} mm ({loose:.1%}): it may twist or fold as it goes in. Grease it, turn it in slowly "
        "and look at it all round."
    ),
    "loose:little": "Loose on the {seat} by {by:.2f} mm ({loose:.1%}): put it in without twisting it.",
    "stretch:cracks": (
        "Stretched {stretch:.1%} over the {seat}, more than {limit:.1%}: it ages fast and may crack; it costs {loss:.1%} of the "
        "section ({pessimist:.1%} by the aerospace curve)."
    ),
    "stretch:much": (
        "Stretched {stretch:.1%} over the {seat}, more than {limit:.1%}: it ages sooner; it costs {loss:.1%} of the section "
        "({pessimist:.1%} by the aerospace curve)."
    ),
    "stretch:some": (
        "Stretched {stretch:.1%} over the {seat}; it costs {loss:.1%} of the section ({pessimist:.1%} by the aerospace curve)."
    ),
    "outside:pressed": "The housing presses its outside together by {outside:.1%}: see that it lies flat all round.",
    "outside:free": "Its outside does not touch the housing before the rod is in.",
    "fill:unknown": "The groove's width was not measured, so its fill is not known.",
    "fill:narrow": "The groove of {width:.2f} mm is too narrow for it: it would fill {fill:.1%} of it.",
    "fill:over": "The groove of {width:.2f} mm may be too narrow for it: in the worst case it fills {most:.1%}.",
    "fill:full": "It may fill {most:.1%} of the groove; above {limit:.1%} there is no room to swell.",
    "fill:close": "A full groove: it may fill {most:.1%} of it.",
    "fill:wide": "The groove is wide for it (fill {fill:.1%}): it can wander at the turn of the stroke.",
    "eccentric:loses": (
        "When the {rests} rests on the wall, the far side loses contact (offset up to {offset:.2f} mm)."
    ),
    "eccentric:may": (
        "When the {rests} rests on the wall, the far side may lose contact in the worst case (offset up to {offset:.2f} mm)."
    ),
    "measure-ring:fits": f"{_MEASURE}; at its nominal size it fits.",
    "measure-ring:offered": f"{_MEASURE}; at its nominal size it may be tried.",
    "measure-ring:decides": f"{_MEASURE}; its own size decides.",
    "measure-first": ("{ring} fits if it measures what the table says: measure inside and section before it goes in."),
    "dash-range": "A chart of moving seals leaves this dash size out (it allows 004 to 012): it rolls more easily.",
    "drag:stiff": (
        "Estimated drag {drag:.1f} N is above the {pull:.1f} N that a full vacuum pulls: it will feel stiff and will not "
        "spring back."
    ),
    "drag:sticks": (
        "Estimated force to start it, up to {drag:.1f} N, is above the {pull:.1f} N that a full vacuum pulls: it may stick "
        "after a rest."
    ),
    "fit": "{ring} fits in the worst case. Try it dry before any sealant.",
    "reservation": _reservation,
    "nothing-fits": "No ring of this list fits; {ring} comes nearest.",
    "remedy:lasting": (
        "{ring} would fit if {changes:and}, in a groove at least {width:.2f} mm wide. What is turned away from an original "
        "part cannot be undone: ask the owner, or make a copy of it."
    ),
    "remedy:undoable": "{ring} would fit if {changes:and}, in a groove at least {width:.2f} mm wide.",
    "wanted-ring": "Without touching the pen: a ring of about {inside:.2f} × {section:.2f} mm would do; look for one near it.",
    "ovality": ("The bore is {ovality:.2f} mm out of round, more than one reading is unsure: the ring must follow it."),
    "other-list": "Among the {name}, {ring} does: {verdict}.",
    "elastomer": "{rubber} suits {media:and} best (its worst rating there is {worst}); lubricant: {grease:or}.",
}


def _nipple_large(*, nipple: float, stretch: float, guess: bool, better: str) -> str:
    wall = " (wall from memory: measure it)" if guess else ""
    ahead = f" Of those sold, {better} goes." if better else " A necked sac is wanted, or a thinner nipple sleeve."
    return f"The nipple of {nipple:.2f} mm stretches it by {percent(stretch)}{wall}: it may split.{ahead}"


def _nipple_small(*, nipple: float, guess: bool) -> str:
    wall = " (wall from memory: measure it)" if guess else ""
    return (
        f"The nipple of {nipple:.2f} mm hardly stretches this sac{wall}: it slips off. Build the nipple up with a sleeve "
        "cut from a smaller sac."
    )


SACS: Mapping[str, Template] = {
    "old-rubber:clean": "Clean the old rubber out of the barrel first: what sticks to the wall makes the bore read small.",
    "old-rubber:gained": "Cleaning gained {gained:.2f} mm of bore, {sizes:.1f} sac sizes: the bore after cleaning is used.",
    "old-rubber:smaller": "The bore after cleaning is {by:.2f} mm smaller than before: measure again.",
    "old-rubber:asked": (
        "Was old rubber cleaned out first? What sticks to the wall makes the bore read small: measure before and after."
    ),
    "too-thick": "It does not go in: {by:.2f} mm too thick for {where}.",
    "rubs": "It rubs on {where}: only {air:.2f} mm of air all round.",
    "close": "A close fit, {air:.2f} mm of air all round; {proposed:.2f} mm is proposed, and small is the safer side.",
    "no-bar": "No press bar was counted: if there is one, give what it takes of the bore.",
    "limp": "Sizes from {number} up are limp, a repairer finds: they spring back poorly.",
    "measure-sac:number": "Measure the sac itself: its number has two readings, and batches run small.",
    "measure-sac:size": "Measure the sac itself: what is sold differs from batch to batch.",
    "nipple-small": _nipple_small,
    "nipple-large": _nipple_large,
    "nipple-rule": (
        "By the rule of thumb the sac's number is at most the nipple in 64ths, {number:.1f}; it still grips by {stretch:.0%}."
    ),
    "adhesive:latex": "Shellac on the nipple; dust the sac with talc or graphite; no oil, no grease, no ammonia flush on it.",
    "adhesive:silicone": (
        "Shellac alone does not hold silicone. Silicone adhesive does, cured 24 h with the joint in the open, out of a "
        "celluloid barrel and off metal, for it gives off acetic acid; or bind the sac on its nipple with thread over shellac."
    ),
    "adhesive:pvc": "Shellac on the nipple holds soft vinyl (judged); no acetone and no solvent cement near it.",
    "adhesive:pleated": "One thin coat of shellac at the neck; no oil, no grease, no ammonia flush on it.",
    "gas": "Ink dries out through a silicone sac in days, a repairer finds.",
    "plasticiser": (
        "Soft vinyl may give off plasticiser that softens celluloid and polystyrene, nipples among them (trade pages): not "
        "in those pens."
    ),
    "uncut": "A pleated sac is made for its pen and is not cut; open the pleats and dust them with talc before it goes in.",
    "pneumatic": "In a guard the sac only just reaches the end: rather short than long (a public page).",
    "number-only": "Worked out with {number:g}/64 in = {nominal:.2f} mm: measure the sac, batches run small.",
    "number-off": "Sold as {number:g} ({nominal:.2f} mm), it measures {measured:.2f} mm: the measured size is used.",
}

CUT: Mapping[str, Template] = {
    "trial:washer": (
        "Try it dry before any sealant: no suction means one size up; catching or folding means one size down (common "
        "practice, no source)."
    ),
    "trial:packing": (
        "Grease each ring; close the housing only until the rod drags evenly, and try it dry of sealant first."
    ),
    "thickness": "{best:.2f} mm sheet is best; {usable:.2f} mm (1/32 in) is usable (a repairer's page).",
    "overhang:flips": (
        "It stands {overhang:.2f} mm out over the backing washer: it will flip over on the stroke. Use a larger backing "
        "washer."
    ),
    "overhang:stiff": "It stands only {overhang:.2f} mm out over the backing washer: it cannot flex.",
    "ovality:washer": ("The bore is {ovality:.2f} mm out of round: the washer must follow it; prefer a cup or a ring."),
    "sanding": (
        "Cut it to {cut:.1f} mm and sand it in on a mandrel, P240 to P360, then finer; stop early: the usual failure is too "
        "small."
    ),
    "soak": (
        "Cut with the grain along the bore; soften it in hot water to fit it; then about 30 s in hot candle wax, or silicone "
        "grease. Keep a little water in an idle pen."
    ),
    "hot-wax": (
        "Hot wax and boiling water burn, and wax vapour catches fire: warm it in a water bath with no flame near, follow "
        "local codes; ask a licensed professional."
    ),
    "thin": "Only {wall:.2f} mm of cork is left round the seat: it will crumble. Consider O-rings on a turned head.",
    "pressed": (
        "{count} rings of {thickness:g} mm would be pressed by {pressed:.0%}: the rod will bind. Use thinner rings."
    ),
    "slits": (
        "Slit each ring once and set the slits apart, 180° for two, 120° for three or more, so that the rod can stay in."
    ),
    "felt": "Felt needs grease all through, or it wicks ink.",
}


def _force(end: str) -> str:
    return (
        f"Hold the block, wear eye protection, and tap lightly. {end} Follow local codes; ask a licensed professional."
    )


TOOLS: Mapping[str, Template] = {
    "tool:tube": (
        "A tube {inside:.2f} mm inside and {outside:.2f} mm outside does it, a wall of {wall:.2f} mm; deburr its end, no "
        "sharp edge on the shoulder."
    ),
    "tool:punch": "A punch of {outside:.2f} mm does it; break its edge, no sharp corner on the shoulder.",
    "no-tool": (
        "No tube fits: it would have to be over {inside:.2f} mm inside and under {outside:.2f} mm outside with a wall of "
        "{wall:.2f} mm that stands. Try from the front."
    ),
    "block": (
        "The block cannot both let {front:.2f} mm through and leave a ledge under {section:.2f} mm: use a split block shaped "
        "to the section."
    ),
    "force:unnamed": _force(
        "A feed that does not move wants time, not force: find out what holds it. Soak nothing before the section's material "
        "is named, for water ruins some."
    ),
    "force:soak": _force("A feed that does not move wants a longer soak of section and feed, not more force."),
    "force:short": lambda *, limit: _force(
        "A feed that does not move wants time, not force; water only as far as the section bears it"
        f"{f' ({limit})' if limit else ''}, and its feed alone from the tail, a drop at a time."
    ),
    "force:dry": _force(
        "A feed that does not move wants time, not force, and this section bears no soak: find out what holds it, and sooner "
        "leave it as it is than force it."
    ),
}

THREADS: Mapping[str, Template] = {
    "own-thread": (
        "Nothing standard is near: probably its maker's own thread. The closest, {first}, is off by {off:+.3f} mm in pitch."
    ),
    "starts": (
        "A bad match: {counted} starts were counted, and the nearest by pitch, {first}, has {starts}. Probably its maker's own "
        "thread; count the starts again on the end face."
    ),
    "ambiguous": (
        "{names:and} cannot be told apart by these readings; pitch over ten crests, the diameter and the flank angle decide."
    ),
    "nearest": (
        "{first} is nearest, clear of the next, {second}, by {margin:.1f} standard uncertainties. Check with a gauge before "
        "cutting."
    ),
    "multi-start": (
        "{starts} starts: it advances {lead:.2f} mm a turn (lead), though its crests stand {pitch:.3f} mm apart (pitch)."
    ),
    "count-starts": (
        "Pitch is not lead: count the starts on the end face. With three starts it advances three pitches a turn."
    ),
    "one-crest": (
        "One pitch by itself is known to {u:.3f} mm only: measure from the first crest to the eleventh, or over as many as "
        "there are."
    ),
}


def _named(*, words: str, signs: Sequence[str], cleared: Sequence[str]) -> str:
    others = f"; {in_words(cleared)} {'is' if len(cleared) == 1 else 'are'} cleared" if cleared else ""
    return f"The pattern points to {words}: {', '.join(signs)}{others}."


def _ahead(text: str, how: str) -> str:
    end = f"Next: {how}." if how else "No test is left that separates them: change the cheaper seal and repeat."
    return f"{text} {end}"


def _close(*, first: str, second: str, how: str) -> str:
    return _ahead(f"Not told yet: {first} and {second} stand too close.", how)


def _one(*, how: str) -> str:
    return _ahead("One test does not name a seal.", how)


def _fine(*, how: str) -> str:
    return _ahead("Nothing wrong in this one test; one test does not clear a pen.", how)


def _unexplained(*, seen: Sequence[str], how: str) -> str:
    shown = in_words(seen)
    return _ahead(
        f"It is not clear: {shown} is a bad sign that no part of this filling system explains. Look again.", how
    )


FAULTS: Mapping[str, Template] = {
    "no-tests": "No test yet. First: {how}.",
    "one-test": _fine,
    "all-clear": "Nothing wrong in {count} tests.",
    "not-told:one": _one,
    "not-told:close": _close,
    "unexplained": _unexplained,
    "suspect": _named,
}  # fmt: skip

PROOF: Mapping[str, Template] = {
    "not-told:wait": (
        "No loss that this gauge can tell, but a half-life of {slowest:.1f} min would not show either: wait longer."
    ),
    "holds:none": "It holds: no loss that this gauge can tell; any half-life is above {slowest:.0f} min.",
    "holds:long": "It holds: half the vacuum would take {half:.0f} min to go.",
    "slow": (
        "A slow loss: half the vacuum goes in {half:.1f} min. Look at hose and gauge first: clamp them off and repeat."
    ),
    "decays": "It does not hold: half the vacuum goes in {seconds:.0f} s.",
    "stiff": (
        "A drag of {drag:.1f} N holds against the {pull:.1f} N of a full vacuum: it cannot spring back, tight or not. Watch "
        "bubbles and vacuum instead."
    ),
    "spring-back:returns": "It came back {share:.0%} of the way: head and packing held.",
    "spring-back:part": (
        "It came back only {share:.0%} of the way: a slow leak or much drag. This alone does not say which seal."
    ),
    "spring-back:none": (
        "It did not come back: a leak at head or packing, or too much drag. This alone does not say which."
    ),
    "held": "{size:.2f} mm pulls back: the dry fit has passed. Seal nothing before it is entered.",
    "next": "Try {size:.2f} mm next, dry; {left} sizes are left between.",
    "contradiction": (
        "{small:.2f} mm was “{small_was}”, yet the larger {large:.2f} mm was “{large_was}”. Measure both again; look for a "
        "nick, a dry bore or a bore that is not round."
    ),
    "gap": (
        "Nothing in stock lies between {small:.2f} mm (too small) and {large:.2f} mm (too stiff): cut or order about "
        "{between:.2f} mm."
    ),
    "too-small": "Everything in stock is too small: a size above {size:.2f} mm is wanted.",
    "too-large": "Everything in stock is too stiff: a size below {size:.2f} mm is wanted.",
}


def _rated(verb: str, name: str, medium: str, note: str, certainty: str) -> str:
    return f"{name} is {verb} {medium}{f': {note}' if note else ''} ({certainty})."


def _poor(*, name: str, medium: str, note: str, certainty: str) -> str:
    return _rated("poor in", name, medium, note, certainty)


def _not_known(*, name: str, medium: str, note: str, certainty: str) -> str:
    return _rated("not known in", name, medium, note, certainty)


def _fair(*, name: str, medium: str, note: str, certainty: str) -> str:
    return _rated("only fair in", name, medium, note, certainty)


STAGE: Mapping[str, Template] = {
    "dry-fit": "{sentence}",
    "measure": "{sentence}",
    "test": "{sentence}",
    "no-test": "Seal: nothing was tested since the last trial or sealant.",
    "shellac-silicone": (
        "The silicone sac is noted with shellac alone, which does not hold it: silicone adhesive, or thread bound over it."
    ),
}

RUBBER: Mapping[str, Template] = {
    "poor:known": _poor,
    "poor:unknown": _not_known,
    "fair": _fair,
    "moving": "Silicone abrades and tears: not for a seal that moves.",
    "use": "{name}: {note} ({certainty}).",
}

WORDS: Mapping[str, Template] = {
    **RINGS, **SACS, **CUT, **TOOLS, **THREADS, **FAULTS, **PROOF, **STAGE, **RUBBER,
    # seats that no table has sizes for
    "seat-stretch:fits": "It stretches the mouth by {value:.0%}; {low:.0%} to {high:.0%} is what a sac’s mouth bears (judged).",
    "seat-stretch:loose": "It stretches the mouth by {value:.0%}, less than {low:.0%}: it slips off. A smaller mouth, or a sleeve on the neck.",
    "seat-stretch:tight": "It stretches the mouth by {value:.0%}, more than {high:.0%} (judged for sacs): it may split. A wider mouth.",
    "seat-stretch:open": "It stretches the mouth by {value:.0%}, and the callipers leave open whether that holds: put it on dry and pull.",
    "seat-pressed:fits": "It is {value:.2f} mm wider than its hole. How much the part bears is in no table: push by hand, and stop where it binds.",
    "seat-pressed:loose": "It is {value:.2f} mm narrower than its hole: it falls out. A wider tube, or a turn of thin film round it.",
    "seat-pressed:open": "Tube and hole differ by {value:.2f} mm, less than the callipers tell apart: try it dry.",
    "seat-liner:fits": "The section’s lip is {value:.2f} mm wider than the liner’s mouth and comes to it before the cap stops.",
    "seat-liner:loose": "The section’s lip is {value:.2f} mm narrower than the liner’s mouth: it passes through, and nothing closes there.",
    "seat-liner:open": "Lip and liner differ by less than the callipers tell apart. Soot the lip, close the cap and look for the ring it leaves.",
    "seat-liner:reach": "The section’s lip is {value:.2f} mm wider than the liner’s mouth; whether it comes to it is not measured: soot the lip, close the cap and look for the ring it leaves.",
    "seat-liner:short": "The cap stops {gap:.2f} mm before the section’s lip comes to the liner: nothing closes there.",
}  # fmt: skip
