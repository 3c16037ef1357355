// What the tests of the page do at it. Arguments: name of the act, address of the service, folder for screenshots, further ones.
// Prints what was seen as JSON.
import { Reader } from './reader.mjs';
import path from 'node:path';

const [name, address, shots, ...more] = process.argv.slice(2);
const shot = (reader, label) => reader.page.screenshot({ path: path.join(shots, `${name}-${label}.png`) });

async function readAdult(reader) {
  await reader.press('Enter');
  await reader.press('1', '2', '2');
  await reader.press('Shift+Digit1', 'n');
  await reader.press('l');
  await reader.clickFilm(0.41, 0.25);
  await reader.clickFilm(0.41, 0.55);
  await reader.press('3', 'Shift+Digit1', '1', 't', 'n');
  await reader.press('2', '1', '1', 'n');
  await reader.press('Shift+Digit1');
  await reader.press('Shift+Digit1');
  await reader.press('3', 'Enter');
}

const acts = {
  async adult() {
    const reader = await Reader.sit(address);
    await shot(reader, 'start');
    const axe = { start: await reader.axe() };
    await reader.click('#demo-' + more[0]);
    await reader.filmsRead();
    await shot(reader, 'question');
    axe.question = await reader.axe();
    await reader.press('Enter');
    axe.step = await reader.axe();
    await shot(reader, 'history');
    await reader.press('1', '2', '2', 'Shift+Digit1', 'n', 'l');
    const before = reader.answers.join('\n');
    const hiddenBefore = await reader.page.evaluate(() => ({ overlay: document.querySelectorAll('.overlay *').length, values: document.querySelectorAll('.value').length }));
    await reader.clickFilm(0.41, 0.25);
    await reader.clickFilm(0.41, 0.55);
    await shot(reader, 'own-line');
    await reader.press('3', 'Shift+Digit1', '1', 't');
    await shot(reader, 'alignment');
    axe.alignment = await reader.axe();
    const shown = await reader.page.evaluate(() => ({ overlay: document.querySelectorAll('.overlay .line').length, values: document.querySelectorAll('.value').length, difference: document.querySelector('.difference')?.textContent ?? null }));
    await reader.press('n', '2', '1', '1');
    await shot(reader, 'effusion');
    await reader.press('n', 'Shift+Digit1');
    await reader.press('Shift+Digit1');
    await shot(reader, 'conclusion');
    axe.conclusion = await reader.axe();
    await reader.press('3', 'Enter');
    const acts = reader.acts;
    await reader.press('c');
    await shot(reader, 'closed');
    axe.closed = await reader.axe();
    const copied = await reader.page.evaluate(() => navigator.clipboard.readText());
    const title = await reader.text('#report-title');
    const result = { acts, axe, before: { leaks: /"(alignment|carries|evidence)":\s*[[{]/.test(before), ...hiddenBefore }, shown, title, copied, words: await reader.text('body'), errors: reader.errors, foreign: reader.foreign, caution: await reader.text('#caution') };
    await reader.leave();
    return result;
  },

  async child() {
    const reader = await Reader.sit(address);
    await reader.click('#demo-' + more[0]);
    await reader.filmsRead();
    await reader.press('Enter');
    const steps = await reader.steps();
    await reader.click('#step-growth-centres');
    await reader.press('1', '2', '2', '2', '2', '2', 't');
    await reader.page.waitForFunction(() => document.querySelector('.strip')?.naturalWidth > 0);
    await shot(reader, 'growth');
    const axe = await reader.axe();
    const result = { steps, axe, strip: await reader.has('.strip'), errors: reader.errors, words: await reader.text('body') };
    await reader.leave();
    return result;
  },

  async refused() {
    const reader = await Reader.sit(address);
    await reader.page.setInputFiles('#choose', more);
    await reader.quiet();
    await reader.page.waitForFunction(() => ![...document.querySelectorAll('.state')].some(s => s.textContent.includes('being read')), null, { timeout: 60000 });
    await reader.quiet();
    await shot(reader, 'films');
    const result = { notes: await reader.text('#notes'), tabs: await reader.page.locator('.tabs .tab').allInnerTexts(), arrivals: await reader.has('.arrivals'), lines: await reader.page.locator('.overlay *').count(), axe: await reader.axe(), errors: reader.errors, markup: await reader.has('#stage img, #stage script') };
    await reader.leave();
    return result;
  },

  async drag() {
    const reader = await Reader.sit(address);
    await reader.click('#demo-' + more[0]);
    await reader.filmsRead();
    await reader.page.check('#visible');
    await reader.click('#begin');
    await reader.click('#step-alignment');
    await reader.press('m');
    const place = () => reader.page.evaluate(() => { const c = document.querySelector('[data-landmark="humerus.anterior.4"]').getBoundingClientRect(); return [c.x + c.width / 2, c.y + c.height / 2]; });
    const line = () => reader.page.evaluate(() => document.querySelector('.overlay .line[data-name="anterior-humeral-line.position"] path')?.getAttribute('d'));
    const [x, y] = await place();
    const before = await line();
    await reader.page.mouse.move(x, y);
    await reader.page.mouse.down();
    for (let i = 1; i <= 60; i++) { await reader.page.mouse.move(x + i * 0.3, y); await reader.page.waitForTimeout(25); }
    const during = await line();
    await shot(reader, 'moving');
    await reader.page.mouse.up();
    await reader.quiet();
    const after = await line();
    await reader.press('Control+z');
    const back = await line();
    const lags = await reader.page.evaluate(() => performance.getEntriesByName('drag').map(m => m.duration));
    await reader.press('ArrowRight');
    const nudged = await line();
    const result = { before, during, after, back, nudged, lags, errors: reader.errors };
    await reader.leave();
    return result;
  },

  async keyboard() {
    const reader = await Reader.sit(address);
    // Tab reaches the demo; Enter opens it; everything after that is keys as well.
    for (let i = 0; i < 30 && await reader.page.evaluate(() => document.activeElement?.id) !== 'demo-' + more[0]; i++) await reader.page.keyboard.press('Tab');
    await reader.press('Enter');
    await reader.filmsRead();
    for (let i = 0; i < 40 && await reader.page.evaluate(() => document.activeElement?.id) !== 'begin'; i++) await reader.page.keyboard.press('Tab');
    await reader.press('Enter');
    await reader.press('1', '2', '2', 'Shift+Digit1', 'n');
    await reader.press('l', 'ArrowLeft', 'Enter', 'Shift+ArrowDown', 'Shift+ArrowDown', 'Shift+ArrowDown', 'Enter');
    const own = await reader.page.locator('.own button').allInnerTexts();
    await reader.press('t');
    const difference = await reader.text('.difference');
    await reader.press('v', 'i', 'r', 'f');
    const badges = await reader.page.locator('.badges').allInnerTexts();
    await reader.press('o');
    const original = await reader.page.locator('.badges').allInnerTexts();
    await reader.press('?');
    const keys = await reader.has('dialog[open]');
    await reader.press('Escape');
    // Walk through the page with Tab: each stop must be visible and outlined.
    const stops = [];
    await reader.page.evaluate(() => document.activeElement?.blur());
    for (let i = 0; i < 60; i++) {
      await reader.page.keyboard.press('Tab');
      stops.push(await reader.page.evaluate(() => { const a = document.activeElement, s = getComputedStyle(a), p = getComputedStyle(a, '::after'); return { tag: a.tagName, id: a.id, seen: s.outlineStyle !== 'none' || p.borderTopStyle === 'solid' || a.classList.contains('file') }; }));
    }
    const result = { own, difference, badges, original, keys, stops, errors: reader.errors };
    await reader.leave();
    return result;
  },

  async practice() {
    const reader = await Reader.sit(address + '#practice');
    await reader.click('#next-film');
    await reader.page.waitForFunction(() => performance.getEntriesByName('film-shown').length > 0, null, { timeout: 60000 });
    await reader.quiet();
    const marked = [await reader.text('.simulated'), await reader.text('figcaption')];
    await reader.press('l');
    await reader.clickFilm(0.45, 0.1);
    await reader.clickFilm(0.46, 0.6);
    await reader.click('#trueView-yes');
    await reader.press('t');
    await shot(reader, 'truth');
    const result = { marked, truth: await reader.text('.tool'), results: await reader.text('.own-results'), axe: await reader.axe(), errors: reader.errors };
    await reader.leave();
    return result;
  },

  async sizes() {
    const seen = {};
    for (const [label, size] of Object.entries({ phone: { width: 390, height: 844, scale: 2 }, twice: { width: 720, height: 450, scale: 2 }, wide: { width: 1920, height: 1080 } })) {
      const reader = await Reader.sit(address, size);
      await shot(reader, `${label}-start`);
      await reader.click('#demo-' + more[0]);
      await reader.filmsRead();
      await reader.page.check('#visible');
      await shot(reader, `${label}-question`);
      const overflow = [await reader.overflow()];
      await reader.click('#begin');
      await reader.click('#step-alignment');
      await shot(reader, `${label}-alignment`);
      overflow.push(await reader.overflow());
      seen[label] = { overflow, axe: await reader.axe(), errors: reader.errors };
      await reader.leave();
    }
    return seen;
  },
};

console.log(JSON.stringify(await acts[name]()));
