"""Draws the cases and works the reference values that SciPy and statsmodels have. Debian 12: apt-get install
python3-scipy python3-statsmodels; python3 make_reference.py && Rscript make_reference.R. Both outputs are committed."""
import numpy as np
import scipy
import statsmodels
from scipy import stats
from statsmodels.stats.inter_rater import cohens_kappa, to_table
from statsmodels.stats.multitest import multipletests

random = np.random.default_rng(8)
truth = random.normal(70, 8, 14)
ratings = np.round(truth[:, None] + np.array([0, 1.5, -0.8]) + random.normal(0, 3, (14, 3)), 2)
np.savetxt("ratings.csv", ratings, fmt="%.2f", delimiter=",")
zone = random.integers(0, 5, 60)
zones = np.stack([zone, np.clip(zone + random.integers(-1, 2, 60) * (random.random(60) < 0.5), 0, 4)], axis=1)
np.savetxt("zones.csv", zones, fmt="%d", delimiter=",")
differences = {"few": np.round(random.normal(0.4, 1, 12), 3), "exact": np.round(random.normal(0.3, 1, 40), 4),
               "tied": np.round(random.normal(0.3, 1, 45), 1), "many": np.round(random.normal(0.1, 1, 120), 4)}
for name, values in differences.items():
    np.savetxt(f"differences-{name}.csv", values, fmt="%.4f")
p = np.array([0.012, 0.3, 0.0004, 0.021, 0.9, 0.04, 0.012])
np.savetxt("probabilities.csv", p, fmt="%.4f")

with open("reference-python.txt", "w", encoding="ascii") as out:
    out.write(f"# SciPy {scipy.__version__}, statsmodels {statsmodels.__version__}, NumPy {np.__version__}\n")
    for name, values in differences.items():
        test = stats.wilcoxon(values)
        out.write(f"wilcoxon.{name}.statistic {test.statistic!r}\nwilcoxon.{name}.p {test.pvalue!r}\n")
    flip = stats.permutation_test((differences["few"],), np.mean, permutation_type="samples", n_resamples=np.inf)
    out.write(f"flip.few.p {flip.pvalue!r}\n")
    for i, value in enumerate(multipletests(p, method="holm")[1]):
        out.write(f"holm.{i} {value!r}\n")
    kappa = cohens_kappa(to_table(zones, bins=np.arange(6) - 0.5)[0], wt="quadratic")
    out.write(f"kappa {kappa.kappa!r}\nkappa.low {kappa.kappa_low!r}\nkappa.high {kappa.kappa_upp!r}\n")
    for q in (0.025, 0.25, 0.5, 0.75, 0.975):
        out.write(f"quantile.{q} {np.quantile(differences['many'], q)!r}\n")
    out.write(f"sd {np.std(differences['many'], ddof=1)!r}\n")
    # Clusters of three; the percentile bootstrap of their pooled mean.
    clusters = differences["many"].reshape(40, 3)
    boot = stats.bootstrap((clusters.mean(axis=1),), np.mean, method="percentile", n_resamples=200000, random_state=1)
    out.write(f"bootstrap.low {boot.confidence_interval.low!r}\nbootstrap.high {boot.confidence_interval.high!r}\n")
