"""From a set-up to what is ordered: parts, prices, delivery, revisions, adjustment."""
