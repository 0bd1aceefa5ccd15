"""Cheapest cans by full enumeration: every count of every size up to the one that alone would do.

Whole millionths, so that ties are ties. Best: least price, least left over, fewest cans.
Python 3, standard library only. Writes cans.json beside itself.
"""
import itertools
import json
import pathlib
import random


def best(need, shelf):
    found = None
    for counts in itertools.product(*(range(-(-need // litres) + 1) for litres, _ in shelf)):
        bought = sum(n * litres for n, (litres, _) in zip(counts, shelf))
        if bought >= need:
            price = sum(n * price for n, (_, price) in zip(counts, shelf))
            here = (price, bought - need, sum(counts))
            if found is None or here < found:
                found = here
    return found


def main():
    dice = random.Random(20260901)
    metric = [750_000, 1_000_000, 2_500_000, 5_000_000, 10_000_000]
    us = [946_353, 3_785_412, 18_927_059]
    cases = []
    while len(cases) < 1000:
        kind = len(cases) % 5
        if kind == 0:
            sizes = dice.sample(metric, dice.randint(2, 5))
        elif kind == 1:
            sizes = dice.sample(us, dice.randint(2, 3))
        else:
            sizes = list({dice.randrange(200_000, 6_000_000, 50_000) for _ in range(dice.randint(1, 5))})
        if kind == 3:  # one price a litre: everything ties but what is left over
            rate = dice.randint(5, 30)
            shelf = [(size, size * rate) for size in sizes]
        elif kind == 2:  # prices that often come to the same sum
            shelf = [(size, dice.randrange(5, 60, 5) * 1_000_000) for size in sizes]
        else:
            shelf = [(size, int(size * dice.uniform(8, 30)) // 500_000 * 500_000) for size in sizes]
        need = dice.randrange(1, 12_000_000, dice.choice([1, 1_000, 250_000]))
        ways = 1
        for litres, _ in shelf:
            ways *= -(-need // litres) + 1
        if ways > 300_000:
            continue
        price, over, cans = best(need, shelf)
        cases.append({"need": need, "shelf": shelf, "price": price, "over": over, "cans": cans})
    out = pathlib.Path(__file__).with_name("cans.json")
    out.write_text("[\n" + ",\n".join(json.dumps(case) for case in cases) + "\n]\n")


if __name__ == "__main__":
    main()
