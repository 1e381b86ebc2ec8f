"""A job with a word of its own in every text field of every kind, by who may read it."""

import itertools
from datetime import date, timedelta

from pentools.record.entries import new_entry
from pentools.record.registry import all_stages
from pentools.units import Reading


def plant(job):
    """Fills every field once; gives audience -> {stage/kind/field: word}."""
    words = {"bench": {}, "owner": {}, "everybody": {}}
    count = itertools.count(1)
    for stage in all_stages():
        for kind in stage.kinds:
            data = {}
            for field in kind.fields:
                number = next(count)
                word = f"Plant{number:03d}x{field.name.replace('_', '')}"
                data[field.name] = value = _value(field, word, number)
                if (isinstance(value, str) and value == word) or value == [word]:
                    words[field.audience][f"{stage.key}/{kind.key}/{field.name}"] = word
            note = f"Plant{next(count):03d}xnote"
            words["bench"][f"{stage.key}/{kind.key} note"] = note
            job.record.append(new_entry(stage.key, kind.key, data, note=note))
    return words


def _value(field, word, number):
    match field.kind:
        case "text" | "long text" | "money":
            return word
        case "items":
            return [word]
        case "photo":
            return f"{word}.jpg"
        case "date":
            return (date(2031, 1, 1) + timedelta(days=number)).isoformat()
        case "choice":
            return field.choices[0][0]
        case "yes-no":
            return True
        case "quantity" | "quantities":
            low, high = (1.0 if field.low is None else field.low), (2.0 if field.high is None else field.high)
            reading = Reading(low + 0.37 * (high - low), field.unit).as_json()
            return reading if field.kind == "quantity" else [reading]
        case _:
            return 1 if field.low is None else field.low
