"""Rings, sacs, washers, threads and the knock-out tube asked from a notebook."""

import pandas as pd
from signatures import agree

from pentools import knockout_tool, sac_fit, seal_fit, thread_match, washer_fit
from pentools.answers.asking import answer_to


def test_signatures_are_those_of_the_sums():
    assert agree(seal_fit, "seal")
    assert agree(sac_fit, "sac")
    assert agree(washer_fit, "washer")
    assert agree(thread_match, "thread")
    assert agree(knockout_tool, "knockout")


def test_a_word_that_python_keeps_has_an_underscore():
    asked = seal_fit(bore=7.4, groove=4.5, width=2.4, from_="metric", all_=True)
    assert asked.data == answer_to("seal", {"bore": "7.4 mm", "groove": "4.5 mm", "width": "2.4 mm", "from": "metric", "all": "yes"}).data  # fmt: skip
    assert len(asked.data["candidates"]) > 20


def test_many_bores_give_a_frame():
    frame = seal_fit(bore=pd.Series([6.3, 7.4]), groove=pd.Series([3.3, 4.5]), width=2.4)
    assert frame["sentence"].tolist() == [
        seal_fit(bore=6.3, groove=3.3, width=2.4).sentence,
        seal_fit(bore=7.4, groove=4.5, width=2.4).sentence,
    ]


def test_the_others_answer_as_the_command_line_does():
    assert sac_fit(barrel=8.0, nipple=6.6, depth=62).data == answer_to("sac", {"barrel": "8.00 mm", "nipple": "6.60 mm", "depth": "62 mm"}).data  # fmt: skip
    assert washer_fit(bore=[8.30, 8.32], rod=1.6).data == answer_to("washer", {"bore": "8.30 mm; 8.32 mm", "rod": "1.60 mm"}).data  # fmt: skip
    assert thread_match(pitch=0.794, major=7.1, starts=1).data == answer_to("thread", {"pitch": "0.794 mm", "major": "7.10 mm", "starts": "1"}).data  # fmt: skip
    assert knockout_tool(tail=1.8, shoulder=4.2, bore=5).data == answer_to("knockout", {"tail": "1.8 mm", "shoulder": "4.2 mm", "bore": "5 mm"}).data  # fmt: skip
