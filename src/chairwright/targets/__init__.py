"""From a client to targets: every range with its source and the client's own number."""
