"""One file a subject: the questions it answers, and the slip each answer is."""
