"""Kinds of work: what they show exists, and nothing is lost."""

from pentools.record.registry import STAGES, find_stage
from pentools.record.stages.job.works import FORMS_AT_ONCE, STAGES_AT_ONCE, WORKS, forms_at_once


def test_every_stage_and_form_that_is_named_exists():
    assert set(STAGES_AT_ONCE) <= {key for key, _ in WORKS}
    for stages in STAGES_AT_ONCE.values():
        assert set(stages) <= set(STAGES)
    for stage, forms in FORMS_AT_ONCE.items():
        assert set(forms) <= {kind.key for kind in find_stage(stage).kinds}


def test_forms_keep_the_order_that_is_said_and_a_silent_stage_offers_all():
    assert forms_at_once("fill test", ("setup", "dimensions", "weighing")) == ("weighing", "dimensions")
    assert forms_at_once("limits", ("limit", "nothing left")) == ("limit", "nothing left")
    assert forms_at_once("fill test", ("setup",)) == ("setup",)
