"""No health data in logs, addresses or what a browser keeps: over every page of every app."""
