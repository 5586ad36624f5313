"""Words of the grammar and numbers, found in a text: which phrases there are, and what each may mean."""
