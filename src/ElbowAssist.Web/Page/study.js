// A study on the screen: films on the left, the systematic read on the right. What stands comes from the service each time.
import { api, Refused } from './api.js';
import { arrive } from './arrivals.js';
import { h, key, tell } from './dom.js';
import { Pane } from './pane.js';
import { questionForm, stepView, closedView, railView, followMeasurements } from './notes.js';

const VIEW = { lateral: 'Lateral', ap: 'AP', oblique: 'Oblique', unknown: 'View not known yet' };
const CONTEXT = { 'after-reduction': 'after reduction', cast: 'in a cast', fixation: 'with metal', 'follow-up': 'follow-up' };
export const filmTitle = f => [f.side === 'unknown' ? null : f.side[0].toUpperCase() + f.side.slice(1), f.side === 'unknown' ? VIEW[f.view] : VIEW[f.view].replace('Lateral', 'lateral').replace('Oblique', 'oblique'), CONTEXT[f.context]].filter(Boolean).join(' ');

export class StudyRoom {
  constructor(room, id) {
    this.room = room;
    this.id = id;
    this.panes = new Map();
    this.active = null;
    this.two = null;
    this.step = 0;
    this.item = null;
    this.turned = new Map();
    this.undo = [];
    this.redo = [];
    this.lines = { 'anterior-humeral-line': 'anterior humeral line', 'radiocapitellar-line': 'radiocapitellar line' };
    this.stage = h('section', { id: 'stage', aria: { label: 'Films' } });
    this.tabs = h('div', { className: 'tabs', role: 'group', aria: { label: 'Which film' } });
    this.lightbox = h('div', { className: 'lightbox' });
    this.bar = h('div', { className: 'bar', role: 'toolbar', aria: { label: 'Film' } });
    this.stage.append(this.tabs, this.lightbox, this.bar);
    this.notes = h('section', { id: 'notes', tabIndex: -1, aria: { label: 'The systematic read' } });
    room.replaceChildren(this.stage, this.notes);
    room.className = 'reading';
  }

  async open() {
    await this.take(await api.study(this.id));
    this.poll();
  }

  leave() { this.left = true; for (const p of this.panes.values()) p.resized.disconnect(); }

  /** Asks again while films are being read. */
  async poll() {
    while (!this.left && this.study.films.some(f => f.state === 'reading')) {
      await new Promise(done => setTimeout(done, 400));
      // A service that is being started again answers later.
      const study = this.left ? null : await api.study(this.id).catch(() => null);
      if (study && !this.left) await this.take(study);
    }
  }

  /** Runs something that answers with the study, and tells a refusal. */
  async do(action) {
    try {
      const study = await action();
      if (study) await this.take(study);
      return true;
    } catch (e) {
      if (!(e instanceof Refused)) throw e;
      tell(e.message);
      if (e.status === 404) location.hash = '';
      return false;
    }
  }

  async take(study) {
    this.study = study;
    document.getElementById('facts').textContent = study.question.stated ? facts(study.question, study) : study.title;
    for (const film of study.films) this.#pane(film);
    this.active ??= study.films[0]?.id ?? null;
    this.two ??= study.films.length > 1 && innerWidth >= 1500;
    this.drawStage();
    this.drawNotes();
  }

