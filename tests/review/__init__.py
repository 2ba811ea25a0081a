"""Who stands behind the guidance."""
