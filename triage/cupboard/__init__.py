"""The cupboard: what the guidance uses, against what is on this holding's shelf."""
