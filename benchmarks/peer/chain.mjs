// The chain of a reading in a few lines of Node: decode, crop, standardise, every pass, the peak of each heatmap.
//   dotnet run -c Release --project benchmarks/ElbowAssist.Benchmarks -- chain 15 /tmp/peer   (leaves the film and our times)
//   npm install --ignore-scripts --prefix benchmarks/peer && node benchmarks/peer/chain.mjs /tmp/peer 15
import { readFileSync } from "node:fs";
import { join } from "node:path";
import ort from "onnxruntime-node";
import sharp from "sharp";

const [folder, rounds = "15"] = process.argv.slice(2);
const ours = JSON.parse(readFileSync(join(folder, "ours.json"), "utf8"));
const models = join(import.meta.dirname, "..", "..", "models");
const options = { intraOpNumThreads: 1, interOpNumThreads: 1, graphOptimizationLevel: "all", extra: { session: { intra_op: { allow_spinning: "0" } } } };
const view = await ort.InferenceSession.create(join(models, "view", "model.onnx"), options);
const lateral = await ort.InferenceSession.create(join(models, "lateral", "model.onnx"), options);
sharp.concurrency(1);
sharp.cache(false);

function standardised(grey) {
  const ordered = Uint16Array.from(grey).sort(), low = ordered[Math.floor(ordered.length * 0.005)], range = Math.max(1, ordered[Math.floor(ordered.length * 0.995)] - low);
  const crop = Float32Array.from(grey, v => Math.min(1, Math.max(0, (v - low) / range)));
  let sum = 0, squares = 0;
  for (const v of crop) { sum += v; squares += v * v; }
  const mean = sum / crop.length, deviation = Math.sqrt(Math.max(0, squares / crop.length - mean * mean)) + 0.03;
  return crop.map(v => (v - mean) / deviation);
}

function peaks({ data, dims: [, count, height, width] }) {
  return Array.from({ length: count }, (_, c) => {
    let best = c * height * width;
    for (let i = best; i < (c + 1) * height * width; i++) if (data[i] > data[best]) best = i;
    return best - c * height * width;
  });
}

async function once() {
  const started = performance.now();
  const film = sharp(join(folder, "film.png"));
  const { data, info } = await film.toColourspace("grey16").raw({ depth: "ushort" }).toBuffer({ resolveWithObject: true });
  const decoded = performance.now();
  const pixels = new Uint16Array(data.buffer, data.byteOffset, info.width * info.height * info.channels);
  const pass = async (session, turn, output) => {
    const step = info.width / 256, grey = new Uint16Array(65536);
    for (let y = 0; y < 256; y++) for (let x = 0; x < 256; x++) {
      const [u, v] = turn % 2 ? [y, x] : [x, y];
      grey[y * 256 + x] = pixels[(Math.floor((v + 0.5) * step) * info.width + Math.floor((u + 0.5) * step)) * info.channels];
    }
    const result = await session.run({ film: new ort.Tensor("float32", standardised(grey), [1, 1, 256, 256]) });
    return peaks(result[output]);
  };
  for (let p = 0; p < ours.passes[0]; p++) await pass(view, p, "locator");
  for (let p = 0; p < ours.passes[1]; p++) await pass(lateral, p, "heatmaps");
  return [decoded - started, performance.now() - started];
}

const times = [];
for (let i = -2; i < Number(rounds); i++) { const t = await once(); if (i >= 0) times.push(t); }
const median = which => times.map(t => t[which]).sort((a, b) => a - b)[Math.floor(times.length / 2)];
console.log(`node ${process.version}: decode ${median(0).toFixed(1)} ms, whole ${median(1).toFixed(1)} ms; ours ${ours.decode.toFixed(1)} and ${ours.whole.toFixed(1)} ms; ours / peer ${(ours.whole / median(1)).toFixed(3)}`);
