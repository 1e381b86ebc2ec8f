"""The form of a record as a JSON Schema, made from the declarations of the stages.

``python -m pentools.record.schema`` writes it to the standard output; ``docs/record.schema.json`` is that output.
"""

from __future__ import annotations

import json
import sys
from typing import Any

from pentools.fields import MOST, Field, FieldKind
from pentools.record.entries import MERGE_ORDER, RELEASE, WITHDRAWAL
from pentools.record.kinds import Kind
from pentools.record.registry import all_stages

__all__ = ["record_schema", "schema_text"]

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_NUMBER = {"minimum": -MOST, "maximum": MOST}
_PLAIN: dict[FieldKind, dict[str, Any]] = {
    "items": {"type": "array", "items": {"type": "string"}},
    "number": {"type": "number", **_NUMBER},
    "count": {"type": "integer", **_NUMBER},
    "yes-no": {"type": "boolean"},
    "date": {"type": "string", "format": "date", "pattern": r"^\d{4}-\d{2}-\d{2}$"},
    "photo": {"type": "string", "pattern": r"^[^/\\]+\.[A-Za-z]{3,4}$"},
}
_ENVELOPE: dict[str, Any] = {
    "id": {"type": "string", "description": "Unique name of the line."},
    "at": {
        "type": "string",
        "description": "When it was entered: ISO 8601 with zone.",
        "pattern": r"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})$",
    },
    "stage": {"type": "string", "description": "The stage of the job; one that a program does not know is kept."},
    "kind": {"type": "string", "description": "The kind of entry; one that a program does not know is kept."},
    "data": {
        "type": "object",
        "description": "Field name to value; a field left out or null was not measured or said.",
    },
    "note": {"type": "string", "description": "The restorer's remark, for the bench alone."},
    "replaces": {
        "type": ["string", "null"],
        "description": "The id of the line that this one corrects or withdraws; of several, the last line counts.",
    },
    "format": {"type": "integer", "minimum": 1, "description": "Version of the line's form; this is 1."},
}


def record_schema() -> dict[str, Any]:
    """The schema of one line of ``record.jsonl``.

    Returns
    -------
    dict
        JSON Schema, draft 2020-12. Every kind of entry has a definition of its own under ``$defs``, and a kind that
        is not among them is left free.
    """
    kinds = [kind for stage in all_stages() for kind in stage.kinds]
    rules = [_rule(kind.key, f"{kind.stage}/{kind.key}", stage=kind.stage) for kind in kinds]
    rules += [_rule(key, key) for key in (WITHDRAWAL, RELEASE, MERGE_ORDER)]
    return {
        "$schema": DIALECT,
        "title": "One line of a job's record",
        "description": "A record is a text file, one such JSON object a line, only ever added to.",
        "type": "object",
        "required": ["id", "at", "stage", "kind", "data"],
        "properties": _ENVELOPE,
        "allOf": rules,
        "$defs": {
            **{f"{kind.stage}/{kind.key}": _definition(kind) for kind in kinds},
            WITHDRAWAL: _texts("An entry is taken back; it stays in the file.", "reason"),
            RELEASE: _texts(
                "A hold point is released, with a reason; `about` names the one way of mending it is for.",
                "hold",
                "reason",
                more=("about",),
            ),
            MERGE_ORDER: {
                "description": "A merge leaves it: the entries named count in this order, in the places they hold between them.",
                "type": "object",
                "properties": {"order": {"type": "array", "items": {"type": "string"}}},
                "required": ["order"],
            },
        },
    }


def schema_text() -> str:
    """The schema as the file holds it."""
    return json.dumps(record_schema(), indent=1, ensure_ascii=False) + "\n"


def _rule(key: str, name: str, stage: str | None = None) -> dict[str, Any]:
    where = {"kind": {"const": key}} | ({} if stage is None else {"stage": {"const": stage}})
    place = name.replace("~", "~0").replace("/", "~1").replace(" ", "%20")
    return {
        "if": {"properties": where, "required": list(where)},
        "then": {"properties": {"data": {"$ref": f"#/$defs/{place}"}}},
    }


def _definition(kind: Kind[Any]) -> dict[str, Any]:
    fields = {field.name: _value(field) for field in kind.fields}
    required = [field.name for field in kind.fields if field.required]
    return {
        "title": kind.title,
        **({"description": kind.help} if kind.help else {}),
        "x-counts": "every entry" if kind.log else "the newest entry",
        "type": "object",
        "properties": fields,
        **({"required": required} if required else {}),
    }


def _value(field: Field) -> dict[str, Any]:
    about = {"title": field.label, "x-for": field.audience}
    one = _one(field)
    # what is not required may be null, which says the same as leaving it out
    return about | (one if field.required else {"anyOf": [one, {"type": "null"}]})


def _one(field: Field) -> dict[str, Any]:
    if field.kind in ("quantity", "quantities"):
        one = _quantity(field.unit)
        return one if field.kind == "quantity" else {"type": "array", "items": one}
    if field.kind in ("choice", "ticks"):
        chosen = {"enum": [key for key, _ in field.choices]}
        return chosen if field.kind == "choice" else {"type": "array", "items": chosen}
    return _PLAIN.get(field.kind, {"type": "string"})


def _quantity(unit: str) -> dict[str, Any]:
    return {
        "type": "object",
        "required": ["value", "unit"],
        "properties": {
            "value": {"type": "number", **_NUMBER},
            "unit": {"const": unit},
            "u": {"anyOf": [{"type": "number", "minimum": 0, "maximum": MOST}, {"type": "null"}]},
            "typed": {"type": "string"},
        },
    }


def _texts(about: str, *names: str, more: tuple[str, ...] = ()) -> dict[str, Any]:
    return {
        "description": about,
        "type": "object",
        "properties": {name: {"type": "string"} for name in (*names, *more)},
        "required": list(names),
    }


if __name__ == "__main__":
    sys.stdout.write(schema_text())
