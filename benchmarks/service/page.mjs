// How long a reader waits at the page, in real Chromium: from starting the program until the page is ready, from opening a
// study until its film is shown, and from moving a landmark until the lines have followed. Argument: elbowassist.dll as
// built. Run it on a quiet machine; it prints the figures with the processor they were measured on.
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';

const here = path.dirname(new URL(import.meta.url).pathname);
const { chromium } = createRequire(path.join(here, '../../tests/ElbowAssist.Browser/Page/package.json'))('playwright-core');
const [program] = process.argv.slice(2);
const OPENINGS = 6, MOVES = 120, STARTS = 3;
const median = list => [...list].sort((a, b) => a - b)[list.length >> 1];
const seconds = ms => `${(ms / 1000).toFixed(2)} s`;

const folder = await mkdtemp(path.join(os.tmpdir(), 'elbowassist-'));
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', headless: true, args: ['--no-sandbox'] });
try {
  const starts = [];
  for (let i = 0; i < STARTS; i++) {
    const run = await start(`studies-${i}.db`);
    starts.push(run.ready);
    if (i < STARTS - 1) { await run.page.close(); await run.stop(); continue; }
    const opened = [];
    for (let n = 0; n < OPENINGS; n++) opened.push(await open(run));
    const drags = await drag(run.page);
    await run.stop();
    console.log(`${os.cpus().length} × ${os.cpus()[0].model}, load ${os.loadavg()[0].toFixed(1)}`);
    console.log(`page ready after starting the program: ${starts.map(seconds).join(', ')} (2 s wanted)`);
    console.log(`film shown after opening a study: first ${seconds(opened[0])}, then median ${seconds(median(opened.slice(1)))} of ${opened.length - 1} (1 s wanted)`);
    console.log(`lines follow a dragged landmark: median ${median(drags).toFixed(0)} ms, 95 of 100 within ${[...drags].sort((a, b) => a - b)[Math.floor(drags.length * 0.95)].toFixed(0)} ms, ${drags.length} times (50 ms wanted)`);
  }
} finally {
  await browser.close();
  await rm(folder, { recursive: true, force: true });
}

async function start(store) {
  const began = performance.now();
  const child = spawn('dotnet', [program, 'serve', '--port', '0', '--store', path.join(folder, store)], { stdio: ['ignore', 'pipe', 'inherit'] });
  const address = await new Promise((done, failed) => {
    let said = '';
    child.stdout.on('data', text => { said += text; const found = /The reading page is at (\S+)/.exec(said); if (found) done(found[1]); });
    child.on('exit', code => failed(new Error(`The program ended with ${code}: ${said}`)));
  });
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(address);
  await page.waitForFunction(() => performance.getEntriesByName('page-ready').length > 0);
  const ready = performance.now() - began;
  return { page, address, ready, stop: () => new Promise(done => { child.removeAllListeners('exit'); child.on('exit', done); child.kill('SIGINT'); setTimeout(() => child.kill('SIGKILL'), 3000).unref(); }) };
}

/** Opens a demo study and tells how long its first film took to be on the screen. */
async function open({ page, address }) {
  await page.goto(`${address}`);
  await page.reload();
  await page.waitForSelector('[id^="demo-"]');
  const took = await page.evaluate(() => new Promise(done => {
    performance.clearMarks('film-shown');
    const began = performance.now();
    document.querySelector('[id^="demo-adult"]').click();
    (function look() {
      // The next frame has the film on it.
      if (performance.getEntriesByName('film-shown').length > 0) requestAnimationFrame(() => done(performance.now() - began));
      else requestAnimationFrame(look);
    })();
  }));
  await page.waitForFunction(() => ![...document.querySelectorAll('.state')].some(s => s.textContent.includes('being read')), null, { timeout: 120000 });
  return took;
}

async function drag(page) {
  await page.check('#visible');
  await page.click('#begin');
  await page.click('#step-alignment');
  await page.keyboard.press('m');
  await page.waitForSelector('[data-landmark="humerus.anterior.4"]');
  const [x, y] = await page.evaluate(() => { const c = document.querySelector('[data-landmark="humerus.anterior.4"]').getBoundingClientRect(); return [c.x + c.width / 2, c.y + c.height / 2]; });
  await page.mouse.move(x, y);
  await page.mouse.down();
  // As fast as a hand moves: a place every 33 ms, there and back.
  for (let i = 1; i <= MOVES; i++) { await page.mouse.move(x + 12 * Math.sin(i / 8), y); await page.waitForTimeout(33); }
  const drags = await page.evaluate(() => performance.getEntriesByName('drag').map(m => m.duration));
  await page.mouse.up();
  return drags.slice(5);
}
