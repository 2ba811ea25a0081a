"""The full-screen face, in Textual. It shows a session and passes keys to it; it decides nothing."""
