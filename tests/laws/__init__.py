"""Evidence: laws that hold for every chair."""
