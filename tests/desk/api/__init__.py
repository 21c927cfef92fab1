"""The API: every call, by every kind of visitor, and from its own document."""
