"""Recomputes every row of the tool-life table with scipy: Weibull fits of right-censored data, bounds, conditional reliability."""

import functools
import math
import sys

import numpy as np
from scipy import optimize, special, stats

import tables

DATA = {}
for line in tables.rows("dataset_c_weibull.csv"):
    times, events = DATA.setdefault(line["dataset"], ([], []))
    times.append(float(line["time"]))
    events.append(line["event"] == "1")


class Fit:
    """Maximum likelihood in (ln eta, ln beta); the information by differences of the gradient."""

    def __init__(self, name):
        self.t, self.failed = (np.array(part) for part in DATA[name])
        self.r = self.failed.sum()
        start = [math.log(self.t.mean()), 0.3]
        found = optimize.minimize(lambda p: -self.log_likelihood(p), start, jac=lambda p: -self.gradient(p), method="BFGS")
        best = optimize.root(self.gradient, found.x, tol=1e-13).x
        self.best = best
        self.eta, self.beta = np.exp(best)
        self.log_l = self.log_likelihood(best)
        step = 1e-5
        hessian = np.array(
            [(self.gradient(best + step * e) - self.gradient(best - step * e)) / (2 * step) for e in np.eye(2)]
        )
        self.cov = np.linalg.inv(-(hessian + hessian.T) / 2)

    def log_likelihood(self, p):
        u = np.exp(p[1]) * (np.log(self.t) - p[0])
        return np.sum((p[1] + u - np.log(self.t))[self.failed]) - np.sum(np.exp(u))

    def gradient(self, p):
        beta = np.exp(p[1])
        u = beta * (np.log(self.t) - p[0])
        w = self.failed - np.exp(u)
        return np.array([-beta * w.sum(), self.r + np.sum(w * u)])

    def se(self, slopes):
        slopes = np.array(slopes)
        return math.sqrt(slopes @ self.cov @ slopes)

    def hazard(self, t):
        return (t / self.eta) ** self.beta

    def profile_interval(self, index):
        """Likelihood-ratio interval, two-sided 95 %."""
        level = self.log_l - stats.chi2.ppf(0.95, 1) / 2

        def above(value):
            def rest(other):
                return -self.log_likelihood([value, other] if index == 0 else [other, value])

            centre = self.best[1 - index]
            inner = optimize.minimize_scalar(rest, bracket=(centre - 0.1, centre + 0.1), tol=1e-12)
            return -inner.fun - level

        at = self.best[index]
        low, high = (optimize.brentq(above, *ends, xtol=1e-13) for ends in ((at - 3, at), (at, at + 3)))
        return math.exp(low), math.exp(high)


@functools.cache
def fit_of(name):
    return Fit(name)


def of_fit(quantity, fit):
    z = stats.norm.ppf(0.975)
    se_eta, se_beta = (math.sqrt(v) for v in np.diag(fit.cov))
    mean = fit.eta * special.gamma(1 + 1 / fit.beta)
    life = stats.weibull_min(fit.beta, scale=fit.eta)
    n, k = len(fit.t), 2
    aic = 2 * k - 2 * fit.log_l
    values = {
        "beta": fit.beta, "beta (shape)": fit.beta, "eta": fit.eta, "eta (scale)": fit.eta,
        "log-likelihood": fit.log_l, "standard error of eta": fit.eta * se_eta, "se(eta)": fit.eta * se_eta,
        "standard error of beta": fit.beta * se_beta, "se(beta)": fit.beta * se_beta,
        "covariance of ln(eta) and ln(beta)": fit.cov[0, 1], "mean life": mean, "standard deviation of life": life.std(),
        "AIC = 2k-2lnL with k=2": aic, "AICc": aic + 2 * k * (k + 1) / (n - k - 1), "BIC": k * math.log(n) - 2 * fit.log_l,
    }
    for name, value, se in (("eta", fit.eta, se_eta), ("beta", fit.beta, se_beta)):
        for end, sign in (("lower", -1), ("upper", 1)):
            bound = value * math.exp(sign * z * se)
            values[f"{name} {end} 95 %"] = values[f"{name} {end} 95 % (log-normal approx.)"] = bound
    if quantity.endswith("likelihood ratio"):
        low, high = fit.profile_interval(0 if quantity.startswith("eta") else 1)
        return low if "lower" in quantity else high
    return values.get(quantity)


def of_reliability(quantity, fit, given):
    t = float(given["t"])
    if "x" in given or "Rc" in given:
        return of_next(quantity, fit, t, given)
    u = fit.beta * math.log(t / fit.eta)
    if "bound" not in quantity:
        return math.exp(-math.exp(u))
    z = stats.norm.ppf(0.9 if "80 %" in quantity else 0.975)
    sign = 1 if "lower" in quantity else -1
    return math.exp(-math.exp(u + sign * z * fit.se([-fit.beta, u])))


def of_next(quantity, fit, t, given):
    if "Rc" in given:
        def missing(x):
            return math.exp(fit.hazard(t) - fit.hazard(t + x)) - float(given["Rc"])

        return optimize.brentq(missing, 1e-9, 10 * fit.eta, xtol=1e-9)
    x = float(given["x"])
    rise = fit.hazard(t + x) - fit.hazard(t)
    if "bound" not in quantity:
        return math.exp(-rise)
    logs = [fit.hazard(s) * math.log(s / fit.eta) * fit.beta for s in (t, t + x)]
    slopes = [-fit.beta, (logs[1] - logs[0]) / rise]
    return math.exp(-math.exp(math.log(rise) + stats.norm.ppf(0.95) * fit.se(slopes)))


def of_quantile(quantity, fit, p):
    log_hazard = math.log(-math.log(1 - p))
    value = stats.weibull_min.ppf(p, fit.beta, scale=fit.eta)
    if "bound" not in quantity:
        return value
    return value * math.exp(-stats.norm.ppf(0.95) * fit.se([1, -log_hazard / fit.beta]))


def survival(name, at):
    times, events = DATA[name]
    left = 1.0
    for t in sorted({t for t, failed in zip(times, events) if failed and t <= at}):
        risk = sum(s >= t for s in times)
        left *= 1 - sum(s == t and failed for s, failed in zip(times, events)) / risk
    return left


def without_data(case, quantity, given):
    if case.startswith("C7"):
        exact = math.log(1 - float(given["C"])) / (float(given["lifetimes"]) ** float(given["beta"]) * math.log(float(given["R"])))
        return math.ceil(exact - 1e-9)
    if case.startswith("C8"):
        beta, times = float(given["beta"]), [float(t) for t in given["times"].split("|")]
        quantile = stats.chi2.ppf(float(given["C"]), 2 * int(given["failures"]) + 2)
        return (2 * sum(t**beta for t in times) / quantile) ** (1 / beta)
    if case.startswith("C10"):
        i, n = int(given["i"]), int(given["n"])
        return stats.beta.ppf(0.5, i, n - i + 1) if "exact" in quantity else (i - 0.3) / (n + 0.4)
    return None


def recompute(row):
    case, given = row["case_id"], tables.inputs(row)
    quantity = row["quantity"].replace(", published", "")
    if "dataset" not in given:
        return without_data(case, quantity, given)
    if case.startswith("C9"):
        return survival(given["dataset"], float(given["t"]))
    fit = fit_of(given["dataset"])
    if "p" in given:
        return of_quantile(quantity, fit, float(given["p"]))
    return of_reliability(quantity, fit, given) if "t" in given else of_fit(quantity, fit)


tally = tables.Tally()
for check in tables.rows("c_tool_life.csv"):
    tally.compare_row(check, recompute(check))
sys.exit(tally.close())
