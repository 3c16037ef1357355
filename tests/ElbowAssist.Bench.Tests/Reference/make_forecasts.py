"""Draws forecasts, intervals and certainties and works the reference values that scikit-learn has. Debian 12: apt-get install
python3-sklearn; python3 make_forecasts.py. Its output is committed."""
import numpy as np
import sklearn
from sklearn.calibration import calibration_curve
from sklearn.metrics import brier_score_loss, mean_pinball_loss, precision_recall_curve

random = np.random.default_rng(9)
forecasts = np.round(random.dirichlet([0.8, 1.5, 0.6], 80), 4)
forecasts[:, 2] = np.round(1 - forecasts[:, 0] - forecasts[:, 1], 4)
outcome = np.array([random.choice(3, p=np.clip(f ** 0.7, 0, None) / np.sum(np.clip(f ** 0.7, 0, None))) for f in forecasts])
np.savetxt("forecasts.csv", np.column_stack([forecasts, outcome]), fmt="%.4f", delimiter=",")
truth = random.normal(70, 8, 60)
middle, half = truth + random.normal(0, 3, 60), random.uniform(2, 9, 60)
intervals = np.round(np.column_stack([middle - half, middle + half, truth]), 3)
np.savetxt("intervals.csv", intervals, fmt="%.3f", delimiter=",")
certainty = np.round(np.column_stack([random.uniform(0, 1, 50), random.random(50) < 0.3]), 4)
np.savetxt("certainty.csv", certainty, fmt="%.4f", delimiter=",")

with open("reference-sklearn.txt", "w", encoding="ascii") as out:
    out.write(f"# scikit-learn {sklearn.__version__}, NumPy {np.__version__}\n")
    # Of several classes: the sum of the scores of each class against the rest.
    brier = sum(brier_score_loss(outcome == c, forecasts[:, c]) for c in range(3))
    out.write(f"brier {brier!r}\n")
    stated, came = forecasts.ravel(), (np.arange(3)[None, :] == outcome[:, None]).ravel()
    share, mean = calibration_curve(came, stated, n_bins=10)
    counts = np.histogram(stated, bins=np.linspace(0, 1, 11))[0]
    error = np.sum(np.abs(share - mean) * counts[counts > 0]) / len(stated)
    out.write(f"calibration {error!r}\n")
    # The interval score is 2/alpha times the pinball losses of the two quantiles that the ends stand for.
    low, high, truth = intervals.T
    score = 2 / 0.05 * (mean_pinball_loss(truth, low, alpha=0.025) + mean_pinball_loss(truth, high, alpha=0.975))
    out.write(f"interval {score!r}\n")
    # Where a loss is 0 or 1, the risk among the most certain is 1 less the precision at a threshold of certainty.
    precision = precision_recall_curve(certainty[:, 1] == 0, -certainty[:, 0])[0][:-1]
    precision = precision[-len(certainty):]
    out.write(f"risk.count {len(precision)}\nrisk.area {np.mean(1 - precision)!r}\nrisk.half {1 - precision[::-1][24]!r}\n")
