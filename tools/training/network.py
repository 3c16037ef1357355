"""The networks: plain 3x3 U-Nets with a heatmap head and, beside it, what the heatmap alone cannot say.

Input is one standardised film [n, 1, 256, 256]. Coordinates and covariances are in input pixels, (0, 0) being the
top-left corner of the top-left pixel.
"""
import torch
import torch.nn as nn
import torch.nn.functional as F

VIEW_CLASSES = ["lateral", "ap", "oblique", "not-an-elbow", "not-a-radiograph"]
LOCATOR_POINTS = ["shaft", "joint", "forearm", "mark"]

# Variance no landmark goes below, input pixels squared: truth is exact, but the grid of cells is not.
COVARIANCE_FLOOR = 0.04


class ConvUnit(nn.Module):
    """Convolution, batch normalisation, optional ReLU; the normalisation folds into the convolution for export."""

    def __init__(self, c_in, c_out, kernel=3, stride=1, dilation=1, relu=True):
        super().__init__()
        self.conv = nn.Conv2d(c_in, c_out, kernel, stride, dilation * (kernel // 2), dilation, bias=False)
        self.norm = nn.BatchNorm2d(c_out)
        self.relu = relu

    def forward(self, x):
        x = self.norm(self.conv(x))
        return F.relu(x, inplace=True) if self.relu else x

    def fold(self):
        self.conv = nn.utils.fusion.fuse_conv_bn_eval(self.conv, self.norm)
        self.norm = nn.Identity()


class Residual(nn.Module):
    def __init__(self, channels, dilation=1):
        super().__init__()
        self.first = ConvUnit(channels, channels, dilation=dilation)
        self.second = ConvUnit(channels, channels, relu=False)

    def forward(self, x):
        return F.relu(x + self.second(self.first(x)))


class UNet(nn.Module):
    """Encoder and decoder. `forward` gives the finest decoder map, the next coarser one, and the bottleneck."""

    def __init__(self, stem, widths, blocks):
        super().__init__()
        layers, c = [], 1
        for width, stride in stem:
            layers.append(ConvUnit(c, width, stride=stride))
            c = width
        layers.append(ConvUnit(c, widths[0]))
        self.stem = nn.Sequential(*layers)
        self.down, self.encode, self.decode, self.lift = (nn.ModuleList() for _ in range(4))
        for level, width in enumerate(widths):
            self.down.append(ConvUnit(widths[level - 1], width, stride=2) if level else nn.Identity())
            last = level == len(widths) - 1
            self.encode.append(nn.Sequential(*[Residual(width, 2 if last and b else 1) for b in range(blocks[level])]))
            if not last:
                self.lift.append(ConvUnit(widths[level + 1], width, kernel=1))
                self.decode.append(Residual(width))

    def forward(self, x):
        x = self.stem(x)
        skips = []
        for down, encode in zip(self.down, self.encode):
            x = encode(down(x))
            skips.append(x)
        bottleneck = x
        coarser = x
        for level in range(len(self.decode) - 1, -1, -1):
            coarser = x
            x = self.decode[level](skips[level] + F.interpolate(self.lift[level](x), scale_factor=2.0, mode="nearest"))
        return x, coarser, bottleneck


def view_error_of(raw):
    """Mean and standard deviation of the view error, degrees, from two raw numbers."""
    raw = raw.float()
    return torch.cat([10 * F.softplus(raw[:, 0:1]), 0.5 + 10 * F.softplus(raw[:, 1:2])], 1)


class LandmarkNet(nn.Module):
    """Heatmaps at stride 2; per landmark a covariance and a visibility; per film a view error and features."""

    def __init__(self, landmarks, scale=1.0):
        super().__init__()
        w = [max(8, int(round(c * scale / 8)) * 8) for c in (40, 64, 80, 96, 96)]
        self.landmarks = landmarks
        self.body = UNet([(max(8, int(24 * scale)), 2)], w, [1, 2, 2, 2, 2])
        self.refine = ConvUnit(w[0], 2 * w[0])
        self.heatmap_head = nn.Conv2d(2 * w[0], landmarks, 1)
        self.mask_head = nn.Conv2d(2 * w[0], 3, 1)
        hidden = 64
        self.local = nn.Linear(w[1] + 5, hidden)
        self.overall = nn.Linear(w[-1], hidden, bias=False)
        self.per_landmark = nn.Parameter(torch.zeros(landmarks, hidden))
        self.spread_head = nn.Linear(hidden, 4)
        self.spread_bias = nn.Parameter(torch.tensor([1.0, 0.0, 1.0, 0.0]).repeat(landmarks, 1))
        self.view_error_head = nn.Sequential(nn.Linear(w[-1], hidden), nn.ReLU(), nn.Linear(hidden, 2))

    def forward(self, film, masks=False):
        fine, coarse, bottleneck = self.body(film)
        top = self.refine(fine)
        heat = self.heatmap_head(top)
        features = bottleneck.float().mean((2, 3))
        # Moments of a heatmap need more than the eight bits of a bfloat16.
        with torch.autocast(film.device.type, enabled=False):
            covariance, visibility = self.spread(heat.float(), coarse.float(), features)
        out = {"heatmaps": heat, "covariance": covariance, "visibility": visibility,
               "view_error": view_error_of(self.view_error_head(features)), "features": features}
        if masks:
            out["masks"] = self.mask_head(top)
        return out

    def spread(self, heat, coarse, features):
        """Covariance xx, xy, yy in input pixels squared, and visibility logits, read where each heatmap points."""
        n, k, h, w = heat.shape
        p = F.softmax(heat.reshape(n, k, h * w), 2).reshape(n, k, h, w)
        px, py = p.sum(2), p.sum(3)
        grid = torch.arange(w, device=heat.device, dtype=torch.float32)
        mx, my = (px * grid).sum(2, keepdim=True), (py * grid).sum(2, keepdim=True)
        dx, dy = grid - mx, grid - my
        sxx, syy = (px * dx * dx).sum(2), (py * dy * dy).sum(2)
        sxy = (torch.matmul(p, dx.unsqueeze(3)).squeeze(3) * dy).sum(2)
        peak = p.reshape(n, k, h * w).amax(2)
        shape = torch.stack([torch.log(sxx + 0.1), torch.log(syy + 0.1), sxy / torch.sqrt((sxx + 0.1) * (syy + 0.1)),
                             torch.log(peak + 1e-6), torch.sqrt(sxx + syy + 0.1) / 16], 2)
        pooled = 4 * F.avg_pool2d(p, 2).reshape(n, k, (h // 2) * (w // 2))
        c = coarse.shape[1]
        local = torch.matmul(pooled, coarse.reshape(n, c, (h // 2) * (w // 2)).transpose(1, 2))
        hidden = self.local(torch.cat([local, shape], 2)) + self.overall(features).unsqueeze(1) + self.per_landmark
        raw = self.spread_head(F.relu(hidden)) + self.spread_bias
        a = torch.exp(raw[:, :, 0].clamp(-2.0, 4.0))
        c2 = torch.exp(raw[:, :, 2].clamp(-2.0, 4.0))
        b = raw[:, :, 1].clamp(-60.0, 60.0)
        covariance = torch.stack([a * a + COVARIANCE_FLOOR, a * b, b * b + c2 * c2 + COVARIANCE_FLOOR], 2)
        return covariance, raw[:, :, 3]


class ViewNet(nn.Module):
    """Which view, if any; four locator heatmaps at stride 4; the view error."""

    def __init__(self, scale=1.0):
        super().__init__()
        w = [max(8, int(round(c * scale / 8)) * 8) for c in (40, 48, 64, 64)]
        self.body = UNet([(16, 2), (24, 2)], w, [2, 2, 1, 1])
        self.refine = ConvUnit(w[0], w[0])
        self.locator_head = nn.Conv2d(w[0], len(LOCATOR_POINTS), 1)
        self.mask_head = nn.Conv2d(w[0], 3, 1)
        self.view_head = nn.Sequential(nn.Linear(2 * w[3] + w[0], 64), nn.ReLU(), nn.Linear(64, len(VIEW_CLASSES)))
        self.view_error_head = nn.Sequential(nn.Linear(2 * w[3] + w[0], 64), nn.ReLU(), nn.Linear(64, 2))

    def forward(self, film, masks=False):
        fine, _, bottleneck = self.body(film)
        top = self.refine(fine)
        pooled = torch.cat([bottleneck.mean((2, 3)), bottleneck.amax((2, 3)), top.mean((2, 3))], 1)
        out = {"view": self.view_head(pooled), "locator": self.locator_head(top),
               "view_error": view_error_of(self.view_error_head(pooled))}
        if masks:
            out["masks"] = self.mask_head(top)
        return out


def fold(net):
    """Folds every batch normalisation into its convolution, in place; the network must be in evaluation mode."""
    for module in net.modules():
        if isinstance(module, ConvUnit):
            module.fold()
    return net


def cost(net, size=256):
    """Parameters used when reading a film, and multiply-accumulates of one film."""
    total, hooks = [0], []

    def count(module, _, out):
        if isinstance(module, nn.Conv2d):
            per = module.in_channels * module.kernel_size[0] * module.kernel_size[1] // module.groups
            total[0] += per * out[0].numel()
        else:
            total[0] += module.in_features * out[0].numel()

    for module in net.modules():
        if isinstance(module, (nn.Conv2d, nn.Linear)):
            hooks.append(module.register_forward_hook(count))
    training = net.training
    net.eval()
    with torch.no_grad():
        net(torch.zeros(1, 1, size, size, device=next(net.parameters()).device))
    net.train(training)
    for hook in hooks:
        hook.remove()
    unused = sum(p.numel() for p in net.mask_head.parameters())
    return sum(p.numel() for p in net.parameters()) - unused, total[0]


if __name__ == "__main__":
    for name, net in (("lateral", LandmarkNet(49)), ("ap", LandmarkNet(31)), ("view", ViewNet())):
        parameters, macs = cost(net)
        print(f"{name}: {parameters / 1e6:.3f} M parameters, {macs / 1e9:.3f} GMAC")
