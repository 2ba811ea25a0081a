"""What rules see: the answers that tell lambs apart, pages by what they do and say, and which rules bear."""
