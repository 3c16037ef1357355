"""Attenuation of the five path materials over a filtered 50-70 kV spectrum.

Linear attenuation in 1/cm from mass attenuation (NISTIR 5632 / SRD 126, Hubbell and Seltzer) and density; plaster,
glass fibre, steel and titanium alloy by the mixture rule from the same tables.
"""
import torch

TABLE_KEV = (20.0, 30.0, 40.0, 50.0, 60.0, 80.0)
LINEAR = {
    "soft": (0.8724, 0.4017, 0.2849, 0.2400, 0.2171, 0.1932),
    "fat": (0.5393, 0.2910, 0.2276, 0.2017, 0.1875, 0.1710),
    "bone": (7.682, 2.556, 1.278, 0.8145, 0.6044, 0.4280),
    "steel": (210.0, 67.5, 30.1, 16.2, 9.99, 4.92),
    "titanium": (67.2, 21.1, 9.41, 5.17, 3.28, 1.75),
    "plaster": (4.78, 1.56, 0.762, 0.473, 0.343, 0.234),
    "glass fibre": (1.56, 0.572, 0.328, 0.239, 0.197, 0.159),
    "aluminium": (9.29, 3.04, 1.53, 0.993, 0.750, 0.545),
}
ENERGIES_KEV = (24.0, 31.0, 38.0, 46.0, 56.0)


def per_mm(material):
    """Linear attenuation, 1/mm, at the sampled energies; log-log interpolation of the table."""
    table = torch.tensor(LINEAR[material]).log()
    kev = torch.tensor(TABLE_KEV).log()
    out = []
    for energy in torch.tensor(ENERGIES_KEV).log():
        i = int((kev <= energy).sum().clamp(1, len(kev) - 1)) - 1
        f = (energy - kev[i]) / (kev[i + 1] - kev[i])
        out.append(table[i] * (1 - f) + table[i + 1] * f)
    return torch.stack(out).exp() / 10


class Spectrum:
    """Tables on a device, and per-film sampling of tube voltage, filter, metal and cast material."""

    def __init__(self, device):
        self.energy = torch.tensor(ENERGIES_KEV, device=device)
        self.tables = {name: per_mm(name).to(device) for name in LINEAR}

    def sample(self, films):
        """Weights [n, energies] summing to 1 and attenuation [n, energies, materials] per mm."""
        device = self.energy.device

        def uniform(lo, hi):
            return torch.rand(films, 1, device=device) * (hi - lo) + lo

        kilovolt = uniform(50, 70)
        # Thick-target spectrum through the filter, weighted by the energy a detector takes up.
        weights = (kilovolt - self.energy).clamp(min=0) * torch.exp(-uniform(2, 4) * self.tables["aluminium"])
        weights = weights / weights.sum(1, keepdim=True)

        def either(a, b):
            return torch.where(torch.rand(films, 1, device=device) < 0.5, self.tables[a], self.tables[b])

        mu = torch.stack([
            self.tables["soft"] * uniform(0.93, 1.07), self.tables["fat"] * uniform(0.95, 1.08),
            self.tables["bone"] * uniform(0.75, 1.25), either("steel", "titanium"),
            either("plaster", "glass fibre") * uniform(0.8, 1.5)], 2)
        return weights, mu
