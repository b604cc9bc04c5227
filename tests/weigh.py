"""Fits the weights of completion's signs.

    typed-report --evidence FILE
    python tests/weigh.py FILE

Reads what spoke for each structure that could have been meant (`typed-report --evidence` writes it for one half of the
texts), and finds the weights under which the right structures are likeliest: a conditional logit with a quadratic penalty
towards 0, by gradient descent. Prints a table for `server/analysis/src/features/completion/evidence.rs`, and how often the
right structure comes first, fitted to all and, so that fitting by heart would show, fitted to four fifths and tried on the
rest. Needs numpy.
"""

import sys

import numpy as np

# Names of other things than nerves and muscles count less, for authors write fewer of them.
OTHERS = 0.3
PENALTY = 0.5
# So many structures of a case are looked at, the likeliest by the weights so far, and the right one.
MOST = 60


def read(path):
    with open(path, encoding="utf-8") as file:
        signs = file.readline().split()
        cases, current, last = [], None, None
        for line in file:
            number, main, right, *numbers = line.split()
            if number != last:
                current, last = ([], [], int(main)), number
                cases.append(current)
            if len(current[0]) >= MOST and right == "0":
                continue
            row = np.zeros(len(signs), dtype=np.float32)
            for pair in numbers:
                sign, value = pair.split(":")
                row[int(sign)] = float(value)
            current[0].append(row)
            current[1].append(int(right))
    cases = [(np.array(rows), right.index(1), main) for rows, right, main in cases if 1 in right]
    return signs, cases


class Cases:
    """All candidates in one matrix, cut into cases."""

    def __init__(self, cases):
        self.rows = np.concatenate([rows for rows, _, _ in cases])
        sizes = np.array([len(rows) for rows, _, _ in cases])
        self.starts = np.concatenate([[0], np.cumsum(sizes)[:-1]])
        self.case = np.repeat(np.arange(len(cases)), sizes)
        self.right = self.starts + np.array([right for _, right, _ in cases])
        self.main = np.array([main for _, _, main in cases])
        self.weight = np.where(self.main == 1, 1.0, OTHERS)

    def likely(self, weights):
        scores = self.rows @ weights
        top = np.maximum.reduceat(scores, self.starts)
        likely = np.exp(scores - top[self.case])
        return likely / np.add.reduceat(likely, self.starts)[self.case]

    def gradient(self, weights):
        likely = self.likely(weights)
        expected = likely * self.weight[self.case]
        return self.rows.T @ expected - self.rows[self.right].T @ self.weight + PENALTY * weights

    def first(self, weights):
        scores = self.rows @ weights
        top = np.maximum.reduceat(scores, self.starts)
        return (scores[self.right] >= top - 1e-9)[self.main == 1].mean()


def fit(cases, steps=800):
    weights, mean, square = np.zeros(cases.rows.shape[1]), 0.0, 0.0
    for step in range(1, steps + 1):
        gradient = cases.gradient(weights)
        mean = 0.9 * mean + 0.1 * gradient
        square = 0.999 * square + 0.001 * gradient**2
        rate = 0.05 if step < steps * 2 / 3 else 0.01
        weights -= rate * (mean / (1 - 0.9**step)) / (np.sqrt(square / (1 - 0.999**step)) + 1e-8)
    return weights


def main():
    signs, cases = read(sys.argv[1])
    weights = fit(Cases(cases))
    for sign, weight in zip(signs, weights):
        print(f"{sign} = {weight:.2f}")
    print(f"fitted to all: {Cases(cases).first(weights):.3f} of {len(cases)}")
    tried = []
    for fold in range(5):
        # Neighbours are much alike: a fold is a run of cases, not every fifth.
        size = len(cases) // 5
        out = Cases(cases[fold * size : (fold + 1) * size])
        rest = Cases(cases[: fold * size] + cases[(fold + 1) * size :])
        tried.append(out.first(fit(rest, 400)))
    print(f"fitted to four fifths, tried on the rest: {np.mean(tried):.3f}")


if __name__ == "__main__":
    main()