  #pane(film) {
    let pane = this.panes.get(film.id);
    if (!pane) {
      pane = new Pane(film.name);
      this.panes.set(film.id, pane);
      pane.addEventListener('chosen', () => this.choose(film.id));
      pane.addEventListener('hand', () => this.drawBar());
      pane.addEventListener('line', e => this.do(() => api.line(this.id, film.id, e.detail)).then(ok => ok && tell('Your line is laid.')));
      pane.addEventListener('placed', e => this.queue(() => this.place(film.id, e.detail.name, e.detail.place)));
      pane.addEventListener('tried', e => followMeasurements(film.id, e.detail.measurements));
      pane.onTry = (name, place) => api.tryPlace(this.id, film.id, name, place);
      if (film.state !== 'unreadable') {
        api.samples(`/api/studies/${this.id}/films/${film.id}/samples`).then(samples => { pane.load(samples); pane.draw(this.film(film.id)); this.drawNotes(); }, () => null);
      }
    }
    if (pane.loaded) pane.draw(film);
    pane.element.setAttribute('aria-label', `${filmTitle(film)}, ${film.name}${this.study.origin === 'demo' ? ', invented patient' : ''}`);
    pane.caption.replaceChildren(h('b', {}, filmTitle(film)), ' ', stateWords(film), this.study.origin === 'demo' ? h('i', {}, ' Invented patient') : '');
  }

  film(id) { return this.study.films.find(f => f.id === id); }
  get pane() { return this.panes.get(this.active); }

  choose(id) {
    if (this.active === id) return;
    this.active = id;
    this.drawStage();
    // Own lines and measurements are those of the film on view first.
    if (this.walk) this.drawNotes();
  }

  // ---- stage -----------------------------------------------------------------------------------------------------

  drawStage() {
    const films = this.study.films, shown = this.two ? [...new Set([this.active, ...films.map(f => f.id)])].slice(0, 2) : [this.active];
    const ordered = films.map(f => f.id).filter(id => shown.includes(id));
    const panes = ordered.map(id => this.panes.get(id).element);
    if (panes.length === 0) this.lightbox.replaceChildren(h('p', { className: 'empty' }, 'No film yet. Drop films here, or ', this.#addButton()));
    else if (panes.length !== this.lightbox.children.length || panes.some((p, i) => this.lightbox.children[i] !== p)) this.lightbox.replaceChildren(...panes);
    for (const [id, pane] of this.panes) pane.element.classList.toggle('active', id === this.active && ordered.length > 1);
    this.tabs.replaceChildren(
      ...films.map(f => h('button', { type: 'button', className: 'tab', aria: { pressed: String(f.id === this.active) }, onclick: () => { this.choose(f.id); this.pane.element.focus({ preventScroll: true }); } },
        f.state === 'unreadable' ? f.name : filmTitle(f))),
      films.length > 1 ? h('button', { type: 'button', className: 'tab quiet', aria: { pressed: String(this.two) }, onclick: () => this.toggleTwo() }, 'Side by side ', key('S')) : '',
      this.#addButton());
    this.drawBar();
  }

  #addButton() {
    const input = h('input', { type: 'file', multiple: true, className: 'file', id: 'add-films', onchange: () => this.add([...input.files]) });
    return h('label', { className: 'tab quiet add' }, input, 'Add films');
  }

  toggleTwo() { this.two = !this.two; this.drawStage(); }

  drawBar() {
    const pane = this.pane, film = this.film(this.active);
    if (!pane || !film || film.state === 'unreadable') { this.bar.replaceChildren(); return; }
    const button = (label, k, action, pressed) => h('button', { type: 'button', aria: { pressed: pressed === undefined ? null : String(pressed) }, onclick: action }, label, ' ', key(k));
    const focus = document.activeElement?.closest?.('.bar') ? document.activeElement.textContent : null;
    this.bar.replaceChildren(
      button('Lay a line', 'L', () => this.layLine(), !!pane.laying),
      film.alignment && !film.alignment.partial ? button('Move points', 'M', () => pane.togglePoints(), pane.pointing) : '',
      h('details', { className: 'look', open: this.bar.querySelector('.look')?.open ?? false },
        h('summary', {}, 'Look'),
        h('div', {},
          button('Brighter', '+B', () => pane.rewindow(0.08, 0)), button('Darker', 'B', () => pane.rewindow(-0.08, 0)),
          button('More contrast', '+C', () => pane.rewindow(0, 0.12)), button('Less contrast', 'C', () => pane.rewindow(0, -0.14)),
          button('Closer', '+', () => pane.zoomAt(1.25)), button('Farther', '−', () => pane.zoomAt(0.8)), button('Whole film', '0', () => pane.fit()),
          button('Invert', 'I', () => pane.invert()), button('Turn', 'R', () => pane.rotate()), button('Flip', 'F', () => pane.flip()))),
      button('Original', 'O', () => pane.reset()),
      h('button', { type: 'button', onpointerdown: () => this.hide(true), onpointerup: () => this.hide(false), onpointerleave: () => this.hide(false), onkeydown: e => { if (e.key === 'Enter' || e.key === ' ') this.hide(true); }, onkeyup: () => this.hide(false) }, 'Hold to hide ', key('H')));
    if (focus) [...this.bar.querySelectorAll('button')].find(b => b.textContent === focus)?.focus();
  }

  hide(hidden) { for (const p of this.panes.values()) p.hide(hidden); }

  layLine(name) {
    const pane = this.pane, film = this.film(this.active);
    if (!pane?.loaded) return;
    if (pane.laying && !name) { pane.endLine(); return; }
    const item = this.current()?.id ?? '';
    name ??= film.view === 'ap' || item.includes('radiocapitellar') || (film.ownLines.some(l => l.name === 'anterior-humeral-line') && !film.ownLines.some(l => l.name === 'radiocapitellar-line'))
      ? 'radiocapitellar-line' : 'anterior-humeral-line';
    pane.beginLine(name);
  }

  async place(film, name, place) {
    const before = this.film(film).alignment?.landmarks.find(l => l.name === name);
    if (!await this.do(() => api.place(this.id, film, name, place))) return;
    this.undo.push({ film, name, before: before?.byReader ? { x: before.x, y: before.y } : null, after: place });
    this.redo = [];
  }

  async back() {
    const step = this.undo.at(-1);
    if (!step) { tell('Nothing to take back.'); return; }
    if (!await this.do(() => step.before ? api.place(this.id, step.film, step.name, step.before) : api.giveBack(this.id, step.film, step.name))) return;
    this.redo.push(this.undo.pop());
    tell('Taken back.');
  }

  async forth() {
    const step = this.redo.at(-1);
    if (step && await this.do(() => api.place(this.id, step.film, step.name, step.after))) this.undo.push(this.redo.pop());
  }

  // ---- films coming in -------------------------------------------------------------------------------------------

  async add(files) {
    for (const file of files.filter(f => f.name.endsWith('.json') && !f.name.endsWith('.info.json'))) {
      // Lines of a class, laid over one's own.
      if (await this.do(() => api.bringLines(this.id, file))) tell(`The lines of ${file.name} lie over yours.`);
    }
    if (files.every(f => f.name.endsWith('.json'))) return;
    const sidecars = new Map(files.filter(f => f.name.endsWith('.info.json')).map(f => [f.name.slice(0, -'.info.json'.length), f]));
    const films = files.filter(f => !f.name.endsWith('.json'));
    await this.#arrive(films.map(file => ({
      name: file.name,
      send: async signal => api.addFilm(this.id, file, await sidecars.get(file.name)?.text(), signal),
    })));
  }

  /** Films the archive holds of this study. */
  fetchAll(films) {
    return this.#arrive(films.map((film, i) => ({ name: `Film ${i + 1} of the archive`, send: signal => api.fetchFilm(this.id, film, signal) })));
  }

  async #arrive(films) {
    await arrive(this.stage, films, study => this.take(study));
    this.poll();
  }

  // ---- notes -----------------------------------------------------------------------------------------------------

  get walk() { return this.study.walk; }
  get stepNow() { return this.walk?.steps[this.step] ?? null; }

  /** The question the keys answer: the one chosen, else the first open one. */
  current() {
    const step = this.stepNow;
    if (!step) return null;
    return step.items.find(i => i.id === this.item) ?? step.items.find(i => i.choices.length > 0 && !i.several && !i.answer) ?? null;
  }

  drawNotes() {
    const focus = document.activeElement?.id, inside = this.notes.contains(document.activeElement), scroll = this.notes.scrollTop;
    const typed = inside && document.activeElement.matches('input, textarea, select') ? document.activeElement.value : null;
    if (!this.study.question.stated || !this.walk) {
      // What was typed stays while films are still being read.
      const asked = JSON.stringify([this.study.question, this.study.films.map(f => [f.state, f.sideContradicted])]);
      if (asked === this.asked && this.notes.querySelector('#question')) return;
      this.asked = asked;
      this.notes.replaceChildren(questionForm(this));
    }
    else if (this.walk.concludedAt) this.notes.replaceChildren(railView(this), closedView(this));
    else this.notes.replaceChildren(railView(this), stepView(this));
    this.notes.scrollTop = scroll;
    if (inside && focus) {
      const again = document.getElementById(focus);
      again?.focus({ preventScroll: true });
      if (again && typed !== null && again.matches('input, textarea') && again.type !== 'checkbox') again.value = typed;
    }
  }

  go(step) {
    this.step = Math.max(0, Math.min(this.walk.steps.length - 1, step));
    this.item = null;
    const topic = this.stepNow.topic;
    this.drawNotes();
    this.notes.scrollTop = 0;
    tell(`${this.stepNow.title}`);
    if (topic === 'conclusion' && !this.stepNow.items.find(i => i.id === 'conclusion.outcome').answer) this.item = 'conclusion.outcome';
    this.drawNotes();
  }

  async answer(answers) {
    const step = this.step, before = this.stepNow;
    this.item = null;
    const ok = await this.do(() => api.answers(this.id, answers));
    if (!ok) return;
    const now = this.walk.steps[step];
    const last = answers.at(-1);
    if (last.itemId === 'conclusion.outcome' && /fracture-s/.test(last.choices[0])) this.item = 'conclusion.injuries';
    else if (before.items.find(i => i.id === last.itemId).several) this.item = last.itemId;
    else if (before.open > 0 && now.open === 0 && !now.hasProposals && step < this.walk.steps.length - 1) { this.go(step + 1); return; }
    this.drawNotes();
    const item = this.current();
    if (item) document.getElementById(`item-${item.id}`)?.scrollIntoView({ block: 'nearest' });
  }

  async pick(item, code, all) {
    if (item.several) {
      const set = new Set(item.answer ?? []);
      set.has(code) ? set.delete(code) : set.add(code);
      return this.answer([{ itemId: item.id, choices: [...set], note: item.note }]);
    }
    const codes = JSON.stringify(item.choices.map(c => c.code));
    const items = all ? this.stepNow.items.filter(i => !i.answer && !i.several && JSON.stringify(i.choices.map(c => c.code)) === codes) : [item];
    return this.answer((items.length ? items : [item]).map(i => ({ itemId: i.id, choices: [code], note: i.note })));
  }

  async show() {
    const film = this.film(this.active), step = this.stepNow;
    if (!this.walk || this.walk.concludedAt) return;
    // One's own line laid is enough to see the tool's beside it, whatever else is open.
    if (step.topic === 'alignment' && step.open > 0 || step.topic !== 'alignment' && film?.ownLines.some(l => !l.compared)) {
      const own = film?.ownLines.filter(l => !l.compared) ?? [];
      if (own.length > 0) {
        for (const line of own) await this.do(() => api.compare(this.id, film.id, line.name));
        tell('The tool\u2019s line lies beside yours, dashed.');
        return;
      }
    }
    if (!step.hasProposals) { tell('The tool has nothing to show on this step.'); return; }
    if (step.shown) return;
    if (await this.do(() => api.show(this.id, step.topic))) {
      tell('The tool\u2019s proposals are shown.');
      this.notes.querySelector('.tool')?.scrollIntoView({ block: 'start' });
    }
  }

  async close() {
    if (await this.do(() => api.close(this.id))) { tell('The read is closed.'); this.notes.scrollTop = 0; document.getElementById('report-title')?.focus(); }
  }

  async copy() {
    try {
      await navigator.clipboard.writeText(await api.reportText(this.id));
      tell('The report is copied as plain text.');
    } catch (e) {
      tell(e instanceof Refused ? e.message : 'The browser did not allow copying; open the plain text and copy it there.');
    }
  }

  // ---- keys ------------------------------------------------------------------------------------------------------

  /** Acts one after the other: a key pressed while an answer is on its way acts on what then stands. */
  queue(act) {
    this.acting = (this.acting ?? Promise.resolve()).then(() => this.left ? null : act()).catch(e => { if (!(e instanceof Refused)) reportError(e); });
    return true;
  }

  keyDown(e) {
    if (e.ctrlKey || e.metaKey) {
      if (e.key.toLowerCase() === 'z') { const forth = e.shiftKey; return this.queue(() => forth ? this.forth() : this.back()); }
      return false;
    }
    if (e.altKey) return false;
    const pane = this.pane, digit = /^Digit([1-9])$/.exec(e.code)?.[1];
    if (digit && this.walk && !this.walk.concludedAt) {
      const all = e.shiftKey;
      return this.queue(() => {
        const item = this.current(), choice = item?.choices[Number(digit) - 1];
        return choice && this.pick(item, choice.code, all);
      });
    }
    const k = e.key.toLowerCase();
    if (k === 'h') { this.hide(true); return true; }
    const film = { l: () => this.layLine(), m: () => pane?.togglePoints(), i: () => pane?.invert(), r: () => pane?.rotate(), f: () => pane?.flip(), o: () => pane?.reset(), '0': () => pane?.fit(), '+': () => pane?.zoomAt(1.25), '=': () => pane?.zoomAt(1.25), '-': () => pane?.zoomAt(0.8), b: () => pane?.rewindow(e.shiftKey ? 0.08 : -0.08, 0), s: () => this.study.films.length > 1 && this.toggleTwo(), v: () => this.nextFilm() };
    if (this.study.reportReady && k === 'c') return this.queue(() => this.copy());
    if (k === 'c') { pane?.rewindow(0, e.shiftKey ? 0.12 : -0.14); return true; }
    if (film[k]) return this.queue(film[k]);
    if (!this.walk || !this.study.question.stated) {
      return e.key === 'Enter' && this.queue(() => this.accept?.());
    }
    const walk = { n: () => this.go(this.step + 1), p: () => this.go(this.step - 1), t: () => this.show(), e: () => document.getElementById('enhance')?.click(), j: () => this.move(1), k: () => this.move(-1) };
    if (walk[k] && !this.walk.concludedAt) return this.queue(walk[k]);
    if (e.key === 'Enter' && !this.walk.concludedAt && e.target.matches('body, .pane, #notes')) return this.queue(() => {
      const conclusion = this.walk.steps.at(-1);
      if (this.stepNow === conclusion && conclusion.items.find(i => i.id === 'conclusion.outcome').answer) return this.close();
      if (this.stepNow !== conclusion) this.go(this.step + 1);
      return null;
    });
    return false;
  }

  keyUp(e) { if (e.key.toLowerCase() === 'h') this.hide(false); }

  nextFilm() {
    const ids = this.study.films.map(f => f.id);
    if (ids.length > 1) { this.choose(ids[(ids.indexOf(this.active) + 1) % ids.length]); tell(filmTitle(this.film(this.active))); }
  }

  move(by) {
    const items = this.stepNow.items.filter(i => i.choices.length > 0);
    const at = items.findIndex(i => i.id === this.current()?.id);
    this.item = items[Math.max(0, Math.min(items.length - 1, at + by))].id;
    this.drawNotes();
    document.getElementById(`item-${this.item}`)?.scrollIntoView({ block: 'nearest' });
  }
}

function facts(q, study) {
  const age = q.ageMonths === null ? q.maturity : q.ageMonths < 24 ? `${q.ageMonths} months` : `${Math.floor(q.ageMonths / 12)} years`;
  return [q.injuredSide === 'unknown' ? null : `${q.injuredSide} elbow`, age, { F: 'female', M: 'male' }[q.sex], study.title].filter(Boolean).join(', ');
}

function stateWords(film) {
  if (film.state === 'reading') return h('span', { className: 'state' }, 'being read…');
  if (film.state === 'refused') return h('span', { className: 'state' }, 'no reading: see beside');
  if (film.state === 'unreadable') return h('span', { className: 'state' }, film.message);
  return '';
}
