"""The cleaning panel: the limit before the bath, the clock while it runs, and when the part is dry."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape
from typing import TYPE_CHECKING, Any, ClassVar

import ipywidgets as widgets

from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.calc.treatment.materials import UNKNOWN
from pentools.errors import HoldError, InputError
from pentools.panels.caution_box import CautionBox
from pentools.panels.guard import guarded
from pentools.panels.sheet_part import Sheet
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.style import table_html
from pentools.panels.ticker import Ticker
from pentools.record.entries import now
from pentools.record.forms import Form
from pentools.record.kinds import Kind, as_dict
from pentools.record.stages.common import PARTS
from pentools.record.stages.treatment.baths import (
    BATHS,
    SoakRun,
    bath_of,
    cleaning_findings,
    cleaning_sentence,
    drying_of,
    first_words,
    mix_of,
    past_limit,
    running_soaks,
    soaks_of,
)
from pentools.record.stages.treatment.cleaning_kinds import (
    BATH,
    FLUSH_MIX,
    SOAK_STARTED,
    Bath,
    FlushMix,
    Rinse,
    SoakEnded,
    SoakStarted,
)
from pentools.record.stages.treatment.facts import cautions_of, cautions_read, limit_for, materials_of
from pentools.sums.treatment.mix import MIX

if TYPE_CHECKING:
    import datetime as dt

    from pentools.record.entries import Entry
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["CleanPanel"]

TICK_S = 10.0
_WET_KINDS = ("bath", "soak started", "rinse")


class CleanPanel(StagePanel):
    """Baths, soaks with their clocks, the flush mix, and drying."""

    kind_holds: ClassVar[Mapping[str, str]] = dict.fromkeys(_WET_KINDS, "soak")

    def __init__(self, job: Job, stage: Stage, sheet: Sheet) -> None:
        super().__init__(job, stage, sheet)
        self.cautions = CautionBox(job, self._saved)
        self.look = widgets.Button(description="Look at the clock", layout={"align_self": "flex-start"})
        self.look.on_click(guarded(self.status, self._refresh_result))
        self.clock = widgets.HTML()
        self.ticker = Ticker(guarded(self.status, self._refresh_result), TICK_S)
        self.above.children = (self.cautions.widget, widgets.HBox([self.clock, self.look]))
        self.verdicts = {key: widgets.HTML() for key in ("bath", "soak started")}
        for key, shown in self.verdicts.items():
            form = self.forms[key]
            form.above_button.children = (shown,)
            for name in ("part", "bath"):
                form.boxes[name].input.observe(guarded(form.status, self.refresh_forms), "value")
        self.mix_shown = widgets.HTML()
        mix = self.forms["flush mix"]
        mix.below_button.children = (self.mix_shown,)
        for box in mix.boxes.values():
            box.input.observe(guarded(mix.status, self._show_mix), "value")
        self.refresh()

    # what is shown before anything is saved ----------------------------------------------------------------

    def refresh_forms(self) -> None:
        """Show the limit of what is chosen, and the cautions that go with it."""
        if not hasattr(self, "mix_shown"):
            return
        actions = {"cold water soak"}
        for key, shown in self.verdicts.items():
            values, _ = self.job.read(
                self.forms[key].kind, {name: box.text for name, box in self.forms[key].boxes.items()}
            )
            part, bath = values.get("part"), values.get("bath")
            shown.value = ""
            if part is not None and bath is not None:
                limit = limit_for(self.job, str(part), str(bath))
                word = "pt-error" if limit.verdict == "never" else "pt-hint"
                shown.value = f'<p class="{word}">{escape(first_words(limit))}</p>'
                actions.add(str(bath))
        used = [logged.values.bath for logged in self.job.log(BATH)]
        used += [logged.values.bath for logged in self.job.log(SOAK_STARTED)]
        actions |= {bath for bath in used if bath is not None}
        if self.job.newest(FLUSH_MIX).ammonia is not None:
            actions.add("flush mix soak")
        self.cautions.show(cautions_of(self.job, actions), cautions_read(self.job))
        self._show_mix()

    def _show_mix(self) -> None:
        form = self.forms["flush mix"]
        values, errors = self.job.read(form.kind, {name: box.text for name, box in form.boxes.items()})
        if values.get("ammonia") is None:
            self.mix_shown.value = f'<p class="pt-hint">Type the bottle’s strength and the mix stands here. Never with bleach. {CLOSING_LINE}</p>'
            return
        try:
            answer = MIX.run({field.name: values.get(field.name) for field in form.kind.fields})
        except InputError as error:
            self.mix_shown.value = f'<p class="pt-error" role="alert">✗ {escape(str(error))}</p>'
            return
        wrong = "".join(f'<p class="pt-error">✗ {escape(str(error))}</p>' for error in errors.values())
        self.mix_shown.value = f"<h3>This mix</h3><p>{escape(answer.sentence)}</p>{wrong}"

    def _saved(self, entry: Entry) -> None:
        """A yes or no of one rinse is not that of the next; a bath past its limit says so beside the button."""
        if entry.kind == "rinse":
            self.forms["rinse"].boxes["wets"].text = ""
        super()._saved(entry)
        if entry.kind in ("bath", "soak ended"):
            ended = next(((s.part, s.bath, s.minutes, "") for s in soaks_of(self.job) if s.ended == entry.time), None)
            done = bath_of(self.job, entry.id) or ended
            past = past_limit(self.job, *done[:3]) if done is not None else None
            if past is not None:
                self.forms[entry.kind].status.failed(f"saved {entry.time:%H:%M:%S}, but look again: {past.text}")

    # what is refused ---------------------------------------------------------------------------------------

    def check(self, kind: Kind[Any], form: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """No bath for a part that is not named or never takes it; a soak ends only where one runs."""
        if isinstance(form, Bath | SoakStarted) and form.part is not None:
            self._check_wet(form.part, form.bath or "cold water soak")
        if isinstance(form, Rinse) and form.part is not None:
            self._check_wet(form.part, "cold water soak")
        if isinstance(form, SoakStarted | SoakEnded):
            running = any(soak.part == form.part for soak in running_soaks(self.job))
            label = dict(PARTS).get(form.part or "", "")
            if running and isinstance(form, SoakStarted):
                raise InputError("Part", "out of its bath before the next one", label, "Save “A soak ends” first.")
            if not running and isinstance(form, SoakEnded):
                raise InputError("Part", "one that is in a bath now", label)
        if isinstance(form, FlushMix):
            stops = [f.text for f in MIX.run(as_dict(FLUSH_MIX, form)).findings if f.level == "stop"]
            if stops:
                raise HoldError(" ".join(stops))

    def _check_wet(self, part: str, bath: str) -> None:
        label = dict(PARTS)[part]
        unnamed = UNKNOWN in materials_of(self.job, part)
        self.refuse("soak", f"the material of the {label} is not named (name it at Opening)" if unnamed else "")
        if unnamed:
            return  # released with a reason: the bench answers for it
        limit = limit_for(self.job, part, bath)
        if limit.verdict == "never":
            raise HoldError(f"Refused. {limit.sentence} The bench can overrule that with a reason, at Opening.")

    # result ------------------------------------------------------------------------------------------------

    def result(self) -> PanelResult:
        """The clock that is due first in a sentence, and all clocks, baths and drying as tables."""
        moment = now()
        running = running_soaks(self.job)
        if hasattr(self, "clock"):
            self.look.layout.display = "" if running else "none"
            self.ticker.run(bool(running))
            self.clock.value = f'<p class="pt-hint">As of {moment:%H:%M:%S}.</p>' if running else ""
        labels, baths = dict(PARTS), dict(BATHS)
        soaks = [
            (
                labels[soak.part], baths[soak.bath], f"{soak.started:%d %b %H:%M}",
                "running" if soak.ended is None else f"{soak.ended:%H:%M}", f"{soak.clock(moment).elapsed_min:.0f} min",
                "none on record" if soak.limit_min is None else f"{soak.limit_min:g} min", _phase(soak, moment),
            )
            for soak in soaks_of(self.job)
        ]  # fmt: skip
        head = ("Part", "In what", "From", "To", "So far", "Limit", "State")
        drying = [(labels[dry.part], f"{dry.until:%d %b %H:%M}", "dry" if dry.over else "still wet") for dry in drying_of(self.job, moment)]  # fmt: skip
        tables = table_html("Soaks", head, soaks) + table_html(
            "Drying", ("Part", "Next step not before", "State"), drying
        )
        mix = mix_of(self.job)
        if mix is not None:
            tables += table_html(f"Flush mix: {mix.sentence}", mix.table[0], mix.table[1:])
        return PanelResult(cleaning_sentence(self.job, moment), cleaning_findings(self.job, moment), table=tables)


def _phase(soak: SoakRun, moment: dt.datetime) -> str:
    phase = soak.clock(moment).phase
    if soak.ended is None:
        return phase
    return "ended, past its limit" if phase == "over" else "ended"
