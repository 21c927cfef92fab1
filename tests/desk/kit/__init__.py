"""What the desk's tests share: people and clients, a browser, the standing checks."""
