"""What is said of the course of a job."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.words import Template

__all__ = ["WORDS"]

WORDS: Mapping[str, Template] = {
    # the file behind the record
    "file": "{problem}",
    "copy": "Beside the record lies {name}. If it is a copy edited elsewhere, take it over with: pentools merge {job} {name}",
    "aside": "Set aside earlier: {name}.",
    "line-newer": "{file}, line {line:.0f}: it was written in form {form:.0f} by a newer version of the kit. It is kept and passed by; what it corrects or takes back still counts here.",
    "line-nameless": "{file}, line {line:.0f}: the entry has no id. It counts by itself, and nothing can correct it or take it back.",
    "line-double": "{file}, line {line:.0f}: its id {id} stands on line {other:.0f} with unlike content. The later line counts.",
    "line-early": "{file}, line {line:.0f}: it corrects line {other:.0f}, which comes after it. The correction counts all the same.",
    "line-target:unread": "{file}, line {line:.0f}: it corrects or takes back entry {id} on line {other:.0f}, which cannot be read. A correction counts in its place.",
    "line-target:missing": "{file}, line {line:.0f}: it corrects or takes back an entry {id} that is not in the record or cannot be read. A correction counts by itself.",
    "line-circle": "{file}, lines {lines:and}: they correct each other in a circle. The last of them, line {last:.0f}, counts.",
    "line-circle:self": "{file}, line {line:.0f}: it says that it corrects itself. It counts.",
    "line-other": "{file}, line {line:.0f}: it corrects line {other:.0f}, which is of another kind ({was}). It counts under its own kind, and line {other:.0f} no more.",
    "line-more": "{file}: {count:.0f} more lines are odd in the same way.",
    "rights": "{names:and} can be read by other people who use this machine. Make them yours alone with: pentools check {job} --mend",
    "unknown:stage": "An entry of {at} belongs to a stage “{stage}” that this version does not know. It is kept.",
    "unknown:kind": "{title}: an entry of kind “{kind}” is not known to this version. It is kept.",
    "value:unread": "{title}: an entry cannot be read, so it is passed by. {reason}",
    "value:missing": "{title}, {kind}, {at}: not filled in: {names:and}.",
    "sum": "{title}: {problem}",
    "released": "The hold on {step} was released: {reason}",
    # entries past a hold point
    "heat-held": "Opening: heatings are logged although {reason}.",
    "soak-held": "Cleaning: baths are logged although {reason}.",
    "polish-held": "Finish: steps are logged although {reason}.",
    "sealant-held": "Seal: sealant is logged although {reason}.",
    "repair-held": "Parts mended: a repair is logged although {reason}.",
    "send out-held": "Parts mended: a part was sent out although {reason}.",
    "nib work-held": "The nib: work on it is logged although {reason}.",
    "flex-held": "The nib: a test of flex is logged although {reason}.",
    "close-held": "Back together: steps are logged although {reason}.",
    "release-held": "Release: the pen is released although {reason}.",
    "ceiling": "Work log: {reason}.",
    "price-past": "Release: the price of {price} is past the agreed ceiling of {ceiling} (ask the owner first).",
    # money
    "cost": "Work log: “{text}” cannot be held against the ceiling in {currency}.",
    "limit-raised": "Agreement: the ceiling of {ceiling} is above the limit of {limit} that the owner named; until the owner says yes to the proposal the limit counts.",
    # intake
    "owed:open": "Owed before it goes home: {names:and}.",
    "owed:ended": "The job has ended, and this is not on record: {names:and}.",
    "not-asked-to-publish": "Intake: nobody asked whether the story may be published, so it is not.",
    "price-not-named": "Release: no price is named, although {ceiling} was agreed as the most.",
    "arrival-mass": "Intake: the pen was not weighed as it arrived, so gains and losses of parts cannot be told later.",
    "system-missing": "Intake: the filling system is not named.",
    "return-part": "Intake, coming back: which part failed is not said, so neither its lot nor the way it was mended can be counted.",
    "return-covered": "Intake, coming back: whether it is covered is not said.",
    "return-in-time": "Intake, coming back: it is said not to be covered, though it came back before {until} and what was put in or done failed.",
    "return-itself": "Intake, coming back: a job cannot go on from itself.",
    "stranger": "{place} has “{word}”, {about}: a page for everybody is held until it is taken out, or its reason stands under Intake, “Shown all the same”.",
    # agreement
    "departure:refused": "Agreement: the owner said no to this departure: {what}",
    "departure:open": "Agreement: the owner has not said yes to this departure: {what}",
    "permanent": "Agreement, {part}: it cannot be undone, and that the owner was told so is not on record.",
    "alternatives": "Agreement, {part}: {missing:and} {verb} not weighed.",
    "authority": "Agreement: the yes to {action} came from a person who may not decide; it does not count.",
    "answer": "Agreement: work is logged, and no answer of the owner is on record.",
    "estimate": "Agreement, {title}: {problem}",
    # work log
    "timer-running": "Work log: a timer is still running. Stop it, or withdraw its start.",
    "timer-long": "Work log: a timer ran for {hours:.1f} h at one go. Was it forgotten?",
    # posting
    "posted-early": "Posting: the pen was sent, and how the job ended is not on record.",
    "posted-full": "Posting: there is ink or water in it. It leaks on the way, and stains what it lies in.",
    "insured-short": "Posting: insured for {insured}, and {declared} was declared at intake.",
    "insured-basis": "Posting: on what basis it is insured is not said: who valued it, and when.",
    "parcel-number": "Posting: {carried} has a number, and none is noted.",
    "parcel-light": "Posting: the parcel weighs {parcel:.4g} g and the pen in it {pen:.4g} g. Is that right?",
    "arrived:damaged": "Posting: it arrived damaged. Keep box and pictures, and ask the carrier before anything is mended. Said: {said}",
    "arrived:lost": "Posting: it did not arrive. Ask the carrier with its number, within the carrier’s own term. Said: {said}",
    "arrived-before": "Posting: it arrived on {arrived}, before it was sent on {sent}.",
    # limits, pictures, release
    "limits-contradict": "Limits: things left are listed, and it is also stated that nothing was left. Withdraw one of the two.",
    "makeshift-left": "Limits: it is stated that nothing was left, and what holds the {parts:and} is a makeshift. Withdraw the statement.",
    "photo-missing": "Pictures: photos/{photo} is not there.",
    "photo-unread": "Pictures: photos/{photo} stands on no page. {why}",
    "views:after": "Pictures: shown before the work and not after it: {views:and}.",
    "views:before": "Pictures: shown after the work and not before it: {views:and}.",
    "views:both": "Pictures: shown before the work and not after it: {late:and}; after it and not before: {early:and}.",
    "no-before": "Pictures: none is marked as taken before the work.",
    "no-after": "Pictures: none is marked as taken after the work.",
    "open-job": "Release: the job is open; a page made now says so at its head.",
    "ending-limits:done": "Release: the result is “done”, but things left are listed. Is it “done with limits”?",
    "ending-limits:none": "Release: the result is “done with limits”, but no limit is written down.",
    # what guidance asks for
    "report-must": "Report: Conservation guidance asks for {count} that {verb} not on record: {names}. What does not apply can be said so under Proposal and agreement, with a reason.",
    "report-should": "Report: It would be good to have, by guidance or by this kit: {names}.",
}
"""Topic to words; a stage's name stands before what is said of it."""
