"""Calculations, one module a bench subject: plain numbers in, small frozen results out."""
