// One film on the screen: its samples, how it is looked at (window, zoom, turn, flip), what lies over it, and the hand.
import { h, s, parseSvg, tell } from './dom.js';
import { clearLabels } from './labels.js';

/** What the lines laid by hand are called on the page. */
export const NAMES = { 'anterior-humeral-line': 'anterior humeral line', 'radiocapitellar-line': 'radiocapitellar line' };
const READER = '#f0e442', HALO = '#000';

export class Pane extends EventTarget {
  #samples = null; #image = null; #pointers = new Map(); #hand = null; #cursor = null; #lag = null; #pending = null; #busy = false;

  constructor(label) {
    super();
    this.canvas = h('canvas', { aria: { hidden: 'true' } });
    this.overlay = s('svg', { class: 'overlay', 'aria-hidden': 'true' });
    this.handLayer = s('svg', { class: 'hand', 'aria-hidden': 'true' });
    this.sheet = h('div', { className: 'sheet' }, this.canvas, this.overlay, this.handLayer);
    this.caption = h('figcaption', {});
    this.badges = h('p', { className: 'badges' });
    this.element = h('figure', { className: 'pane', tabIndex: 0, role: 'group', aria: { label } }, this.sheet, this.caption, this.badges);
    this.element.addEventListener('pointerdown', e => this.#down(e));
    this.element.addEventListener('pointermove', e => this.#move(e));
    this.element.addEventListener('pointerup', e => this.#up(e));
    this.element.addEventListener('pointercancel', e => this.#up(e));
    this.element.addEventListener('contextmenu', e => e.preventDefault());
    this.element.addEventListener('dblclick', e => { if (!this.#hand) this.zoomAt(1.8, e.clientX, e.clientY); });
    this.element.addEventListener('wheel', e => { e.preventDefault(); this.zoomAt(Math.exp(-e.deltaY / 500), e.clientX, e.clientY); }, { passive: false });
    this.element.addEventListener('keydown', e => { if (this.#key(e)) { e.preventDefault(); e.stopPropagation(); } });
    this.resized = new ResizeObserver(() => this.#apply());
    this.resized.observe(this.element);
    this.landmarks = [];
    this.ownLines = [];
    this.chosen = null;
    this.pointing = false;
    this.onTry = null;
    this.reset(false);
  }

  get loaded() { return this.#samples !== null; }
  get width() { return this.#samples?.width ?? 0; }
  get height() { return this.#samples?.height ?? 0; }
  get laying() { return this.#hand?.name ?? null; }

  load(samples) {
    this.#samples = samples;
    this.canvas.width = samples.columns;
    this.canvas.height = samples.rows;
    for (const layer of [this.canvas, this.overlay, this.handLayer, this.sheet]) {
      layer.style.width = `${samples.width}px`;
      layer.style.height = `${samples.height}px`;
    }
    for (const svg of [this.overlay, this.handLayer]) svg.setAttribute('viewBox', `0 0 ${samples.width} ${samples.height}`);
    this.#image = this.canvas.getContext('2d').createImageData(samples.columns, samples.rows);
    this.window = { low: samples.low, high: samples.high };
    this.#paint();
    this.#apply();
    performance.mark('film-shown');
  }

  /** The original: window, zoom, turn and flip as the film came. */
  reset(keepFlip = false) {
    Object.assign(this, { zoom: 1, panX: 0, panY: 0, turn: 0, inverted: false, flipped: keepFlip && this.flipped });
    if (this.#samples) {
      this.window = { low: this.#samples.low, high: this.#samples.high };
      this.#paint();
    }
    this.#apply();
  }

  /** Changes the window: brightness moves it, contrast narrows it; both as parts of its present width. */
  rewindow(brightness, contrast) {
    if (!this.#samples) return;
    const width = Math.max(64, (this.window.high - this.window.low) * (1 - contrast));
    const centre = (this.window.low + this.window.high) / 2 - brightness * (this.window.high - this.window.low);
    this.window = { low: centre - width / 2, high: centre + width / 2 };
    this.#paint();
    this.dispatchEvent(new Event('look'));
  }

  invert() { this.inverted = !this.inverted; this.#paint(); this.#badge(); }
  rotate() { this.turn = (this.turn + 90) % 360; this.#apply(); }
  flip() { this.flipped = !this.flipped; this.#apply(); }
  fit() { this.zoom = 1; this.panX = this.panY = 0; this.#apply(); }

  zoomAt(factor, clientX, clientY) {
    const box = this.element.getBoundingClientRect();
    const [x, y] = clientX === undefined ? [0, 0] : [clientX - box.left - box.width / 2, clientY - box.top - box.height / 2];
    const zoom = Math.min(16, Math.max(0.5, this.zoom * factor)), real = zoom / this.zoom;
    this.panX = x - (x - this.panX) * real;
    this.panY = y - (y - this.panY) * real;
    this.zoom = zoom;
    this.#apply();
  }

  hide(hidden) { this.element.classList.toggle('bare', hidden); }

  /** What the service shows over the film. */
  draw(film) {
    this.film = film;
    this.overlay.replaceChildren(...(film.alignment ? parseSvg(film.alignment.overlay) : []));
    this.landmarks = (film.alignment?.landmarks ?? []).map(l => ({ ...l }));
    this.ownLines = film.ownLines;
    if (this.pointing && this.landmarks.length === 0) this.pointing = false;
    if (this.#onPage) this.#clear(this.overlay);
    this.#drawHand();
    this.#badge();
  }

  // ---- lines by hand -------------------------------------------------------------------------------------------

  beginLine(name) {
    this.pointing = false;
    this.#hand = { name, from: null };
    this.#cursor = { x: this.width / 2, y: this.height / 2 };
    this.element.classList.add('laying');
    this.element.focus({ preventScroll: true });
    tell(`${NAMES[name] ?? name}: two clicks, or arrow keys and Enter twice. Escape leaves it.`);
    this.#drawHand();
    this.dispatchEvent(new Event('hand'));
  }

  endLine() {
    this.#hand = null;
    this.element.classList.remove('laying');
    this.#drawHand();
    this.dispatchEvent(new Event('hand'));
  }

  #set(place) {
    if (!this.#hand.from) {
      this.#hand.from = place;
      this.#cursor = { ...place };
      this.#drawHand();
      return;
    }
    const { name, from } = this.#hand;
    if (Math.hypot(place.x - from.x, place.y - from.y) < 2) return;
    this.endLine();
    this.dispatchEvent(new CustomEvent('line', { detail: { name, from: [from.x, from.y], to: [place.x, place.y] } }));
  }

  // ---- points --------------------------------------------------------------------------------------------------

  togglePoints() {
    if (this.landmarks.length === 0) { tell('Points can be moved once the tool\u2019s lines are shown.'); return; }
    this.pointing = !this.pointing;
    this.chosen ??= this.landmarks.find(l => l.x !== null)?.name ?? null;
    if (this.pointing) { this.element.focus({ preventScroll: true }); tell('Drag a point, or choose with , and . and nudge with the arrow keys.'); }
    this.#drawHand();
    this.dispatchEvent(new Event('hand'));
  }

  step(by) {
    const there = this.landmarks.filter(l => l.x !== null);
    if (there.length === 0) return;
    const at = there.findIndex(l => l.name === this.chosen);
    this.chosen = there[(at + by + there.length) % there.length].name;
    tell(this.chosen.replaceAll('.', ' '));
    this.#drawHand();
    this.dispatchEvent(new Event('hand'));
  }

  #moveTo(landmark, place, last) {
    landmark.x = place.x;
    landmark.y = place.y;
    landmark.byReader = true;
    landmark.ellipse = null;
    this.#drawHand();
    if (last) this.dispatchEvent(new CustomEvent('placed', { detail: { name: landmark.name, place } }));
    else this.#ask(landmark.name, place);
  }

  // The lines follow the point: one question at a time, and always the latest place.
  async #ask(name, place) {
    this.#pending = { name, place, at: this.#pending?.at ?? performance.now() };
    if (this.#busy || !this.onTry) return;
    this.#busy = true;
    while (this.#pending) {
      const { name: n, place: p, at } = this.#pending;
      this.#pending = null;
      const alignment = await this.onTry(n, p).catch(() => null);
      if (alignment && this.#lag) {
        this.overlay.replaceChildren(...parseSvg(alignment.overlay));
        this.dispatchEvent(new CustomEvent('tried', { detail: alignment }));
        performance.measure('drag', { start: at, end: performance.now() });
      }
    }
    this.#busy = false;
  }

  // ---- pointers and keys -----------------------------------------------------------------------------------------

  /** From the screen to pixels of the original image. */
  toFilm(clientX, clientY) {
    const point = new DOMPoint(clientX, clientY).matrixTransform(this.handLayer.getScreenCTM().inverse());
    return { x: point.x, y: point.y };
  }

  #nearest(place) {
    const reach = 14 / this.#scale();
    let best = null;
    for (const l of this.landmarks) {
      if (l.x === null) continue;
      const d = Math.hypot(l.x - place.x, l.y - place.y);
      if (d < reach && (!best || d < best.d)) best = { l, d };
    }
    return best?.l ?? null;
  }

  #down(e) {
    if (!this.#samples) return;
    this.element.focus({ preventScroll: true });
    this.dispatchEvent(new Event('chosen'));
    const place = this.toFilm(e.clientX, e.clientY);
    if (this.#hand && e.button === 0) { this.#set(place); return; }
    this.element.setPointerCapture(e.pointerId);
    const point = this.pointing && e.button === 0 ? this.#nearest(place) : null;
    if (point) { this.chosen = point.name; this.#lag = point; this.#drawHand(); this.dispatchEvent(new Event('hand')); }
    this.#pointers.set(e.pointerId, { x: e.clientX, y: e.clientY, window: e.button === 2 || e.shiftKey });
  }

  #move(e) {
    if (this.#hand) {
      this.#cursor = this.toFilm(e.clientX, e.clientY);
      this.#drawHand();
      return;
    }
    const before = this.#pointers.get(e.pointerId);
    if (!before) return;
    const [dx, dy] = [e.clientX - before.x, e.clientY - before.y];
    if (this.#lag) this.#moveTo(this.#lag, this.toFilm(e.clientX, e.clientY), false);
    else if (this.#pointers.size === 2) {
      const other = [...this.#pointers].find(([id]) => id !== e.pointerId)[1];
      const was = Math.hypot(before.x - other.x, before.y - other.y), is = Math.hypot(e.clientX - other.x, e.clientY - other.y);
      this.zoomAt(is / Math.max(1, was), (e.clientX + other.x) / 2, (e.clientY + other.y) / 2);
    } else if (before.window) this.rewindow(-dy / 400, dx / 400);
    else { this.panX += dx; this.panY += dy; this.#apply(); }
    Object.assign(before, { x: e.clientX, y: e.clientY });
  }

  #up(e) {
    this.#pointers.delete(e.pointerId);
    if (this.#lag) {
      const point = this.#lag;
      this.#lag = null;
      this.#pending = null;
      this.#moveTo(point, this.toFilm(e.clientX, e.clientY), true);
    }
  }

  #key(e) {
    const step = (e.shiftKey ? 10 : 1) * Math.max(1, this.width / 1000);
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
    if (this.#hand) {
      if (way) { this.#cursor = this.#along(this.#cursor, way, step * 3); this.#drawHand(); return true; }
      if (e.key === 'Enter' || e.key === ' ') { this.#set({ ...this.#cursor }); return true; }
      if (e.key === 'Escape') { this.endLine(); tell('No line laid.'); return true; }
      return false;
    }
    if (this.pointing) {
      if (e.key === ',' || e.key === '.') { this.step(e.key === ',' ? -1 : 1); return true; }
      if (e.key === 'Escape') { this.togglePoints(); return true; }
      const point = this.landmarks.find(l => l.name === this.chosen);
      if (way && point && point.x !== null) { this.#moveTo(point, this.#along(point, way, step), true); return true; }
      return false;
    }
    if (way) { this.panX -= way[0] * 40; this.panY -= way[1] * 40; this.#apply(); return true; }
    return false;
  }

  // Arrow keys go the way they point on the screen, however the film is turned.
  #along(place, way, step) {
    const m = this.handLayer.getScreenCTM().inverse(), length = Math.hypot(m.a, m.b);
    return { x: place.x + step * (m.a * way[0] + m.c * way[1]) / length, y: place.y + step * (m.b * way[0] + m.d * way[1]) / length };
  }

  // ---- drawing -------------------------------------------------------------------------------------------------

  #scale() {
    if (!this.#samples) return 1;
    const box = this.element.getBoundingClientRect(), turned = this.turn % 180 !== 0;
    const [w, t] = turned ? [this.height, this.width] : [this.width, this.height];
    return this.zoom * Math.min(box.width / w, box.height / t);
  }

  // Nothing can be laid out while the pane is not on the page.
  get #onPage() { return this.#samples !== null && this.element.clientWidth > 0 && this.element.clientHeight > 0; }

  #apply() {
    if (!this.#onPage) return;
    this.element.classList.toggle('small', Math.min(this.element.clientWidth, this.element.clientHeight) < 420);
    const box = this.element.getBoundingClientRect(), scale = this.#scale();
    this.sheet.style.transform = `translate(${box.width / 2 + this.panX}px, ${box.height / 2 + this.panY}px) rotate(${this.turn}deg) ` +
      `scale(${this.flipped ? -scale : scale}, ${scale}) translate(${-this.width / 2}px, ${-this.height / 2}px)`;
    this.sheet.style.setProperty('--unit', String(1 / scale));
    this.sheet.classList.toggle('flipped', this.flipped);
    this.#clear(this.overlay);
    this.#drawHand();
    this.#badge();
  }

  #paint() {
    const { values } = this.#samples, { low, high } = this.window;
    const table = new Uint32Array(65536), range = Math.max(1, high - low);
    for (let v = 0; v < 65536; v++) {
      let g = v <= low ? 0 : v >= high ? 255 : Math.round(255 * (v - low) / range);
      if (this.inverted) g = 255 - g;
      table[v] = 0xff000000 | g << 16 | g << 8 | g;
    }
    const target = new Uint32Array(this.#image.data.buffer);
    for (let i = 0; i < values.length; i++) target[i] = table[values[i]];
    this.canvas.getContext('2d').putImageData(this.#image, 0, 0);
  }

  #clear(layer) { clearLabels(layer, this.element.getBoundingClientRect(), this.caption.getBoundingClientRect()); }

  #badge() {
    const words = [this.flipped && 'flipped: left and right are swapped', this.inverted && 'inverted', this.turn && `turned ${this.turn}°`].filter(Boolean);
    this.badges.replaceChildren(...words.map(w => h('span', { className: w.startsWith('flipped') ? 'flip' : '' }, w)));
  }

  #drawHand() {
    if (!this.#onPage) return;
    const unit = 1 / this.#scale(), marks = [];
    for (const line of this.film?.brought ?? []) {
      const [a, b] = this.#across({ x: line.from[0], y: line.from[1] }, { x: line.to[0], y: line.to[1] });
      marks.push(...stroke(a, b, line.byTeacher ? unit : unit * 0.6, line.byTeacher ? '#f4f1ea' : '#c8c2b6'));
      if (line.byTeacher) marks.push(label('the teacher\u2019s', { x: Math.max(10 * unit, Math.min(this.width - 90 * unit, b.x)), y: Math.min(this.height - 10 * unit, Math.max(22 * unit, b.y - 12 * unit)) }, unit, '#f4f1ea'));
    }
    for (const line of this.ownLines) {
      const [a, b] = this.#across({ x: line.from[0], y: line.from[1] }, { x: line.to[0], y: line.to[1] });
      marks.push(...stroke(a, b, unit, READER));
      const end = a.y < b.y ? a : b;
      marks.push(label(`yours: ${NAMES[line.name] ?? line.name}`, { x: Math.min(this.width - 10 * unit, Math.max(10 * unit, end.x)), y: Math.min(this.height - 10 * unit, Math.max(22 * unit, end.y + 22 * unit)) }, unit));
    }
    if (this.#hand) {
      const at = this.#cursor;
      if (this.#hand.from) marks.push(...stroke(...this.#across(this.#hand.from, at), unit, READER));
      marks.push(s('path', { d: `M${at.x - 14 * unit} ${at.y}h${10 * unit}m${8 * unit} 0h${10 * unit}M${at.x} ${at.y - 14 * unit}v${10 * unit}m0 ${8 * unit}v${10 * unit}`, stroke: READER, 'stroke-width': 1.5 * unit, fill: 'none' }));
    }
    if (this.pointing) {
      for (const l of this.landmarks.filter(l => l.x !== null)) {
        const chosen = l.name === this.chosen, colour = l.byReader ? READER : '#56b4e9';
        if (chosen && l.ellipse) {
          const [rx, ry, degrees] = l.ellipse;
          marks.push(s('ellipse', { cx: l.x, cy: l.y, rx, ry, transform: `rotate(${degrees} ${l.x} ${l.y})`, fill: 'none', stroke: colour, 'stroke-width': 1.2 * unit }));
        }
        marks.push(s('circle', { cx: l.x, cy: l.y, r: (chosen ? 6 : 3.5) * unit, fill: 'none', stroke: HALO, 'stroke-width': 3.5 * unit, 'stroke-opacity': 0.6 }));
        marks.push(s('circle', { cx: l.x, cy: l.y, r: (chosen ? 6 : 3.5) * unit, fill: 'none', stroke: colour, 'stroke-width': 1.5 * unit, 'data-landmark': l.name }));
        if (chosen) marks.push(label(l.name.replaceAll('.', ' '), { x: l.x + 10 * unit, y: l.y - 10 * unit }, unit, colour));
      }
    }
    for (const line of this.truth ?? []) {
      const [a, b] = this.#across({ x: line.through[0], y: line.through[1] }, { x: line.through[0] + line.direction[0], y: line.through[1] + line.direction[1] });
      marks.push(s('path', { d: `M${a.x} ${a.y}L${b.x} ${b.y}`, stroke: HALO, 'stroke-width': 4 * unit, 'stroke-opacity': 0.6 }));
      marks.push(s('path', { d: `M${a.x} ${a.y}L${b.x} ${b.y}`, stroke: '#f4f1ea', 'stroke-width': 1.6 * unit, 'stroke-dasharray': `${2 * unit} ${5 * unit}`, 'stroke-linecap': 'round' }));
    }
    this.handLayer.replaceChildren(...marks);
    this.#clear(this.handLayer);
  }

  // The whole line across the film through two places.
  #across(a, b) {
    const [dx, dy] = [b.x - a.x, b.y - a.y], length = Math.hypot(dx, dy);
    if (length < 1e-6) return [a, b];
    const reach = this.width + this.height, [ux, uy] = [dx / length, dy / length];
    const inside = t => { const x = a.x + ux * t, y = a.y + uy * t; return x >= 0 && y >= 0 && x <= this.width && y <= this.height; };
    let [from, to] = [0, length];
    for (let t = 0; t > -reach && inside(t); t -= 4) from = t;
    for (let t = length; t < reach && inside(t); t += 4) to = t;
    return [{ x: a.x + ux * from, y: a.y + uy * from }, { x: a.x + ux * to, y: a.y + uy * to }];
  }

  /** A square of the film as it is looked at now, for a crop beside a question. */
  crop(crop, size) {
    const canvas = h('canvas', { width: size, height: size, role: 'img', aria: { label: 'Part of the film, as it came' } });
    const f = this.canvas.width / this.width, side = crop.side * f;
    const context = canvas.getContext('2d');
    context.imageSmoothingQuality = 'high';
    context.drawImage(this.canvas, crop.x * f - side / 2, crop.y * f - side / 2, side, side, 0, 0, size, size);
    return canvas;
  }
}

function stroke(a, b, unit, colour) {
  const d = `M${a.x} ${a.y}L${b.x} ${b.y}`;
  return [
    s('path', { d, stroke: HALO, 'stroke-width': 4.5 * unit, 'stroke-opacity': 0.6 }),
    s('path', { d, stroke: colour, 'stroke-width': 1.6 * unit }),
  ];
}

function label(text, at, unit, colour = READER) {
  const words = s('text', { x: at.x + 6 * unit, y: at.y, 'font-size': 13 * unit, fill: colour, stroke: HALO, 'stroke-width': 3 * unit, 'stroke-opacity': 0.7, 'paint-order': 'stroke', 'stroke-linejoin': 'round' });
  words.textContent = text;
  return words;
}
