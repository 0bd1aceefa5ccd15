# What is told of the programme over weeks.
