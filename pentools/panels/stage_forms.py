"""The forms of a stage by their kind, each made when it is first asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from pentools.panels.kind_form import FormHooks, KindForm

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Kind

__all__ = ["StageForms"]


class StageForms(Mapping[str, KindForm]):
    """The forms of a stage.

    Parameters
    ----------
    job : Job
        Where entries go.
    kinds : sequence of Kind
        What is asked.
    hooks : FormHooks
        What every form calls.
    """

    def __init__(self, job: Job, kinds: Sequence[Kind[Any]], hooks: FormHooks) -> None:
        self._job, self._hooks = job, hooks
        self._kinds = {kind.key: kind for kind in kinds}
        self._made: dict[str, KindForm] = {}

    def __getitem__(self, key: str) -> KindForm:
        if key not in self._made:
            kind = self._kinds[key]
            self._made[key] = KindForm(self._job, kind.stage, kind, self._hooks)
        return self._made[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._kinds)

    def __len__(self) -> int:
        return len(self._kinds)

    def title(self, key: str) -> str:
        """What a form is headed with."""
        return self._kinds[key].title
