"""Drafts."""
