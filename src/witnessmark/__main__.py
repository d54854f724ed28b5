"""Lets `python -m witnessmark` do what the command does."""

from witnessmark.cli.main import main

if __name__ == "__main__":
    main()
