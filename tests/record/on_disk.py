"""How a kind's fields are named on disk: what a record written today is read by for good."""

SHORT = {"quantity": "q", "quantities": "qs", "number": "n", "count": "i", "choice": "c", "yes-no": "b", "date": "d", "photo": "p", "items": "l"}  # fmt: skip


def on_disk(module):
    """Every kind of a module as "stage/kind": its field names, with a letter for what is not plain text."""
    kinds = [value for value in vars(module).values() if type(value).__name__ == "Kind"]
    return {
        f"{kind.stage}/{kind.key}": " ".join(
            f"{field.name}:{SHORT[field.kind]}" if field.kind in SHORT else field.name for field in kind.fields
        )
        for kind in kinds
    }
