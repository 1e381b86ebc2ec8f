"""Answers for notebooks: a question in typed texts or plain numbers, the sum's answer out, drawn and told."""
