"""The search: every state that real answers can lead to, each kept once."""
