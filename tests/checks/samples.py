"""Recomputes the tables of statistics with scipy: tolerance factors, basis values, charts, capability, outliers."""

import fractions
import functools
import math
import statistics
import sys

import numpy as np
from scipy import optimize, stats

import tables

NODES, WEIGHTS = np.polynomial.legendre.leggauss(300)
DATA = {}
for line in tables.rows("dataset_g_univariate.csv"):
    DATA.setdefault(line["dataset"], []).append(line["x"])
SUBGROUPS = np.array([[float(line[f"x{i}"]) for i in range(1, 6)] for line in tables.rows("dataset_g_subgroups.csv")])


def values(name):
    return np.array([float(x) for x in DATA[name]])


@functools.cache
def factor(n, p, confidence):
    """One-sided tolerance factor from the chi distribution of s, without the noncentral t."""
    degrees, shift, root = n - 1, stats.norm.ppf(p) * math.sqrt(n), math.sqrt(n - 1)
    low, high = max(0, 1 - 12 / root), 1 + 12 / root

    def missing(k):
        rate = k * math.sqrt(n)
        ends = [min(max(end, low), high) for end in (low, (shift - 9) / rate, shift / rate, (shift + 9) / rate, high)]
        total = 0
        for a, b in zip(ends, ends[1:]):
            w = a + (b - a) * (NODES + 1) / 2
            total += (b - a) / 2 * WEIGHTS @ (stats.norm.cdf(rate * w - shift) * stats.chi.pdf(w * root, degrees) * root)
        return total - confidence

    return optimize.brentq(missing, 0.01, 2000, xtol=1e-12, rtol=1e-14)


def range_constants(n):
    """d2 and d3: mean and standard deviation of the range of n standard normal values, by Gauss and Legendre's rule."""
    x, wx = 9 * NODES, 9 * WEIGHTS
    y = x[:, None] + (9 - x[:, None]) * (NODES + 1) / 2
    wy = (9 - x[:, None]) * WEIGHTS / 2
    low, high = stats.norm.cdf(x), stats.norm.cdf(y)
    d2 = wx @ (1 - low**n - (1 - low) ** n)
    pair = 1 - high**n - (1 - low[:, None]) ** n + (high - low[:, None]) ** n
    return d2, math.sqrt(2 * wx @ (wy * pair).sum(axis=1) - d2**2)


@functools.cache
def control_constants(n):
    d2, d3 = range_constants(n)
    c4 = math.sqrt(2 / (n - 1)) * math.exp(math.lgamma(n / 2) - math.lgamma((n - 1) / 2))
    b, d, root = 3 * math.sqrt(1 - c4**2) / c4, 3 * d3 / d2, math.sqrt(n)
    return {
        "d2": d2, "d3": d3, "c4": c4, "A2": 3 / (d2 * root), "A3": 3 / (c4 * root), "E2": 3 / d2,
        "B3": max(0, 1 - b), "B4": 1 + b, "D3": max(0, 1 - d), "D4": 1 + d,
    }


def grubbs(n, tail):
    t = stats.t.isf(tail, n - 2)
    return (n - 1) / math.sqrt(n) * math.sqrt(t**2 / (n - 2 + t**2))


def smallest_sample(content, rank):
    n = rank
    while stats.binom.cdf(rank - 1, n, 1 - content) > 0.05:
        n += 1
    return n


def weibull(x):
    def slope(beta):
        w = (x / x.max()) ** beta
        return (w * np.log(x)).sum() / w.sum() - 1 / beta - np.log(x).mean()

    beta = optimize.brentq(slope, 0.1, 500, xtol=1e-13)
    return beta, x.max() * ((x / x.max()) ** beta).mean() ** (1 / beta)


