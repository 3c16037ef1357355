// The first screen: films in, demo studies, studies kept, the follow-up list.
import { api } from './api.js';
import { h, tell } from './dom.js';
import { beginWith } from './main.js';

export async function startRoom(room) {
  const [studies, demos] = await Promise.all([api.studies(), api.demos()]);
  const input = h('input', { type: 'file', multiple: true, id: 'choose', className: 'file', onchange: () => input.files.length && beginWith([...input.files]) });
  const waiting = studies.filter(s => s.followUp && !s.outcome);
  const open = id => { location.hash = `study/${id}`; };
  const line = s => h('li', {}, h('a', { href: `#study/${s.id}` }, s.title), h('span', {}, `${s.films} ${s.films === 1 ? 'film' : 'films'}, ${s.closed ? 'read closed' : 'open'}, ${day(s.createdAt)}`));
  room.className = 'start';
  room.replaceChildren(
    h('section', { className: 'welcome', aria: { label: 'Begin' } },
      h('h2', {}, 'Look first, lay your own line, then see the tool’s.'),
      h('label', { className: 'drop', for: 'choose' }, input, h('b', {}, 'Drop films here'), h('span', {}, 'or choose them: PNG, JPEG, TIFF, DICOM, or a case file; one patient at a time. They stay on this machine.')),
      h('p', { className: 'quiet' }, 'No patient’s name belongs into titles or notes.')),
    demos.length ? h('section', {}, h('h2', {}, 'To try'), h('ul', { className: 'list' }, demos.map(d => h('li', {},
      h('button', { type: 'button', className: 'plain', id: `demo-${d.name}`, onclick: async () => open((await api.begin({ demo: d.name })).id) }, d.title),
      h('span', {}, `${d.films} ${d.films === 1 ? 'film' : 'films'}, invented patient`))))) : '',
    waiting.length ? h('section', {}, h('h2', {}, 'To follow up'), h('ul', { className: 'list' }, waiting.map(s => h('li', {}, h('a', { href: `#study/${s.id}` }, s.title), h('span', {}, s.followUp))))) : '',
    studies.length ? h('section', {}, h('h2', {}, 'Kept on this machine'), h('ul', { className: 'list' }, studies.slice(0, 30).map(line))) : '',
    h('section', {}, h('h2', {}, 'Practice'), h('p', {}, 'Simulated films with exact truth: lay the lines, judge the view, see how far off you were. ', h('a', { href: '#practice' }, 'Open the practice room'))));
  tell('');
}

const day = at => new Date(at).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
