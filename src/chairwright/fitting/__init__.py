"""Fitting: one client and one line in, a judged set-up or the reasons why there is none out."""
