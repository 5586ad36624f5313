"""What a recogniser does to words: mishearings mended, stops taken out, and how well the sound bears values."""
