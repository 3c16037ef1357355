// Which room is open, the keys, films dropped anywhere.
import { api, Refused } from './api.js';
import { h, key, tell } from './dom.js';
import { StudyRoom } from './study.js';
import { startRoom } from './start.js';
import { PracticeRoom } from './practice.js';

const room = document.getElementById('room');
let open = null;

async function go() {
  open?.leave?.();
  open = null;
  const [place, id] = location.hash.slice(1).split('/');
  for (const link of document.querySelectorAll('[data-place]')) {
    link.toggleAttribute('aria-current', link.dataset.place === (place === 'practice' ? 'practice' : place ? '' : 'studies'));
  }
  document.getElementById('facts').textContent = '';
  try {
    if (place === 'dicom') {
      await openLinked(id);
    } else if (place === 'study') {
      open = new StudyRoom(room, id);
      await open.open();
    } else if (place === 'practice') {
      open = new PracticeRoom(room);
      await open.open();
    } else await startRoom(room);
  } catch (e) {
    room.className = 'start';
    room.replaceChildren(h('p', { className: 'message' }, e.message));
    if (!(e instanceof Refused)) throw e;
  }
}

/** Opens the DICOM study a link names: what has arrived of it, and what the archive holds besides. */
async function openLinked(uid) {
  room.className = 'start';
  room.replaceChildren(h('p', { role: 'status' }, 'The archive is being asked…'));
  const linked = await api.openArchived(uid);
  history.replaceState(null, '', `#study/${linked.id}`);
  open = new StudyRoom(room, linked.id);
  await open.open();
  if (linked.films.length > 0) open.fetchAll(linked.films);
}

/** Begins a study with files dropped or chosen. */
export async function beginWith(files) {
  if (files.length === 1 && files[0].name.endsWith('.json')) {
    try {
      location.hash = `study/${(await api.openCase(files[0])).id}`;
    } catch (e) {
      if (!(e instanceof Refused)) throw e;
      tell(e.message);
    }
    return;
  }
  const study = await api.begin({ title: `Films of ${new Date().toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}` });
  history.pushState(null, '', `#study/${study.id}`);
  await go();
  await open.add(files);
}

addEventListener('hashchange', go);
addEventListener('popstate', () => open?.id !== location.hash.split('/')[1] && go());
addEventListener('dragover', e => e.preventDefault());
addEventListener('drop', e => {
  e.preventDefault();
  const files = [...(e.dataTransfer?.files ?? [])];
  if (files.length > 0) (open?.add ? open.add(files) : beginWith(files));
});
addEventListener('keydown', e => {
  if (document.querySelector('dialog[open]')) return;
  if (e.target.matches('input:not([type=range], [type=checkbox]), textarea, select')) { if (e.key === 'Escape') e.target.blur(); return; }
  if (e.key === '?') { showKeys(); e.preventDefault(); return; }
  if ((e.key === ' ' || e.key === 'Enter') && e.target.matches('button, a, summary')) return;
  if (open?.keyDown?.(e)) e.preventDefault();
});
addEventListener('keyup', e => open?.keyUp?.(e));
addEventListener('blur', () => open?.hide?.(false));
document.getElementById('keys-button').addEventListener('click', showKeys);
document.querySelector('.skip').addEventListener('click', e => { e.preventDefault(); (document.getElementById('notes') ?? room).focus(); });

function showKeys() {
  const dialog = document.getElementById('keys');
  const rows = [
    ['Films', [['L', 'lay a line: two clicks, or arrow keys and Enter twice'], ['T', 'show the tool’s beside it, once you have laid yours or answered'], ['M', 'move points; , and . choose, arrow keys nudge (Shift: by ten)'], ['Ctrl Z', 'take a move back; with Shift, forth'], ['H', 'hold: hide everything but the film'], ['O', 'the original'], ['+ − 0', 'closer, farther, whole film; arrow keys move it'], ['B C', 'darker, less contrast; with Shift, brighter, more. Or drag with Shift or the right button'], ['I R F', 'invert, turn, flip'], ['V S', 'next film, side by side']]],
    ['The read', [['1 … 9', 'answer the question marked'], ['Shift 1', 'the same answer to all open questions of that kind'], ['J K', 'next, previous question'], ['E', 'raise the contrast of the part shown, after your answer'], ['N P', 'next, previous step'], ['Enter', 'go on; at the end, close the read'], ['C', 'after closing: copy the report as text'], ['Tab', 'reaches everything on the page']]],
  ];
  dialog.replaceChildren(
    h('h2', { id: 'keys-title' }, 'Keys'),
    h('div', { className: 'sheets' }, rows.map(([title, list]) => h('section', {}, h('h3', {}, title), h('dl', {}, list.map(([k, t]) => h('div', {}, h('dt', {}, k.split(' ').map(p => key(p))), h('dd', {}, t))))))),
    h('form', { method: 'dialog' }, h('button', { className: 'main', autofocus: true }, 'Close')));
  dialog.showModal();
}

await go();
performance.mark('page-ready');
