"""What a sum asks, in a form that a test can write down: what must be said, the ranges, and what is taken where nothing is said."""

from pentools.sums.base import read_options


def asked_of(chosen):
    """The names that are needed, ``name:low-high unit`` of every field with a range, and the usual values."""
    assert all(isinstance(f.hint, str) and isinstance(f.default, str) for f in chosen.fields)
    return (
        {f.name for f in chosen.fields if f.required is True},
        " ".join(f"{f.name}:{f.low:g}-{f.high:g} {f.unit}".strip() for f in chosen.fields if f.low is not None),
        {f.name: f.default for f in chosen.fields if f.default},
    )


def without_usual(chosen, **typed):
    """The data of an answer where what was not typed is not there at all, as a record hands it over, and as it is typed."""
    fields = {f.name: f for f in chosen.fields}
    bare = {name: fields[name].read(text) for name, text in typed.items()}
    return chosen.run(bare).data, chosen.run(read_options(chosen.fields, typed)).data
