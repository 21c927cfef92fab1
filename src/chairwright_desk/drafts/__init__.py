"""What a person has typed and not yet saved."""
