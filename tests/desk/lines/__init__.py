"""Lines: files, messages, versions, charts."""
