// The chain of a reading in a few lines of Node: decode, crop, standardise, every pass, the peak of each heatmap. Started by
//   npm install --ignore-scripts --prefix benchmarks/peer
//   dotnet run -c Release --project benchmarks/ElbowAssist.Benchmarks -- peer 15
// It reads the paths of films on standard input, a line each, and answers each with its milliseconds as JSON.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createInterface } from "node:readline";
import ort from "onnxruntime-node";
import sharp from "sharp";

const [threads, viewPasses, landmarkPasses] = process.argv.slice(2).map(Number);
const options = { intraOpNumThreads: threads, interOpNumThreads: 1, graphOptimizationLevel: "all", extra: { session: { intra_op: { allow_spinning: "0" } } } };
const models = join(import.meta.dirname, "..", "..", "models");
const network = async name => {
  const manifest = JSON.parse(readFileSync(join(models, name, "model.json"), "utf8"));
  return { session: await ort.InferenceSession.create(join(models, name, manifest.onnx.file), options), input: manifest.input };
};
const [view, lateral] = [await network("view"), await network("lateral")];
sharp.concurrency(threads);
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
    return [best % width, Math.floor(best / width) % height];
  });
}

async function read(path) {
  const started = performance.now();
  const { data, info } = await sharp(path).toColourspace("grey16").raw({ depth: "ushort" }).toBuffer({ resolveWithObject: true });
  const decode = performance.now() - started;
  const pixels = new Uint16Array(data.buffer, data.byteOffset, info.width * info.height * info.channels);
  const pass = async ({ session, input: { name, width: side } }, turn, output) => {
    const grey = new Uint16Array(side * side);
    for (let y = 0; y < side; y++) for (let x = 0; x < side; x++) {
      const [u, v] = turn % 2 ? [y, x] : [x, y];
      grey[y * side + x] = pixels[(Math.floor((v + 0.5) * info.height / side) * info.width + Math.floor((u + 0.5) * info.width / side)) * info.channels];
    }
    return peaks((await session.run({ [name]: new ort.Tensor("float32", standardised(grey), [1, 1, side, side]) }))[output]);
  };
  for (let p = 0; p < viewPasses; p++) await pass(view, p, "locator");
  for (let p = 0; p < landmarkPasses; p++) await pass(lateral, p, "heatmaps");
  return { decode, whole: performance.now() - started };
}

console.log(JSON.stringify({ node: process.version, threads }));
for await (const path of createInterface({ input: process.stdin })) console.log(JSON.stringify(await read(path)));