def basis(quantity):
    x = values("STRENGTH18")
    n, a = len(x), quantity.startswith("A-basis")
    content = 0.99 if a else 0.90
    if "normal" in quantity:
        return x.mean() - factor(n, content, 0.95) * x.std(ddof=1)
    beta, scale = weibull(x)
    if "shape" in quantity or "scale" in quantity:
        return beta if "shape" in quantity else scale
    v = 6.649 + math.exp(2.55 - 0.526 * math.log(n) + 4.76 / n) if a else 3.803 + math.exp(1.79 - 0.516 * math.log(n) + 5.1 / (n - 1))
    return scale * (-math.log(content)) ** (1 / beta) * math.exp(-v / (beta * math.sqrt(n)))


def tolerance(quantity, given):
    if quantity.startswith("upper"):
        return float(given["mean"]) + float(given["k1"]) * float(given["s"])
    n, p, confidence = int(given["n"]), float(given["p"]), float(given["conf"])
    if "Howe" in quantity or quantity.startswith("k2"):
        return stats.norm.ppf((1 + p) / 2) * math.sqrt((n - 1) * (1 + 1 / n) / stats.chi2.ppf(1 - confidence, n - 1))
    if "approximation" in quantity or "Natrella" in quantity:
        zp, zg = stats.norm.ppf(p), stats.norm.ppf(confidence)
        a, b = 1 - zg**2 / (2 * (n - 1)), zp**2 - zg**2 / n
        return (zp + math.sqrt(zp**2 - a * b)) / a
    return factor(n, p, confidence)


def reliability(quantity, given):
    if "trials" in given:
        k, n = int(given["successes"]), int(given["trials"])
        return stats.beta.ppf(0.025, k, n - k + 1) if "lower" in quantity else stats.beta.ppf(0.975, k + 1, n - k)
    confidence = float(given["C"])
    if "n" in given:
        return (1 - confidence) ** (1 / int(given["n"]))
    return math.ceil(math.log(1 - confidence) / math.log(float(given["R"])) - 1e-9)


def individuals(quantity):
    x = values("NIST_FLOW")
    moving = np.abs(np.diff(x)).mean()
    if quantity.startswith("MR"):
        return moving * control_constants(2)["D4"] if "UCL" in quantity else moving
    d2 = 2 / math.sqrt(math.pi) if "exact" in quantity else 1.128
    return x.mean() + {"UCL": 3, "LCL": -3}.get(quantity[:3], 0) * moving / d2


def ranges(quantity):
    c = control_constants(5)
    mean, spread = SUBGROUPS.mean(), np.ptp(SUBGROUPS, axis=1).mean()
    sigma = spread / c["d2"]
    names = {
        "X-double-bar": mean, "R-bar": spread, "X-bar UCL": mean + c["A2"] * spread, "X-bar LCL": mean - c["A2"] * spread,
        "R chart UCL": c["D4"] * spread, "sigma": sigma, "Cpk": min(74.05 - mean, mean - 73.95) / (3 * sigma), "Cp": 0.1 / (6 * sigma),
    }
    return next((names[name] for name in names if quantity.startswith(name)), None)


def weighted(quantity, given):
    x, part, target = values("NIST_EWMA"), float(given["lambda"]), float(given["target"])
    width = float(given["L"]) * float(given["s"])
    if quantity.startswith("EWMA"):
        last = int(quantity.split("t=")[1])
        return (1 - part) ** last * target + sum(part * (1 - part) ** (last - 1 - i) * x[i] for i in range(last))
    return target + (-1 if "LCL" in quantity else 1) * width * (part if "t=1" in quantity else math.sqrt(part / (2 - part)))


def cusum(quantity):
    upper = 0
    for i, x in enumerate(values("NIST_CUSUM"), 1):
        upper = max(0, upper + x - 325 - 0.3175)
        if upper > 4.1959:
            return i if quantity.startswith("first") else upper
    return None


