// Turn the elbow: a simulated elbow like the film's, turned step by step. Is it the film or the bone?
import { api, Refused } from './api.js';
import { h, s, parseSvg, tell } from './dom.js';

const SIZE = 288;

/** A button that fetches the turned elbow and becomes its slider. */
export function turning(room, film) {
  const box = h('div', { className: 'turning' });
  const ask = h('button', {
    type: 'button', id: `turn-elbow-${film.id}`,
    onclick: async () => {
      ask.disabled = true;
      tell('A simulated elbow is being matched and turned; some seconds.');
      try {
        room.turned.set(film.id, await api.turned(room.id, film.id));
        box.replaceChildren(...slider(film, room.turned.get(film.id)));
        document.getElementById(`turn-${film.id}`)?.focus({ preventScroll: true });
        tell('');
      } catch (e) {
        ask.disabled = false;
        if (!(e instanceof Refused)) throw e;
        tell(e.message);
      }
    },
  }, 'Turn the elbow: the film or the bone?');
  box.append(...room.turned.has(film.id) ? slider(film, room.turned.get(film.id)) : [ask]);
  return box;
}

function slider(film, turned) {
  const picture = h('img', { alt: 'Simulated elbow, turned', width: SIZE, height: SIZE });
  const lines = s('svg', { viewBox: `0 0 ${SIZE} ${SIZE}`, 'aria-hidden': 'true' });
  const values = h('ul', {}), degrees = h('output', { for: `turn-${film.id}` });
  const urls = turned.frames.map(f => URL.createObjectURL(new Blob([Uint8Array.from(atob(f.picture), c => c.charCodeAt(0))], { type: 'image/png' })));
  const middle = turned.frames.findIndex(f => f.degrees === 0);
  const show = i => {
    const frame = turned.frames[i];
    picture.src = urls[i];
    lines.replaceChildren(...parseSvg(frame.overlay));
    values.replaceChildren(...frame.values.map(v => h('li', {}, v)));
    degrees.textContent = frame.degrees === 0 ? 'as the film fits best' : `${Math.abs(frame.degrees)}° ${frame.degrees < 0 ? 'one way' : 'the other way'}`;
  };
  const range = h('input', { type: 'range', id: `turn-${film.id}`, min: '0', max: String(turned.frames.length - 1), step: '1', value: String(middle), oninput: e => show(Number(e.target.value)) });
  show(middle);
  return [h('div', { className: 'turned' }, picture, lines, h('b', {}, 'Simulated')), h('label', { for: `turn-${film.id}` }, 'Turn about the humeral shaft: ', degrees), range, values, h('p', { className: 'quiet' }, turned.words)];
}
