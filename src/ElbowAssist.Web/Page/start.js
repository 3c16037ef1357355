// The first screen: films in, demo studies, studies kept, the follow-up list.
import { api } from './api.js';
import { h, tell } from './dom.js';
import { beginWith } from './main.js';

export async function startRoom(room) {
  const [kept, demos, archive] = await Promise.all([api.studies(), api.demos(), api.archive()]);
  const input = h('input', { type: 'file', multiple: true, id: 'choose', className: 'file', onchange: () => input.files.length && beginWith([...input.files]) });
  const open = id => { location.hash = `study/${id}`; };
  const line = s => h('li', {}, h('a', { href: `#study/${s.id}` }, s.title), h('span', {}, `${s.films} ${s.films === 1 ? 'film' : 'films'}, ${s.closed ? 'read closed' : 'open'}, ${day(s.createdAt)}`));
  const followUp = h('section', { id: 'follow-up' }), held = h('section', { id: 'kept' });
  const draw = studies => {
    const waiting = studies.filter(s => s.followUp && !s.outcome);
    followUp.hidden = waiting.length === 0;
    followUp.replaceChildren(h('h2', {}, 'To follow up'), h('ul', { className: 'list' }, waiting.map(s => h('li', {}, h('a', { href: `#study/${s.id}` }, s.title), h('span', {}, s.followUp)))));
    held.hidden = studies.length === 0;
    held.replaceChildren(h('h2', {}, 'Kept on this machine'), h('ul', { className: 'list' }, studies.slice(0, 30).map(line)));
  };
  draw(kept.list);
  watch(kept.tag, draw, () => held.isConnected);
  room.className = 'start';
  room.replaceChildren(
    h('section', { className: 'welcome', aria: { label: 'Begin' } },
      h('h2', {}, 'Look first, lay your own line, then see the tool’s.'),
      h('label', { className: 'drop', for: 'choose' }, input, h('b', {}, 'Drop films here'), h('span', {}, 'or choose them: PNG, JPEG, TIFF, DICOM, or a case file; one patient at a time. They stay on this machine.')),
      h('p', { className: 'quiet' }, 'No patient’s name belongs into titles or notes.')),
    archive.named ? fromArchive() : '',
    demos.length ? h('section', {}, h('h2', {}, 'To try'), h('ul', { className: 'list' }, demos.map(d => h('li', {},
      h('button', { type: 'button', className: 'plain', id: `demo-${d.name}`, onclick: async () => open((await api.begin({ demo: d.name })).id) }, d.title),
      h('span', {}, `${d.films} ${d.films === 1 ? 'film' : 'films'}, invented patient`))))) : '',
    followUp, held,
    h('section', {}, h('h2', {}, 'Practice'), h('p', {}, 'Simulated films with exact truth: lay the lines, judge the view, see how far off you were. ', h('a', { href: '#practice' }, 'Open the practice room'))));
  tell('');
}

/** Films that a receiver writes become studies while the list is on the screen. */
async function watch(tag, draw, shown) {
  for (;;) {
    await new Promise(done => setTimeout(done, 3000));
    if (!shown()) return;
    if (document.hidden || underHand(document.activeElement)) continue;
    const now = await api.studies(tag).catch(() => null);
    if (now && shown()) { tag = now.tag; draw(now.list); }
  }
}

// A list is not drawn anew under the hand of somebody who goes through it by keys.
const underHand = element => Boolean(element?.closest?.('#kept, #follow-up'));

/** Studies of the archive by day or accession number; no name is asked for or shown. */
function fromArchive() {
  const today = new Date(), iso = `${today.getFullYear()}-${String(today.getMonth() + 1).padStart(2, '0')}-${String(today.getDate()).padStart(2, '0')}`;
  const date = h('input', { type: 'date', id: 'archive-day', value: iso, required: true });
  const number = h('input', { id: 'archive-number', autocomplete: 'off', maxLength: 64 });
  const found = h('div', { role: 'status' });
  const look = async e => {
    e.preventDefault();
    found.replaceChildren(h('p', { className: 'quiet' }, 'The archive is being asked…'));
    try {
      const studies = await api.archiveStudies(date.value || iso, number.value.trim());
      found.replaceChildren(studies.length === 0 ? h('p', { className: 'quiet' }, 'No study with elbow films.') : h('ul', { className: 'list' }, studies.map(s => h('li', {},
        h('a', { href: `#dicom/${s.studyInstanceUid}` }, [s.description ?? 'Radiographs', s.accessionNumber].filter(Boolean).join(', ')),
        h('span', {}, [s.date, s.time?.slice(0, 5)].filter(Boolean).join(' ') || 'no date')))));
    } catch (refused) {
      found.replaceChildren(h('p', { className: 'message' }, refused.message));
    }
  };
  return h('section', {}, h('h2', {}, 'From the archive'),
    h('form', { className: 'find', onsubmit: look },
      h('label', { for: 'archive-day' }, 'Day', date),
      h('label', { for: 'archive-number' }, 'or accession number', number),
      h('button', { type: 'submit', id: 'archive-look' }, 'Look')),
    found);
}

const day = at => new Date(at).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
