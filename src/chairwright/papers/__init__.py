"""Papers: one payload of plain text and drawings in, one accessible PDF out."""
