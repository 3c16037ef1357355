// The practice room: simulated films, always marked so; the truth stays with the service until the answer is in.
import { api, Refused } from './api.js';
import { h, key, tell } from './dom.js';
import { NAMES, Pane } from './pane.js';

const LEVELS = [[1, 'well positioned, no injury'], [2, 'as films come'], [3, 'badly positioned']];

export class PracticeRoom {
  constructor(room) {
    this.wish = { patient: 'adult', view: 'lateral', level: 1 };
    this.answers = {};
    this.lines = [];
    this.truth = null;
    this.stage = h('section', { id: 'stage', aria: { label: 'Practice film' } });
    this.notes = h('section', { id: 'notes', tabIndex: -1, aria: { label: 'Practice' } });
    room.className = 'reading';
    room.replaceChildren(this.stage, this.notes);
  }

  async open() {
    this.results = await api.practiceResults();
    this.draw();
  }

  leave() { this.pane?.resized.disconnect(); }
  hide(hidden) { this.pane?.hide(hidden); }

  async next() {
    if (this.simulating) return;
    this.simulating = true;
    tell('A film is being simulated…');
    this.stage.replaceChildren(h('p', { className: 'empty' }, 'A film is being simulated…'));
    const film = await this.#asked(() => api.practise(this.wish));
    this.simulating = false;
    if (!film) return;
    this.film = film;
    Object.assign(this, { lines: [], truth: null, answers: {} });
    this.hand = null;
    this.#stage(`Simulated film, ${this.film.view}`, `Simulated ${this.film.view === 'ap' ? 'AP' : this.film.view}`);
    this.draw();
    this.pane.load(await api.samples(`/api/practice/${this.film.id}/samples`));
    tell(this.film.words);
  }

  /** One of the reader's own earlier films, blinded. */
  async again() {
    const hand = await this.#asked(() => api.hand());
    if (!hand) return;
    this.hand = hand;
    Object.assign(this, { film: { id: this.hand.id, words: 'One of your own earlier films: lay the line again', view: '', lines: [this.hand.line] }, lines: [], truth: null, answers: {} });
    this.#stage('A film you have read before', 'Your own film');
    this.draw();
    this.pane.load(await api.samples(`/api/practice/hand/${this.hand.id}/samples`));
  }

