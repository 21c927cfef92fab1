"""The client record: reference and team; name, birth and diagnosis apart."""
