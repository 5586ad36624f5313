"""What holds from one sentence to the next: headings, sides, positions, minutes, the order of columns."""
