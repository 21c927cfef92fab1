"""Orders from draft to review."""
