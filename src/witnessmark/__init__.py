"""Witness Mark: one record of facts about a vehicle apart, and what follows from it.

The floors, top to bottom; imports run downwards only (docs/flow.md has the picture):
cli, press: talk with people. demo: an invented vehicle. restoration: the whole flow of one vehicle.
store, sheets, exchange: the disk, what is shown, what goes in and out.
plan, gate: answers built on answers. jobs: wanted work becomes operations.
owed, reach: what is still due, what is in the way. words: a typed line, understood.
state, journal: how things stand, the facts themselves. vehicle: parts, joints, kinds.
tables, engines: numbers with pedigree, optimisers. ground: units, money, days, errors.
"""
