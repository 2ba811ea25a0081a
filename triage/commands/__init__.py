"""What the command line can do: one module for each command."""