def capability(quantity, given):
    number = {name: float(value) for name, value in given.items()}
    if "Cpk" in number:
        n, cpk = number["n"], number["Cpk"]
        width = stats.norm.ppf(0.975) * math.sqrt(1 / (9 * n * cpk**2) + 1 / (2 * (n - 1)))
        return cpk * (1 - width if "lower" in quantity else 1 + width)
    upper, lower, s = number["USL"], number["LSL"], number["s"]
    cp = (upper - lower) / (6 * s)
    if "95 %" in quantity:
        degrees = number["n"] - 1
        return cp * math.sqrt(stats.chi2.ppf(0.025 if "lower" in quantity else 0.975, degrees) / degrees)
    if "mean" not in number:
        return cp
    mean, target = number["mean"], number["target"]
    off = abs((upper + lower) / 2 - mean) / ((upper - lower) / 2)
    names = {
        "Cpm": (upper - lower) / (6 * math.hypot(s, mean - target)), "Cpu": (upper - mean) / (3 * s),
        "Cpl": (mean - lower) / (3 * s), "Cp": cp, "k": off,
    }
    return next((names[name] for name in names if quantity.startswith(name)), None)


def outlier(quantity, given):
    if "critical" in quantity:
        n = int(given.get("n", 8))
        return grubbs(n, 0.05 / (2 * n if "two-sided" in quantity else n))
    x = values(given["dataset"])
    return np.abs(x - x.mean()).max() / x.std(ddof=1)


def certified(quantity, given):
    exact = [fractions.Fraction(x) for x in DATA[given["dataset"]]]
    return float(statistics.mean(exact)) if "mean" in quantity else math.sqrt(statistics.variance(exact))


def recompute(row):
    given, quantity = tables.inputs(row), row["quantity"].replace(", published", "")
    x = values(given["dataset"]) if given.get("dataset") in DATA else None
    match row["case_id"].split(".")[0]:
        case "G1" | "G2":
            return tolerance(quantity, given)
        case "G3":
            return {"sample mean": x.mean(), "sample standard deviation": x.std(ddof=1)}.get(quantity, None) or basis(quantity)
        case "G4":
            return reliability(quantity, given)
        case "G5":
            return control_constants(int(given["n"])).get(quantity.split(",")[0])
        case "G6":
            chart = {"NIST_FLOW": individuals, "PISTON25": ranges, "NIST_CUSUM": cusum}.get(given["dataset"])
            return chart(quantity) if chart else weighted(quantity, given)
        case "G7":
            return capability(quantity, given)
        case "G8":
            return outlier(quantity, given)
        case "G9":
            return certified(quantity, given)
    return None


tally = tables.Tally()
for check in tables.rows("g_statistics.csv"):
    tally.compare_row(check, recompute(check))
for check in tables.rows("g_k_factors.csv"):
    for column, p, confidence in (("k_90_95", 0.9, 0.95), ("k_99_95", 0.99, 0.95), ("k_90_90", 0.9, 0.9), ("k_95_95", 0.95, 0.95), ("k_99_99", 0.99, 0.99)):
        tally.compare(f"k factors, n = {check['n']}, {column}", check[column], factor(int(check["n"]), p, confidence), 1e-6, 0)
for check in tables.rows("g_grubbs.csv"):
    n = int(check["n"])
    tally.compare(f"Grubbs, n = {n}, one-sided", check["one_sided_5pct"], grubbs(n, 0.05 / n), 0, 1e-6)
    tally.compare(f"Grubbs, n = {n}, two-sided", check["two_sided_5pct"], grubbs(n, 0.05 / (2 * n)), 0, 1e-6)
for check in tables.rows("g_nonparametric_ranks.csv"):
    got = smallest_sample(float(check["content_p"]), int(check["rank_r"]))
    tally.compare(f"ranks, {check['content_p']}, {check['rank_r']}", check["n_exact"], got, 0, 0)
for check in tables.rows("g_control_constants.csv"):
    got = control_constants(int(check["n"]))
    for name in got:
        tally.compare(f"control constants, n = {check['n']}, {name}", check[name], got[name], 0, 1e-5)
sys.exit(tally.close())
