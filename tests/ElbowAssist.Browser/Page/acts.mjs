// What the tests of the page do at it. Arguments: name of the act, address of the service, folder for screenshots, further ones.
// Prints what was seen as JSON.
import { Reader } from './reader.mjs';
import { copyFile, readFile } from 'node:fs/promises';
import path from 'node:path';

const [name, address, shots, ...more] = process.argv.slice(2);
const shot = (reader, label) => reader.page.screenshot({ path: path.join(shots, `${name}-${label}.png`) });

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
    await reader.clickFilm(0.552, 0.08);
    await reader.clickFilm(0.535, 0.2);
    await shot(reader, 'own-line');
    await reader.press('3', 'Shift+Digit1', '1', 't');
    await shot(reader, 'alignment');
    axe.alignment = await reader.axe();
    const panels = await reader.page.locator('.tool section h4').allInnerTexts();
    const shown = await reader.page.evaluate(() => ({ overlay: document.querySelectorAll('.overlay .line').length, values: document.querySelectorAll('.value').length, difference: document.querySelector('.difference')?.textContent ?? null }));
    await reader.click('[id^="turn-elbow"]');
    reader.acts--;
    await reader.page.waitForSelector('.turned img', { timeout: 60000 });
    await reader.page.locator('.turning').first().scrollIntoViewIfNeeded();
    await shot(reader, 'turn');
    const values = () => reader.page.locator('.turning ul').first().innerText();
    const turn = [await values()];
    await reader.page.locator('[id^="turn-film"]').first().focus();
    await reader.page.keyboard.press('ArrowRight');
    await reader.page.keyboard.press('ArrowRight');
    turn.push(await values());
    await reader.page.locator('#notes').focus();
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
    const result = { acts, axe, before: { leaks: /"(alignment|carries|evidence)":\s*[[{]/.test(before), ...hiddenBefore }, shown, panels, turn, title, copied, words: await reader.text('body'), errors: reader.errors, foreign: reader.foreign, caution: await reader.text('#caution') };
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
    await reader.press('Control+Shift+z');
    const forth = await line();
    const lags = await reader.page.evaluate(() => performance.getEntriesByName('drag').map(m => m.duration));
    await reader.press('ArrowRight');
    const nudged = await line();
    // The service stops answering, and answers again: what was asked meanwhile is told and not lost.
    await reader.page.context().setOffline(true);
    await reader.press('Control+z');
    const silence = { told: await reader.text('#told'), line: await line() };
    await reader.page.context().setOffline(false);
    await reader.press('Control+z');
    const again = await line();
    const result = { before, during, after, back, forth, nudged, silence, again, lags, errors: reader.errors.filter(e => !e.includes('ERR_INTERNET_DISCONNECTED')) };
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
    await reader.page.keyboard.down('h');
    const bare = [await reader.has('.pane.bare')];
    await reader.page.keyboard.up('h');
    bare.push(await reader.has('.pane.bare'));
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
    const result = { own, difference, bare, badges, original, keys, stops, errors: reader.errors };
    await reader.leave();
    return result;
  },

  /** Films dropped together, one of them broken and a last one that is stopped on its way. */
  async arrivals() {
    const [broken, ...films] = more;
    const reader = await Reader.sit(address);
    // The last film waits at the door, so that adding can be stopped before it.
    await reader.page.route(u => u.searchParams.get('name') === 'left-behind.png', async route => { await new Promise(done => setTimeout(done, 4000)); await route.continue().catch(() => null); });
    const files = await Promise.all([...films, broken].map(async f => ({ name: path.basename(f), content: (await readFile(f)).toString('base64') })));
    files.push({ ...files[0], name: 'left-behind.png' });
    const transfer = await reader.page.evaluateHandle(list => {
      const data = new DataTransfer();
      for (const f of list) data.items.add(new File([Uint8Array.from(atob(f.content), c => c.charCodeAt(0))], f.name));
      return data;
    }, files);
    await reader.page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
    await reader.page.waitForFunction(n => [...document.querySelectorAll('.arriving span')].filter(s => s.textContent === 'added').length === n, films.length + 1, { timeout: 60000 });
    await shot(reader, 'adding');
    const progress = await reader.has('progress');
    await reader.page.click('#stop-adding');
    await reader.page.waitForFunction(() => document.querySelector('.arriving li:last-child span').textContent === 'left out');
    // Films are read one after the other; the sentence beside the film speaks of the one shown.
    await reader.page.waitForFunction(() => ![...document.querySelectorAll('.tabs .tab')].some(t => t.textContent.includes('View not known yet')), null, { timeout: 60000 });
    await reader.page.waitForFunction(() => ![...document.querySelectorAll('.state')].some(s => s.textContent.includes('being read')), null, { timeout: 60000 });
    await reader.quiet();
    await shot(reader, 'added');
    const result = { progress, arriving: await reader.page.locator('.arriving li').allInnerTexts(), tabs: await reader.page.locator('.tabs .tab').allInnerTexts(), notes: await reader.text('#notes'), axe: await reader.axe(), errors: reader.errors, markup: await reader.has('#stage img, #stage script') };
    await reader.leave();
    return result;
  },

  /** A study of an archive, found by its number and by a link. */
  async archive() {
    const [number, uid, film, watched] = more;
    const reader = await Reader.sit(address);
    // A receiver writes a film while the list is on the screen.
    await copyFile(film, path.join(watched, 'arrived.png'));
    await reader.page.waitForSelector('#kept a', { timeout: 60000 });
    const arrived = await reader.text('#kept');
    await reader.page.fill('#archive-number', number);
    await reader.click('#archive-look');
    await reader.page.waitForSelector('a[href^="#dicom/"]');
    await shot(reader, 'found');
    const found = await reader.page.locator('a[href^="#dicom/"]').allInnerTexts();
    const axe = await reader.axe();
    const markup = await reader.has('main script, main b:not(.drop b), main img');
    await reader.click('a[href^="#dicom/"]');
    await reader.filmsRead();
    await shot(reader, 'fetched');
    const first = { address: await reader.page.evaluate(() => location.hash), tabs: await reader.page.locator('.tabs .tab').allInnerTexts() };
    await reader.page.goto('about:blank');
    await reader.page.goto(`${address}#dicom/${uid}`);
    await reader.filmsRead();
    const linked = await reader.page.evaluate(() => location.hash);
    await reader.page.goto('about:blank');
    await reader.page.goto(`${address}#dicom/1.2.3.4`);
    await reader.page.waitForSelector('.message');
    const result = { arrived, found, first, linked, nothing: await reader.text('.message'), markup, axe, errors: reader.errors };
    await reader.leave();
    return result;
  },

  /** After the read: class, follow-up, one's own hand, taking away and deleting. */
  async keeping() {
    const reader = await Reader.sit(address);
    await reader.click('#demo-' + more[0]);
    await reader.filmsRead();
    await reader.press('Enter', 'l');
    await reader.clickFilm(0.552, 0.08);
    await reader.clickFilm(0.535, 0.2);
    const id = await reader.page.evaluate(() => location.hash.split('/')[1]);
    await reader.click('#step-effusion');
    await reader.click('[id="choice-effusion.call-yes"]');
    await reader.click('#step-conclusion');
    await reader.click('[id="choice-conclusion.outcome-no-fracture-seen"]');
    await reader.click('#close');
    const follow = await reader.text('.follow');
    const saved = async selector => { const [download] = await Promise.all([reader.page.waitForEvent('download'), reader.page.click(selector)]); const file = path.join(shots, `${name}-${download.suggestedFilename()}`); await download.saveAs(file); return file; };
    const files = { export: await saved('a[href$="export.zip"]'), backup: await saved('a[href$="backup.zip"]'), case: await saved('a[href$="case.json"]'), lines: await saved('a[href$="lines.json"]') };
    await shot(reader, 'closed');

    // The list on the first screen, and the outcome entered later.
    await reader.page.goto(address);
    await reader.page.reload();
    await reader.page.waitForSelector('#follow-up');
    await shot(reader, 'follow-up');
    const listed = await reader.text('#follow-up');
    await reader.click('#follow-up a');
    await reader.page.fill('#outcome', 'Radial head fracture on the film of day ten');
    await reader.page.keyboard.press('Enter');
    await reader.quiet();
    const outcome = await reader.text('.follow');

    // A learner opens the case file; the teacher's line shows only beside one's own.
    await reader.page.goto(address);
    await reader.page.reload();
    await reader.page.waitForSelector('#choose', { state: 'attached' });
    await reader.page.setInputFiles('#choose', files.case);
    await reader.filmsRead();
    const teacher = () => reader.page.evaluate(() => document.querySelector('.hand').textContent.includes('teacher'));
    const before = await teacher();
    await reader.press('Enter', 'l');
    await reader.clickFilm(0.56, 0.08);
    await reader.clickFilm(0.545, 0.2);
    const after = await teacher();
    await shot(reader, 'class');
    await reader.page.setInputFiles('#add-films', files.lines);
    await reader.quiet();
    const told = await reader.text('#told');

    // One's own earlier film, blinded.
    await reader.page.goto(`${address}#practice`);
    await reader.page.reload();
    await reader.click('#hand');
    await reader.page.waitForFunction(() => performance.getEntriesByName('film-shown').length > 0);
    await reader.press('l');
    await reader.clickFilm(0.55, 0.08);
    await reader.clickFilm(0.53, 0.2);
    await reader.press('t');
    const hand = { caption: await reader.text('figcaption'), words: await reader.text('.tool') };
    await shot(reader, 'hand');
    const axe = await reader.axe();

    // Deleted, nothing of it is left.
    await reader.page.goto(`${address}#study/${id}`);
    await reader.page.reload();
    await reader.page.waitForSelector('#delete');
    reader.page.once('dialog', d => d.accept());
    await reader.click('#delete');
    await reader.page.waitForSelector('#choose', { state: 'attached' });
    const gone = await reader.page.evaluate(async i => (await fetch(`/api/studies/${i}`)).status, id);
    const result = { follow, files, listed, outcome, teacher: [before, after], told, hand, gone, axe, errors: reader.errors, words: await reader.text('body') };
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
    await reader.click('[id="carries-anterior-humeral-line.position"]');
    await reader.press('t');
    await shot(reader, 'truth');
    const result = { marked, truth: await reader.text('.tool'), results: await reader.text('.own-results'), axe: await reader.axe(), errors: reader.errors };
    await reader.leave();
    return result;
  },

  async sizes() {
    const seen = {};
    for (const [label, size] of Object.entries({ phone: { width: 390, height: 844, scale: 2, touch: true }, twice: { width: 720, height: 450, scale: 2 }, wide: { width: 1920, height: 1080 } })) {
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
      let touched = null;
      if (size.touch) {
        await reader.page.locator('#lay-anterior-humeral-line').tap();
        for (const [x, y] of [[0.55, 0.1], [0.53, 0.2]]) {
          const [left, top] = await reader.place(x, y);
          await reader.page.touchscreen.tap(left, top);
          await reader.quiet();
        }
        touched = await reader.page.locator('.own button').allInnerTexts();
        await shot(reader, `${label}-touched`);
      }
      seen[label] = { overflow, touched, axe: await reader.axe(), errors: reader.errors };
      await reader.leave();
    }
    return seen;
  },
};

console.log(JSON.stringify(await acts[name]()));
