"""The whole guidance as one HTML file, walked by links or on paper by numbers. No script, no network."""
