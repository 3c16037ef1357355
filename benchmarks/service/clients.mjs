// Clients that send films to a running service as fast as it answers. Arguments: address, film, clients, seconds, and the
// process number of the service to watch its memory. Prints counts by status, films per second and the largest memory seen.
import { readFile } from 'node:fs/promises';

const [address, film, clients, seconds, pid] = process.argv.slice(2);
const content = await readFile(film);
const until = Date.now() + Number(seconds) * 1000;
const counts = {};
const times = [];
let memory = 0, sent = 0;

async function client(number) {
  while (Date.now() < until) {
    // Another name makes another reading: nothing comes from the shelf.
    const started = performance.now();
    const response = await fetch(`${address}/api/readings?view=lateral&name=${number}-${sent++}.png`, { method: 'POST', body: content, headers: { 'Content-Type': 'image/png' } });
    await response.arrayBuffer();
    counts[response.status] = (counts[response.status] ?? 0) + 1;
    if (response.status === 200) times.push(performance.now() - started);
    else await new Promise(done => setTimeout(done, 1000 * Number(response.headers.get('Retry-After') ?? 1)));
  }
}

const watch = setInterval(async () => {
  const status = await readFile(`/proc/${pid}/status`, 'utf8').catch(() => '');
  memory = Math.max(memory, Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024);
}, 500);
const started = Date.now();
await Promise.all(Array.from({ length: Number(clients) }, (_, i) => client(i)));
clearInterval(watch);
times.sort((a, b) => a - b);
console.log(JSON.stringify({ counts, filmsPerSecond: (counts[200] ?? 0) / ((Date.now() - started) / 1000), medianMs: Math.round(times[times.length >> 1] ?? 0), largestMemoryMiB: Math.round(memory) }));
