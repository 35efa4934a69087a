"""The sewing sheet in a browser, as the person who sews opens it."""
