"""The trail: who read, changed or took out what, and when."""
