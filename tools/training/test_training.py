"""Tests of the training code, run by hand: python3 -m unittest test_training -v (in this folder)."""
import io
import math
import os
import sys
import tempfile
import types
import unittest

import numpy as np
import torch

import attenuation
import checkpoint
import export
import loss
from decode import decode
from feed import Feed, FeedError, read_frame
from film import FilmMaker, sample_at, standard
from network import LandmarkNet, ViewNet, cost, fold
from nonradiograph import NonRadiographs
from otheranatomy import OtherAnatomy
from picture import blur, jpeg, quantiles
from pool import Placement, shown

HERE = os.path.dirname(os.path.abspath(__file__))
STAND_IN = [sys.executable, os.path.join(HERE, "smoke_feed.py")]


class Frames(unittest.TestCase):
    def test_frames_come_whole_and_end(self):
        with Feed(STAND_IN, views="ap=1", batch=3, first_seed=10_000, count=5, size=64) as feed:
            frames = [feed.next(), feed.next()]
            self.assertIsNone(feed.next())
        self.assertEqual([f.films for f in frames], [3, 2])
        self.assertEqual(torch.cat([f.arrays["seeds"] for f in frames]).tolist(), list(range(10_000, 10_005)))
        self.assertEqual(tuple(frames[0].arrays["paths"].shape), (3, 5, 64, 64))
        self.assertEqual(frames[0].arrays["paths"].dtype, torch.float16)

    def test_text_among_the_frames_is_an_error(self):
        with self.assertRaises(FeedError):
            read_frame(io.BytesIO(b"Loading kernels..."))

    def test_a_feed_that_fails_is_an_error(self):
        with Feed([sys.executable, "-c", "raise SystemExit(3)"]) as feed, self.assertRaises(FeedError):
            feed.next()


class Physics(unittest.TestCase):
    def test_interpolation_gives_the_published_values_between_their_neighbours(self):
        # NISTIR 5632 gives cortical bone 1.331 and 0.6655 cm²/g at 30 and 40 keV; ICRU-44 density 1.920 g/cm³.
        at = dict(zip(attenuation.ENERGIES_KEV, attenuation.per_mm("bone").tolist()))
        self.assertTrue(0.6655 * 1.920 / 10 < at[38.0] < at[31.0] < 1.331 * 1.920 / 10)
        self.assertAlmostEqual(at[31.0], 0.2556 * (31 / 30) ** (math.log(1.278 / 2.556) / math.log(4 / 3)), 4)

    def test_weights_sum_to_one_and_bone_stops_more_than_fat(self):
        weights, mu = attenuation.Spectrum("cpu").sample(50)
        self.assertTrue(torch.allclose(weights.sum(1), torch.ones(50), atol=1e-5))
        self.assertTrue(bool((mu[:, :, 2] > 1.5 * mu[:, :, 1]).all()))
        mean = (weights * torch.tensor(attenuation.ENERGIES_KEV)).sum(1)
        self.assertTrue(bool(((mean > 30) & (mean < 45)).all()))


