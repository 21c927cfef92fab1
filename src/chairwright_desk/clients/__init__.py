"""The client record: reference and team; name and diagnosis apart."""
