"""Practice: made-up lambs to try the guide on. Nothing here says what is right: the guide does."""
