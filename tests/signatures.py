"""What a public verb takes, as its signature says, against what its sum asks."""

import inspect
import typing

from pentools.answers import asking
from pentools.sums import find


def taken(verb):
    """Names a verb takes, without the underscore that spares Python's own words."""
    names = []
    for parameter in inspect.signature(verb).parameters.values():
        if parameter.kind is parameter.VAR_KEYWORD:
            options = inspect.getmodule(verb).__dict__[parameter.annotation.removeprefix("Unpack[").removesuffix("]")]
            names += list(
                typing.get_annotations(options) if hasattr(typing, "get_annotations") else options.__annotations__
            )
        else:
            names.append(parameter.name)
    return [name.removesuffix("_") for name in names]


def fields(key):
    """Names that the sum asks for, with the bench where it has facts for it."""
    return [field.name for field in find(key).fields] + (["bench"] if key in asking.BENCH_FACTS else [])


def agree(verb, key):
    """Whether the verb takes what the sum asks, no more and no less, and at most eight by name."""
    assert sorted(taken(verb)) == sorted(fields(key))
    assert len(inspect.signature(verb).parameters) <= 8
    return True
