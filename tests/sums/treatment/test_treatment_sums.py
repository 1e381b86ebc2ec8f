"""The example of every sum of treatment runs as it is printed."""

import pytest
from sums.treatment.asking import ask

from pentools.sums.treatment.dilute import DILUTE
from pentools.sums.treatment.heat import HEAT
from pentools.sums.treatment.limits import TREATMENT
from pentools.sums.treatment.mix import MIX
from pentools.sums.treatment.shellac import SHELLAC

ALL = (HEAT, TREATMENT, MIX, DILUTE, SHELLAC)


@pytest.mark.parametrize("chosen", ALL, ids=lambda s: s.key)
def test_the_example_runs(chosen):
    import shlex

    words = shlex.split(chosen.example)
    assert words[:3] == ["pentools", "sums", chosen.key]
    typed = {words[i].removeprefix("--").replace("-", "_"): words[i + 1] for i in range(3, len(words), 2)}
    ask(chosen, **typed)
