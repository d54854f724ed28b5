"""Facts on disk: appended, never changed; written through before anybody is told."""
