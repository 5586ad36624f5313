"""How well a spoken dictation becomes its note: variants of dictations spoken, heard, compared, as tables."""
