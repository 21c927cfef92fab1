"""Tests of chairwright, by kind of evidence; see CONTRIBUTING.md."""
