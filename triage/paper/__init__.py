"""Pages to pin up in a store-room or to carry, made from the same values as the screen."""
