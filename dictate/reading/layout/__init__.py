"""How a text is laid out: spoken marks, charts, lists, shorthand, sections, and what is set apart from the findings."""
