"""The bench: engineering numbers with their doubt, for a person at the moment of doing.

One file a subject holds its formulas (`threads`, `bolts`, `orings`, ...): one formula a function,
plain numbers in, plain numbers out, arrays welcome where a formula goes element by element.
`answers` turns them into slips, `picture` draws them to scale, `questions` is the one way to ask.
The bench knows no vehicle, no disk and no clock.
"""