class Pictures(unittest.TestCase):
    def test_blur_keeps_the_mean_and_has_its_width(self):
        v = torch.zeros(1, 1, 256, 256)
        v[0, 0, 128, 128] = 1
        for sigma in (1.0, 4.0, 18.0):
            b = blur(v, sigma)[0, 0].double()
            x = torch.arange(256).double()
            mean = (b.sum(0) * x).sum() / b.sum()
            spread = math.sqrt(float((b.sum(0) * (x - mean) ** 2).sum() / b.sum()))
            self.assertAlmostEqual(float(b.sum()), 1.0, 2)
            self.assertLess(abs(spread - sigma) / sigma, 0.02)

    def test_quantiles_ignore_what_is_masked(self):
        v = torch.arange(64.0 * 64).view(1, 1, 64, 64)
        mask = (v < 2048).float()
        lo, hi = quantiles(v, mask, torch.zeros(1, 1, 1, 1), torch.ones(1, 1, 1, 1), step=1)
        self.assertEqual((float(lo), float(hi)), (0.0, 2047.0))

    def test_compression_loses_what_the_standard_codec_loses(self):
        # Against Pillow's JPEG codec on the same picture.
        try:
            from PIL import Image
        except ImportError:
            self.skipTest("Pillow is not installed")
        torch.manual_seed(1)
        v = (blur(torch.randn(1, 1, 64, 64), 1.5) * 0.7 + 0.5).clamp(0, 1)
        picture = (v[0, 0] * 255).round().byte().numpy()
        for quality in (30, 75):
            file = io.BytesIO()
            Image.fromarray(picture).save(file, "JPEG", quality=quality)
            theirs = np.asarray(Image.open(file), np.float32) / 255
            ours = jpeg(torch.from_numpy(picture).float()[None, None] / 255, torch.full((1, 1, 1, 1), float(quality)))
            self.assertLess(float(np.abs(ours[0, 0].numpy() - theirs).mean()), 0.004)
            self.assertGreater(float(np.abs(picture / 255.0 - theirs).mean()), 0.006)


class Placing(unittest.TestCase):
    def test_points_go_where_the_image_goes(self):
        torch.manual_seed(2)
        n, size = 6, 128
        place = Placement(n, size, "cpu", share=1.0, elastic=4.0)
        point = torch.tensor([[[50.0, 70.0]]]).repeat(n, 1, 1)
        axis = torch.arange(size) + 0.5
        blob = torch.exp(-((axis.view(1, -1) - 50) ** 2 + (axis.view(-1, 1) - 70) ** 2) / 4.5).expand(n, 1, size, size)
        moved = place.image(blob)[:, 0]
        mass = moved.sum((1, 2))
        x, y = (moved.sum(1) * axis).sum(1) / mass, (moved.sum(2) * axis).sum(1) / mass
        self.assertLess(float((torch.stack([x, y], 1) - place.points(point)[:, 0]).norm(dim=1).max()), 0.25)
        self.assertGreater(float((place.points(point) - point).norm(dim=2).max()), 1.0)

    def test_unmoved_films_stay_as_they_are(self):
        place = Placement(2, 64, "cpu", share=0.0, elastic=0.0)
        v = torch.rand(2, 3, 64, 64)
        self.assertLess(float((place.image(v) - v).abs().max()), 1e-4)
        nothing = torch.full((2, 1, 2), float("nan"))
        self.assertTrue(bool(torch.isnan(place.points(nothing)).all()))

    def test_what_lies_outside_the_exposed_field_is_not_visible(self):
        field = torch.ones(1, 1, 64, 64)
        field[..., :32] = 0
        points = torch.tensor([[[10.0, 10.0], [50.0, 10.0], [70.0, 10.0], [float("nan")] * 2]])
        self.assertEqual(shown(points, field).tolist(), [[False, True, False, False]])
        self.assertAlmostEqual(float(sample_at(field, points)[0, 1]), 1.0, 5)


class Films(unittest.TestCase):
    def test_films_are_finite_standardised_and_filled_beyond_the_edge(self):
        torch.manual_seed(3)
        with Feed(STAND_IN, views="lateral=1", batch=4, count=4) as feed:
            paths = feed.next().arrays["paths"].float()
        on_film = torch.ones(4, 1, 256, 256)
        on_film[..., 200:] = 0
        film, field = FilmMaker("cpu")(paths, on_film)
        self.assertTrue(bool(torch.isfinite(film).all()))
        self.assertLess(float(film.mean((1, 2, 3)).abs().max()), 1e-3)
        self.assertEqual(float(field[..., 201:].max()), 0.0)
        self.assertEqual(float(film[..., 201:].std((1, 2, 3)).max()), 0.0)

    def test_standardising_follows_the_recipe(self):
        v = torch.tensor([0.0, 0.0, 1.0, 1.0]).view(1, 1, 2, 2)
        self.assertTrue(torch.allclose(standard(v), (v - 0.5) / 0.53))

    def test_pictures_that_are_no_radiograph_fill_the_range(self):
        pictures = NonRadiographs(FilmMaker("cpu"))(8)
        self.assertEqual(tuple(pictures.shape), (8, 1, 256, 256))
        self.assertTrue(bool(torch.isfinite(pictures).all()))


    def test_drawn_anatomy_has_bone_in_soft_tissue(self):
        torch.manual_seed(8)
        paths = OtherAnatomy(FilmMaker("cpu"))(5)
        self.assertTrue(bool(torch.isfinite(paths).all()) and float(paths.min()) >= 0)
        self.assertTrue(bool(((paths[:, 2] > 1).float().mean((1, 2)) > 0.005).all()))
        self.assertTrue(bool(((paths[:, 0] > 5).float().mean((1, 2)) > 0.05).all()))


