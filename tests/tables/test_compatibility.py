"""The materials by their names: what people type is looked up among them."""

from __future__ import annotations

from pentools import tables
from pentools.tables.compatibility import material_names


def test_each_material_is_named_once_in_the_tables_order() -> None:
    rows = [row["material"] for row in tables.rows("compatibility")]
    names = material_names()
    assert len(names) == len(set(names)) < len(rows)
    assert [rows.index(name) for name in names] == sorted(rows.index(name) for name in set(rows))
