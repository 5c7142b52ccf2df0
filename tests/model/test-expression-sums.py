#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Random arithmetic as people might type it, against exact fractions.

Each expression is made as a tree, worked out with Python's Fraction and written as text;
the program under test sees the text alone. The tolerance is rounding in double
precision, against the sum of all amounts that took part.
"""

import random
import subprocess
import sys
from fractions import Fraction

UNITS = [("", Fraction(1)), (" mm", Fraction(1)), ("cm", Fraction(10)),
         (" in", Fraction(254, 10)), ("\"", Fraction(254, 10)), ("ft", Fraction(3048, 10))]


class Node:
    """text, its binding (3 number, 2 product, 1 sum), value, amount, and whether it has a unit."""

    def __init__(self, text, binding, value, amount, unit):
        self.text, self.binding, self.value = text, binding, value
        self.amount, self.unit = amount, unit

    def inside(self, binding):
        return self.text if self.binding >= binding else "(" + self.text + ")"


def figure(draw):
    """Text and exact value of a number."""
    kind = draw.randrange(4)
    whole = draw.randrange(0, 100)
    below = draw.choice([2, 4, 8, 16, 32, 64, 3, 7])
    above = draw.randrange(1, 2 * below)
    if kind == 0:
        return str(whole), Fraction(whole)
    if kind == 1:
        text = f"{whole}.{draw.randrange(1000):03d}"
        return text, Fraction(text)
    if kind == 2:
        return f"{above}/{below}", Fraction(above, below)
    return f"{whole} {above}/{below}", whole + Fraction(above, below)


def number(draw, with_unit):
    text, value = figure(draw)
    symbol, size = draw.choice(UNITS) if with_unit else UNITS[0]
    return Node(text + symbol, 3, value * size, abs(value * size), symbol != "")


def combined(draw, depth):
    sign = draw.choice("+-*/") if depth > 0 else ""
    if sign == "":
        return number(draw, True)
    if sign in "+-":
        a, b = combined(draw, depth - 1), combined(draw, depth - 1)
        value = a.value + b.value if sign == "+" else a.value - b.value
        return Node(a.inside(1) + draw.choice(["", " "]) + sign + " " + b.inside(2), 1, value,
                    a.amount + b.amount, a.unit or b.unit)
    a, b = combined(draw, depth - 1), number(draw, False)
    if sign == "/" and b.value == 0:
        b = Node("3", 3, Fraction(3), Fraction(3), False)
    if sign == "*":
        return Node(b.inside(2) + " * " + a.inside(3), 2, a.value * b.value,
                    a.amount * b.amount, a.unit)
    return Node(a.inside(2) + " / (" + b.text + ")", 2, a.value / b.value,
                a.amount / b.amount, a.unit)


def negated(draw, node):
    if draw.randrange(4) > 0:
        return node
    return Node("−" + node.inside(2), 2, -node.value, node.amount, node.unit)


def main(program, n):
    seed = random.randrange(2**32)
    draw = random.Random(seed)
    nodes = [negated(draw, combined(draw, draw.randrange(6))) for _ in range(n)]
    answers = subprocess.run([program], input="\n".join(node.text for node in nodes) + "\n",
                             capture_output=True, text=True, check=True,
                             encoding="utf-8").stdout.splitlines()
    assert len(answers) == n, len(answers)
    for node, answer in zip(nodes, answers):
        try:
            off = abs(Fraction(float(answer)) - node.value)
        except ValueError:
            sys.exit(f"seed {seed}: {node.text}: {answer}")
        if off > Fraction(1, 10**13) * node.amount:
            sys.exit(f"seed {seed}: {node.text}: {answer}, but {float(node.value)}")
    print(f"{n} expressions agree (seed {seed}), up to {max(len(x.text) for x in nodes)} letters")


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]))
