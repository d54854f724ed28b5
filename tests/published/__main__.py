"""Lists every source with its standing, and what counts: `python -m tests.published`."""

from tests.published.listing import report

if __name__ == "__main__":
    print(report())
