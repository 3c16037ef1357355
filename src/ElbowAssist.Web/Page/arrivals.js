// Films on their way into a study: each named with what became of it; the rest goes on, and all of it can be stopped.
import { h } from './dom.js';

/**
 * Adds one after the other. Each has a name and sends itself, given a signal, and answers with the study.
 * Whoever asked takes the study as it stands after each.
 */
export async function arrive(stage, films, take) {
  const stop = new AbortController();
  const list = h('ol', { className: 'arriving' }, ...films.map(f => h('li', { data: { name: f.name } }, f.name, ' ', h('span', {}, 'waiting'))));
  const meter = h('progress', { max: films.length, value: 0, aria: { label: 'Films added' } });
  const button = h('button', { type: 'button', id: 'stop-adding', onclick: () => { stop.abort(); button.disabled = true; } }, 'Stop adding');
  const box = h('div', { className: 'arrivals', role: 'status' }, meter, list, button);
  stage.append(box);
  let left = 0;
  for (const [i, film] of films.entries()) {
    const state = list.children[i].lastChild;
    if (stop.signal.aborted) { state.textContent = 'left out'; left++; continue; }
    state.textContent = 'being added';
    try {
      await take(await film.send(stop.signal));
      state.textContent = 'added';
    } catch (e) {
      left++;
      state.textContent = stop.signal.aborted ? 'left out' : e.message;
    }
    meter.value = i + 1;
  }
  if (left === 0) box.remove();
  else { meter.remove(); button.replaceWith(h('button', { type: 'button', onclick: () => box.remove() }, 'Close')); }
}
