// A reader at the page in Chromium. Each act counts as one keystroke or click; waiting does not.
import { createRequire } from 'node:module';
import { readFile } from 'node:fs/promises';
import path from 'node:path';

const require = createRequire(import.meta.url);
const { chromium } = require('playwright-core');

export class Reader {
  static async sit(address, { width = 1440, height = 900, scale = 1, touch = false } = {}) {
    const reader = new Reader();
    reader.address = address;
    reader.browser = await chromium.launch({ executablePath: '/usr/bin/chromium', headless: true, args: ['--no-sandbox'] });
    const context = await reader.browser.newContext({ viewport: { width, height }, deviceScaleFactor: scale, hasTouch: touch, permissions: ['clipboard-read', 'clipboard-write'] });
    reader.page = await context.newPage();
    reader.acts = 0;
    reader.errors = [];
    reader.answers = [];
    reader.foreign = [];
    reader.page.on('pageerror', e => reader.errors.push(e.message));
    reader.page.on('console', m => { if (m.type() === 'error' && !/status of 4\d\d/.test(m.text())) reader.errors.push(m.text()); });
    reader.page.on('request', r => { if (!r.url().startsWith(address) && !r.url().startsWith('blob:')) reader.foreign.push(r.url()); });
    reader.page.on('response', async r => { if (r.url().includes('/api/studies') && r.headers()['content-type']?.includes('json')) reader.answers.push(await r.text().catch(() => '')); });
    await reader.page.goto(address);
    await reader.page.waitForFunction(() => performance.getEntriesByName('page-ready').length > 0);
    await reader.quiet();
    return reader;
  }

  /** Waits until nothing is on its way. */
  async quiet() {
    await this.page.waitForTimeout(30);
    await this.page.waitForFunction(() => document.getElementById('room').getAttribute('aria-busy') !== 'true');
    await this.page.waitForTimeout(30);
    await this.page.waitForFunction(() => document.getElementById('room').getAttribute('aria-busy') !== 'true');
  }

  async press(...keys) {
    for (const key of keys) {
      this.acts++;
      await this.page.keyboard.press(key);
      await this.quiet();
    }
  }

  async click(selector) {
    this.acts++;
    await this.page.click(selector);
    await this.quiet();
  }

  /** A click on the first film, at a place given in parts of the film's width and height. */
  async clickFilm(x, y) {
    this.acts++;
    const [left, top] = await this.place(x, y);
    await this.page.mouse.move(left, top);
    await this.page.mouse.click(left, top);
    await this.quiet();
  }

  /** Where a place of the first film is on the screen. */
  place(x, y) {
    return this.page.evaluate(([x, y]) => {
      const hand = document.querySelector('.pane .hand'), box = hand.viewBox.baseVal;
      const place = new DOMPoint(x * box.width, y * box.height).matrixTransform(hand.getScreenCTM());
      return [place.x, place.y];
    }, [x, y]);
  }

  /** Waits until all films of the study are read and on the screen. */
  async filmsRead() {
    await this.page.waitForFunction(() => performance.getEntriesByName('film-shown').length > 0 && ![...document.querySelectorAll('.state')].some(s => s.textContent.includes('being read')), null, { timeout: 60000 });
    await this.quiet();
  }

  text(selector) { return this.page.locator(selector).first().innerText(); }
  has(selector) { return this.page.locator(selector).count().then(n => n > 0); }
  steps() { return this.page.locator('.rail button').allInnerTexts(); }

  /** Serious and critical findings of axe-core, by rule and place. */
  async axe() {
    if (!await this.page.evaluate(() => 'axe' in window)) {
      // The page's policy lets no foreign script in; the checker comes in through the debugger.
      await this.page.evaluate(await readFile(path.join(path.dirname(require.resolve('axe-core')), 'axe.min.js'), 'utf8'));
    }
    return this.page.evaluate(async () => (await window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] })).violations
      .filter(v => ['serious', 'critical'].includes(v.impact)).flatMap(v => v.nodes.map(n => `${v.id}: ${n.target.join(' ')}`)));
  }

  /** How far the page is wider than its window. */
  overflow() { return this.page.evaluate(() => document.documentElement.scrollWidth - innerWidth); }

  leave() { return this.browser.close(); }
}
