"""The browser desk; collected only where Django is installed."""
