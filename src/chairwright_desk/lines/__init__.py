"""Product lines: those that come with the desk, and a team's own, checked and kept in versions."""
