"""Orders of set-ups: from draft to the review of the delivered chair, with their papers."""
