"""The tables as they are declared: names with their units, each column once, and a field behind each that is read."""

from pentools.books.tables.columns import ColumnForm
from pentools.books.tables.forms import ENTERED, PLACE, TABLES, WORKED

UNITS = {"mass_g": "g", "mass_u_g": "g", "blank_g": "g", "after_h": "h", "rested_h": "h", "surface_c": "degC",
         "temperature_c": "degC", "minutes": "min", "seconds": "s", "volume_ml": "ml"}  # fmt: skip


def test_every_column_has_a_name_a_form_and_a_meaning_of_its_own():
    assert len(TABLES) == len(ENTERED) + len(WORKED)
    for form in TABLES.values():
        names = [column.name for column in (*PLACE, *form.columns)]
        assert len(set(names)) == len(names), form.name
        assert all(column.form in ColumnForm.__args__ and column.says for column in form.columns)


def test_every_column_is_read_from_a_field_in_the_unit_it_is_named_for():
    for form in ENTERED:
        for column in form.columns if form.kinds else ():
            name = column.field or column.name
            fields = [field for kind in form.kinds for field in kind.fields if field.name == name]
            assert fields or name in ("stage", "told_by"), (form.name, column.name)
            for field in fields:
                assert (field.kind == "quantity") == bool(column.part), column.name
                if field.kind == "quantity":
                    assert field.unit == (
                        UNITS.get(column.name) or column.name.rpartition("_")[2].replace("kpa", "kPa")
                    )