class Losses(unittest.TestCase):
    def test_a_target_decodes_to_its_own_point(self):
        points = torch.tensor([[[100.3, 57.9], [31.0, 200.2]]])
        tangents = torch.tensor([[[float("nan")] * 2, [0.6, 0.8]]])
        target = loss.heatmap_target(points, tangents, 128, 2)
        self.assertTrue(torch.allclose(target.sum((2, 3)), torch.ones(1, 2), atol=1e-4))
        at, _ = decode(torch.log(target + 1e-12), 2, radius=12)
        self.assertLess(float((at - points).abs().max()), 0.05)

    def test_a_contour_target_is_long_along_the_edge(self):
        nan = float("nan")
        t = loss.heatmap_target(torch.tensor([[[128.0, 128.0]] * 2]), torch.tensor([[[0.0, 1.0], [nan, nan]]]), 128, 2)
        grid = torch.arange(128) + 0.5 - 64
        for i, (x, y) in enumerate(((loss.SIGMA_NORMAL, loss.SIGMA_TANGENT), (loss.SIGMA_POINT, loss.SIGMA_POINT))):
            self.assertAlmostEqual(float((t[0, i].sum(0) * grid ** 2).sum()), x * x, 2)
            self.assertAlmostEqual(float((t[0, i].sum(1) * grid ** 2).sum()), y * y, 2)

    def test_cross_entropy_is_least_at_the_target(self):
        points = torch.tensor([[[64.0, 64.0]]])
        target = loss.heatmap_target(points, torch.full_like(points, float("nan")), 64, 2)
        entropy = -(target * torch.log(target + 1e-30)).sum()
        self.assertAlmostEqual(float(loss.heatmap_cross_entropy(torch.log(target + 1e-30), target)), float(entropy), 3)
        self.assertGreater(float(loss.heatmap_cross_entropy(torch.zeros_like(target), target)), float(entropy) + 1)

    def test_likelihood_is_the_normal_density(self):
        error, covariance = torch.tensor([[[1.0, -2.0]]]), torch.tensor([[[2.0, 0.5, 3.0]]])
        matrix = np.array([[2.0, 0.5], [0.5, 3.0]])
        e = np.array([1.0, -2.0])
        expected = 0.5 * e @ np.linalg.inv(matrix) @ e + 0.5 * np.log(np.linalg.det(matrix)) + np.log(2 * np.pi)
        self.assertAlmostEqual(float(loss.error_likelihood(error, covariance)), float(expected), 5)

    def test_hidden_landmarks_cost_only_their_visibility(self):
        torch.manual_seed(4)
        net = LandmarkNet(3, 0.25)
        out = net(torch.randn(2, 1, 256, 256), masks=True)
        batch = {"size": 256, "landmarks": torch.full((2, 3, 2), float("nan")), "labels": torch.zeros(2, 3, 256, 256),
                 "tangents": torch.full((2, 3, 2), float("nan")), "visible": torch.zeros(2, 3, dtype=torch.bool),
                 "view_error": torch.full((2,), float("nan"))}
        total, parts = loss.landmark_loss(out, batch, loss.landmark_weights(["a"] * out["heatmaps"].shape[1]))
        self.assertTrue(math.isfinite(float(total)))
        self.assertEqual([float(parts[k]) for k in ("heat", "coordinate", "spread", "turn")], [0.0] * 4)
        total.backward()
        self.assertTrue(all(bool(torch.isfinite(p.grad).all()) for p in net.parameters() if p.grad is not None))


