"""How a kind's fields are named on disk: what a record written today is read by for good; and what a kind asks."""

import functools
import importlib

from pentools.sums import SUMS

SHORT = {"quantity": "q", "quantities": "qs", "number": "n", "count": "i", "choice": "c", "yes-no": "b", "date": "d", "photo": "p", "items": "l", "ticks": "cs"}  # fmt: skip


def on_disk(module):
    """Every kind of a module as "stage/kind": its field names, with a letter for what is not plain text.

    What an entry holds is kept for the whole state of a record, so nobody may change it.
    """
    kinds = [value for value in vars(module).values() if type(value).__name__ == "Kind"]
    assert [kind.key for kind in kinds if not kind.form.__struct_config__.frozen] == []
    return {
        f"{kind.stage}/{kind.key}": " ".join(
            f"{field.name}:{SHORT[field.kind]}" if field.kind in SHORT else field.name for field in kind.fields
        )
        for kind in kinds
    }


@functools.cache
def of_sums():
    """What the sums ask for: their ranges are theirs."""
    sums = (
        getattr(importlib.import_module(module), name)
        for module, _, name in (at.partition(":") for at in SUMS.values())
    )
    return {(field.name, field.label, field.low, field.high) for one in sums for field in one.fields}


def asked(module):
    """Every kind as "stage/kind": ! at what an entry cannot do without, the range of its own readings; * where the newest stands for all."""

    def words(field):
        own = field.low is not None and (field.name, field.label, field.low, field.high) not in of_sums()
        limits = f":{field.low:g}-{field.high:g}{field.unit}" if own else ""
        return f"{field.name}{'!' if field.required else ''}{limits}"

    kinds = [value for value in vars(module).values() if type(value).__name__ == "Kind"]
    return {
        f"{kind.stage}/{kind.key}{'' if kind.log else '*'}": " ".join(
            text for f in kind.fields if (text := words(f)) != f.name
        )
        for kind in kinds
    }