  // What the service answers, or null with the reason told.
  async #asked(ask) {
    try {
      return await ask();
    } catch (e) {
      if (!(e instanceof Refused)) throw e;
      tell(e.message);
      return null;
    }
  }

  #stage(label, caption) {
    this.pane?.resized.disconnect();
    this.pane = new Pane(label);
    this.pane.caption.replaceChildren(h('b', {}, caption));
    this.pane.addEventListener('line', e => {
      this.lines = [...this.lines.filter(l => l.name !== e.detail.name), e.detail];
      this.pane.ownLines = this.lines;
      this.pane.endLine();
      this.draw();
    });
    this.stage.replaceChildren(h('div', { className: 'lightbox' }, this.pane.element));
  }

  async answer() {
    if (this.hand) {
      if (this.lines.length === 0) { tell('Lay the line first.'); return; }
      const result = await this.#asked(() => api.handAnswer(this.hand.id, this.lines[0]));
      if (!result) return;
      this.truth = { hand: result.words };
      this.draw();
      return;
    }
    const truth = await this.#asked(() => api.practiceAnswer(this.film.id, { lines: this.lines, trueView: this.answers.trueView ?? null, fracture: this.answers.fracture ?? null, carries: this.answers.carries ?? null }));
    if (!truth) return;
    this.truth = truth;
    this.pane.truth = this.truth.lines;
    this.pane.endLine();
    this.results = await api.practiceResults();
    this.draw();
    tell('The truth is shown in dotted white.');
  }

  draw() {
    const film = this.film, id = document.activeElement?.id;
    const pick = (name, label, options) => h('fieldset', { className: 'item' }, h('legend', {}, label), h('div', { className: 'choices', role: 'radiogroup', aria: { label } }, options.map(([v, t]) =>
      h('button', { type: 'button', id: `${name}-${v}`, role: 'radio', aria: { checked: String((name in this.wish ? this.wish[name] : this.answers[name]) === v) }, disabled: !(name in this.wish) && !!this.truth, onclick: () => { (name in this.wish ? this.wish : this.answers)[name] = v; this.draw(); } }, t))));
    const calls = [['yes', 'yes'], ['no', 'no'], ['cannot-tell', 'cannot tell']];
    this.notes.replaceChildren(h('div', { className: 'leaf' },
      h('h2', {}, 'Practice room'),
      film ? h('p', { className: 'simulated' }, film.words) : h('p', {}, 'Every film here is simulated: nobody was exposed for it, and its truth is exact.'),
      film ? [
        h('div', { className: 'own' }, film.lines.map(name => h('p', {}, h('button', { type: 'button', id: `lay-${name}`, disabled: !!this.truth, onclick: () => this.pane.beginLine(name) },
          this.lines.some(l => l.name === name) ? `Lay the ${NAMES[name]} again` : `Lay the ${NAMES[name]}`, name === film.lines.find(n => !this.lines.some(l => l.name === n)) && !this.truth ? [' ', key('L')] : '')))),
        this.hand ? '' : pick('trueView', film.view === 'ap' ? 'Is it a true AP?' : 'Is it a true lateral?', calls),
        this.hand ? '' : this.#carries(),
        this.hand ? '' : pick('fracture', 'Do you see an injury?', calls),
        this.truth ? this.#truth() : h('div', { className: 'way' }, h('button', { type: 'button', id: 'answer', className: 'main', onclick: () => this.answer() }, this.hand ? 'Compare with your earlier line ' : 'Show the truth ', key('T'))),
      ] : '',
      h('h3', {}, film ? 'Another film' : 'Which film?'),
      pick('patient', 'Patient', [['adult', 'adult'], ['child', 'child']]),
      pick('view', 'View', [['lateral', 'lateral'], ['ap', 'AP']]),
      pick('level', 'Level', LEVELS),
      h('div', { className: 'way' }, h('button', { type: 'button', id: 'next-film', className: film && !this.truth ? '' : 'main', onclick: () => this.next() }, 'Simulate a film ', key('N'))),
      h('h3', {}, 'Know your hand'), h('p', {}, 'Films you have read come back without their names: how far does your own line move?'),
      h('div', { className: 'way' }, h('button', { type: 'button', id: 'hand', onclick: () => this.again() }, 'Lay an earlier line again')),
      this.#results()));
    if (id) document.getElementById(id)?.focus({ preventScroll: true });
  }

  #carries() {
    const taken = this.answers.carries ?? [];
    return h('fieldset', { className: 'item' }, h('legend', {}, 'What can this film carry?'), h('div', { className: 'choices', role: 'group', aria: { label: 'What can this film carry?' } }, this.film.carries.map(m =>
      h('button', {
        type: 'button', id: `carries-${m.name}`, role: 'checkbox', aria: { checked: String(taken.includes(m.name)) }, disabled: !!this.truth,
        onclick: () => { this.answers.carries = taken.includes(m.name) ? taken.filter(n => n !== m.name) : [...taken, m.name]; this.draw(); },
      }, m.title))));
  }

  #truth() {
    if (this.truth.hand) return h('section', { className: 'tool', aria: { label: 'Your hand' } }, h('h3', {}, 'Your hand'), h('p', {}, this.truth.hand));
    return h('section', { className: 'tool', aria: { label: 'Truth' } }, h('h3', {}, 'The truth, dotted white'),
      this.truth.sentences.map(t => h('p', {}, t)),
      this.truth.injuries.length ? h('p', {}, `Simulated: ${this.truth.injuries.join(', ')}.`) : '',
      h('ul', {}, this.truth.lines.map(l => h('li', {}, NAMES[l.name], ': ', l.angleErrorDegrees === null ? 'you laid none.' : `yours is off by ${l.angleErrorDegrees.toFixed(1)}° and, beside the capitellum, by ${l.offsetOfCapitellum.toFixed(2)} of its diameter.`))),
      h('ul', {}, this.truth.carries.map(c => h('li', {}, c.title, ': ', c.can ? 'the film can carry it' : 'the film cannot carry it', c.said === null ? '. ' : c.said === c.can ? ', as you said. ' : c.said ? '; you said it can. ' : '; you left it out. ', c.reasons.join(' ')))));
  }

  #results() {
    const films = this.results.filter(r => r.kind === 'lines'), laid = films.flatMap(r => r.result.lines ?? []).filter(l => l.angleErrorDegrees !== null);
    if (this.results.length === 0) return '';
    const median = list => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
    return h('section', { className: 'own-results' }, h('h3', {}, 'Your results'),
      h('p', {}, `${films.length} ${films.length === 1 ? 'film' : 'films'}`, laid.length ? `; ${laid.length === 1 ? 'one line, off by' : `${laid.length} lines, half of them off by less than`} ${median(laid.map(l => l.angleErrorDegrees)).toFixed(1)}° and ${median(laid.map(l => l.offsetOfCapitellum)).toFixed(2)} of a capitellum.` : '.', ' Only on this machine.'),
      h('button', { type: 'button', className: 'plain', onclick: async () => { await api.deletePractice(); this.results = []; this.draw(); tell('Your results are deleted.'); } }, 'Delete my results'));
  }

  keyDown(e) {
    if (e.ctrlKey || e.metaKey || e.altKey) return false;
    const k = e.key.toLowerCase(), pane = this.pane;
    const actions = {
      n: () => this.next(), t: () => this.film && !this.truth && this.answer(),
      l: () => this.film && !this.truth && pane.beginLine(this.film.lines.find(n => !this.lines.some(l => l.name === n)) ?? this.film.lines[0]),
      i: () => pane?.invert(), r: () => pane?.rotate(), f: () => pane?.flip(), o: () => pane?.reset(), 0: () => pane?.fit(), h: () => this.hide(true),
      '+': () => pane?.zoomAt(1.25), '=': () => pane?.zoomAt(1.25), '-': () => pane?.zoomAt(0.8), b: () => pane?.rewindow(e.shiftKey ? 0.08 : -0.08, 0), c: () => pane?.rewindow(0, e.shiftKey ? 0.12 : -0.14),
    };
    if (!actions[k]) return false;
    actions[k]();
    return true;
  }

  keyUp(e) { if (e.key.toLowerCase() === 'h') this.hide(false); }
}
