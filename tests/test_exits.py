"""Exit codes differ, as the help lists them."""

from pentools import exits
from pentools.cli import _EPILOG


def test_each_code_is_in_the_help():
    codes = {getattr(exits, name) for name in exits.__all__}
    assert codes == {0, 1, 2, 3, 4}
    assert all(f"{code} " in _EPILOG for code in codes)
