"""The guide fitted to a holding: what an own folder may do, and what is done where something did not pass."""
