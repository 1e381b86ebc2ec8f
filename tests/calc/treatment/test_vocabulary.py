"""The words lead into the tables, and none leads two ways."""

from pentools import tables
from pentools.calc.treatment import vocabulary
from pentools.calc.treatment.materials import sealant_name, treatment_name

MATERIALS = {row["material"] for name in ("heat_limits", "compatibility") for row in tables.rows(name)} - {"any"}


def test_every_everyday_name_leads_into_a_table():
    treatments = {row["treatment"] for row in tables.rows("compatibility")}
    sealants = {row["sealant"] for row in tables.rows("joint_sealants")}
    assert set(vocabulary.MATERIALS) == MATERIALS
    assert set(vocabulary.TREATMENTS) == treatments
    for name, texts in vocabulary.TREATMENTS.items():
        assert {treatment_name(text, treatments) for text in texts.split(";")} == {name}
    for name, texts in vocabulary.SEALANTS.items():
        assert {sealant_name(text, sealants) for text in texts.split(";")} <= {name} if name in sealants else {"none", "unknown"}  # fmt: skip


def test_no_word_is_an_everyday_name_of_two_things():
    for words in (vocabulary.MATERIALS, vocabulary.TREATMENTS, vocabulary.SEALANTS):
        every = [(" ".join(part.replace("-", " ").split()).casefold(), name) for name, texts in words.items() for part in (name, *texts.split(";"))]  # fmt: skip
        two = {part for part, name in every if len({other for again, other in every if again == part}) > 1}
        assert two == set()
