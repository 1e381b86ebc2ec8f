"""Figures of lines on paper, and the sheet they are written on."""