class Networks(unittest.TestCase):
    def test_networks_keep_their_budgets(self):
        for net, parameters, macs in ((LandmarkNet(49), 1.9e6, 4e9), (ViewNet(), 0.6e6, 1e9)):
            used, work = cost(net)
            self.assertLessEqual(used, parameters)
            self.assertLessEqual(work, macs)

    def test_folding_changes_nothing_and_covariances_are_positive(self):
        torch.manual_seed(5)
        net = LandmarkNet(4, 0.25)
        film = torch.randn(2, 1, 256, 256)
        net(film)
        net.eval()
        with torch.no_grad():
            before = net(film)
            after = fold(net)(film)
        for name, value in before.items():
            self.assertLess(float((after[name] - value).abs().max()), 1e-3, name)
        xx, xy, yy = before["covariance"].unbind(2)
        self.assertTrue(bool(((xx > 0) & (xx * yy - xy * xy > 0)).all()))

    def test_model_folders_are_consistent(self):
        import hashlib
        import json
        torch.manual_seed(6)
        for name, net, landmarks in (("lateral", LandmarkNet(2, 0.25), ["ulna.coronoid", "ulna.olecranon"]),
                                     ("view", ViewNet(0.5), [])):
            with tempfile.TemporaryDirectory() as folder:
                scale = 0.25 if landmarks else 0.5
                worst = export.write_model_folder(folder, name, net, landmarks, scale, torch.randn(1, 1, 256, 256), None)
                self.assertTrue(all(v < 1e-3 for v in worst.values()), worst)
                with open(os.path.join(folder, "model.json"), encoding="utf-8") as file:
                    manifest = json.load(file)
                with open(os.path.join(folder, manifest["onnx"]["file"]), "rb") as file:
                    self.assertEqual(hashlib.sha256(file.read()).hexdigest(), manifest["onnx"]["sha256"])
                self.assertEqual([entry["name"] for entry in manifest["landmarks"]], landmarks)
                self.assertEqual(os.path.getsize(os.path.join(folder, "golden", "input.bin")), 4 * 256 * 256)


class Checkpoints(unittest.TestCase):
    def test_training_goes_on_from_a_checkpoint(self):
        torch.manual_seed(7)
        net, ema = ViewNet(0.25), ViewNet(0.25)
        optimiser = torch.optim.AdamW(net.parameters(), lr=1e-3)
        film = torch.randn(2, 1, 256, 256)
        for _ in range(2):
            optimiser.zero_grad()
            net(film)["view"].square().sum().backward()
            optimiser.step()
        trainer = types.SimpleNamespace(name="view", landmarks=[], scale=0.25, steps=2, films=4, seconds=1.0, net=net,
                                        ema=ema, optimiser=optimiser, next_seed=lambda: 2_600_000_004)
        with tempfile.TemporaryDirectory() as folder:
            path = os.path.join(folder, "view.pt")
            checkpoint.save(path, trainer)
            state = checkpoint.load(path)
        again = ViewNet(0.25)
        again.load_state_dict({k: v.float() if v.is_floating_point() else v for k, v in state["net"].items()})
        fresh = torch.optim.AdamW(again.parameters(), lr=1e-3)
        checkpoint.restore_moments(fresh, again.parameters(), state["moments"], state["steps"])
        again(film)["view"].square().sum().backward()
        fresh.step()
        self.assertEqual(state["next_seed"], 2_600_000_004)
        for p, q in zip(net.parameters(), again.parameters()):
            self.assertLess(float((p - q).abs().max()), 0.02)


if __name__ == "__main__":
    unittest.main()
