"""Targets: what each figure must or should be for this client, and who says so."""
