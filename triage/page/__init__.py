"""What a walk shows, as values: both faces print the same pages."""
