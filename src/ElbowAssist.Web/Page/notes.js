// The right-hand side: the question, the steps of the read, what the tool shows, the closed read.
import { api, mark } from './api.js';
import { h, key, tell } from './dom.js';
import { filmTitle } from './study.js';
import { turning } from './turning.js';

/** One line asks what the films cannot say; Enter accepts. */
export function questionForm(room) {
  const q = room.study.question;
  const years = q.ageMonths === null ? '' : q.ageMonths < 24 ? (q.ageMonths / 12).toFixed(1) : Math.floor(q.ageMonths / 12);
  const select = (id, label, value, options) => h('label', { for: id }, label, h('select', { id }, options.map(([v, t]) => h('option', { value: v, selected: v === value }, t))));
  const maturity = q.maturity === 'adolescent' ? 'child' : q.maturity;
  const begin = h('button', { type: 'submit', className: 'main', id: 'begin' }, 'Begin the read ', key('Enter'));
  const form = h('form', {
    id: 'question', className: 'leaf',
    onsubmit: e => { e.preventDefault(); room.queue(() => room.accept()); },
  },
    h('h2', {}, 'Whose elbow, and which?'),
    h('div', { className: 'facts' },
      select('side', 'Side in question', q.injuredSide, [['unknown', 'not said'], ['left', 'left'], ['right', 'right']]),
      h('label', { for: 'age' }, 'Age, years', h('input', { id: 'age', inputMode: 'decimal', autocomplete: 'off', size: 5, value: String(years) })),
      select('sex', 'Sex', q.sex ?? '', [['', 'not said'], ['F', 'female'], ['M', 'male']]),
      select('maturity', 'Elbow', maturity, [['unknown', 'adult or child?'], ['adult', 'adult'], ['child', 'child']])),
    h('p', { className: 'quiet' }, 'Filled in from the films where they say so. Look at the films first: nothing of the tool’s is shown, or sent to this page, before your own line or answer.'),
    h('div', { className: 'facts' }, h('label', { for: 'reader' }, 'Your initials, if you like', h('input', { id: 'reader', autocomplete: 'off', maxLength: 12, value: mark.get() }))),
    h('label', { className: 'tick', for: 'visible' }, h('input', { type: 'checkbox', id: 'visible' }), ' Show the tool’s lines from the start (every report will say so)'),
    begin,
    messages(room));
  room.accept = async () => {
    const age = form.elements.namedItem('age').value.trim().replace(',', '.'), typed = Number(age);
    if (age !== '' && !(typed >= 0 && typed <= 125)) { tell('Age in years, from 0 to 125, or empty.'); return; }
    mark.set(form.elements.namedItem('reader').value);
    const months = age === '' ? null : String(years) === age ? q.ageMonths : Math.floor(typed * 12);
    await room.do(() => api.question(room.id, {
      ageMonths: months, sex: form.elements.namedItem('sex').value || null, injuredSide: form.elements.namedItem('side').value,
      maturity: form.elements.namedItem('maturity').value, proposalsVisible: form.elements.namedItem('visible').checked,
    }));
    if (room.walk) room.go(0);
    document.getElementById('notes').focus({ preventScroll: true });
  };
  return form;
}

/** The steps in a row, with what is open in each. */
export function railView(room) {
  return h('nav', { className: 'rail', aria: { label: 'Steps of the read' } }, h('ol', {}, room.walk.steps.map((step, i) => h('li', {},
    h('button', { type: 'button', id: `step-${step.topic}`, aria: { current: i === room.step && !room.walk.concludedAt ? 'step' : null }, disabled: !!room.walk.concludedAt, onclick: () => room.go(i) },
      step.title.replace('Second look where it is missed most', 'Second look').replace('Views and what they carry', 'Views').replace('History and question', 'History'),
      h('span', {}, step.open > 0 ? `${step.open} open` : 'answered'))))));
}

/** A step: questions, then what the tool shows, then the way on. */
export function stepView(room) {
  const step = room.stepNow, current = room.current(), film = room.film(room.active);
  const leaf = h('div', { className: 'leaf' }, h('h2', { id: 'step-title' }, step.title), messages(room));
  if (step.topic === 'alignment') leaf.append(ownLines(room, film));
  for (const item of step.items) leaf.append(item.choices.length > 0 ? question(room, step, item, item === current) : note(room, item));
  leaf.append(proposals(room, step));
  if (step.topic === 'conclusion' || step.topic === 'second-look') leaf.append(prompts(room));
  const last = room.step === room.walk.steps.length - 1;
  const outcome = room.walk.steps.at(-1).items.find(i => i.id === 'conclusion.outcome').answer;
  leaf.append(h('div', { className: 'way' },
    h('button', { type: 'button', id: 'previous', disabled: room.step === 0, onclick: () => room.go(room.step - 1) }, 'Back ', key('P')),
    last
      ? h('button', { type: 'button', id: 'close', className: 'main', disabled: !outcome, onclick: () => room.close() }, 'Close the read ', key('Enter'))
      : h('button', { type: 'button', id: 'next', className: step.open === 0 ? 'main' : '', onclick: () => room.go(room.step + 1) }, step.open > 0 ? 'Go on with questions open ' : 'Go on ', key('N'))));
  return leaf;
}

function question(room, step, item, current) {
  const like = step.items.filter(i => !i.answer && !i.several && JSON.stringify(i.choices) === JSON.stringify(item.choices));
  const answered = item.answer !== null;
  return h('fieldset', { id: `item-${item.id}`, className: current ? 'item current' : 'item', onclick: () => { if (room.current()?.id !== item.id && !item.answer) { room.item = item.id; room.drawNotes(); } } },
    h('legend', {}, item.question, item.afterTool ? h('i', {}, ' (answered with the tool’s in view)') : ''),
    h('div', { className: 'choices', role: item.several ? 'group' : 'radiogroup', aria: { label: item.question } }, item.choices.map((choice, i) => {
      const taken = item.answer?.includes(choice.code) ?? false;
      return h('button', {
        type: 'button', id: `choice-${item.id}-${choice.code}`, role: item.several ? 'checkbox' : 'radio', aria: { checked: String(taken) },
        onclick: e => { e.stopPropagation(); room.pick(item, choice.code, false); },
      }, current && i < 9 ? key(i + 1) : '', choice.label);
    })),
    current && like.length > 3 && !answered ? h('p', { className: 'quiet' }, h('button', { type: 'button', className: 'plain', id: `all-${item.id}`, onclick: e => { e.stopPropagation(); room.pick(item, item.choices[0].code, true); } },
      `All ${like.length} still open: ${item.choices[0].label} `, key('Shift 1')), ' then change the ones that differ.') : '',
    current && item.crops.length > 0 ? crops(room, item) : '');
}

function crops(room, item) {
  const size = 168;
  return h('div', { className: 'crops' }, item.crops.filter((c, i, all) => all.findIndex(o => o.filmId === c.filmId) === i).slice(0, 2).map((crop, i) => {
    const pane = room.panes.get(crop.filmId);
    if (!pane?.loaded) return '';
    const enhance = h('button', {
      type: 'button', id: i === 0 ? 'enhance' : `enhance-${i}`, className: 'plain',
      onclick: async e => {
        e.stopPropagation();
        try {
          const picture = h('img', { alt: 'The same part with its contrast raised', width: size, height: size, src: URL.createObjectURL(await api.enhanced(room.id, crop.filmId, item.id)) });
          enhance.replaceWith(h('figure', {}, picture, h('figcaption', {}, 'contrast raised')));
        } catch (refused) { tell(refused.message); }
      },
    }, 'Raise contrast ', i === 0 ? key('E') : '');
    return [h('figure', {}, pane.crop(crop, size), h('figcaption', {}, filmTitle(room.film(crop.filmId)))), enhance];
  }));
}

function note(room, item) {
  const id = `note-${item.id}`;
  return h('p', { className: 'note' }, h('label', { for: id }, item.question),
    h('input', {
      id, value: item.note ?? '', maxLength: 2000, autocomplete: 'off',
      onchange: e => { const text = e.target.value.trim(); if (text !== (item.note ?? '')) room.answer([{ itemId: item.id, choices: [], note: text }]); },
      onkeydown: e => { if (e.key === 'Enter') { e.target.blur(); document.getElementById('notes').focus({ preventScroll: true }); e.stopPropagation(); } },
    }));
}

function ownLines(room, film) {
  if (!film || film.state === 'unreadable' || !['lateral', 'ap', 'unknown'].includes(film.view)) return '';
  const names = film.view === 'ap' ? ['radiocapitellar-line'] : ['anterior-humeral-line', 'radiocapitellar-line'];
  return h('div', { className: 'own', role: 'group', aria: { label: 'Your own lines' } }, names.map(name => {
    const own = film.ownLines.find(l => l.name === name);
    return h('p', {},
      h('button', { type: 'button', id: `lay-${name}`, onclick: () => room.layLine(name) }, own ? `Lay the ${room.lines[name]} again` : `Lay your ${room.lines[name]}`, ' ', name === names.find(n => !film.ownLines.some(l => l.name === n)) ? key('L') : ''),
      own && !own.compared ? h('button', { type: 'button', id: `compare-${name}`, onclick: () => room.do(() => api.compare(room.id, film.id, name)) }, 'Show the tool’s beside it ', key('T')) : '',
      own?.difference ? h('span', { className: 'difference' }, own.difference) : '');
  }));
}

function proposals(room, step) {
  if (!step.hasProposals) return '';
  if (!step.shown) {
    const partial = step.topic === 'alignment' ? room.study.films.filter(f => f.alignment) : [];
    return h('section', { className: 'tool' },
      h('button', { type: 'button', id: 'show', disabled: step.open > 0, onclick: () => room.show() }, 'Show the tool’s ', key('T')),
      step.open > 0 ? h('p', { className: 'quiet' }, `Your own answers first: ${step.open} open.`) : '',
      partial.map(f => [h('h3', {}, filmTitle(f)), measurementList(f)]));
  }
  const shown = { views: carries, alignment: measured, effusion: evidence, 'growth-centres': growth }[step.topic];
  return h('section', { className: 'tool', aria: { label: 'The tool’s proposals' } }, h('h3', { className: 'by-tool' }, 'The tool’s'), shown(room));
}

function carries(room) {
  return room.study.films.map(f => [h('h4', {}, filmTitle(f)), f.state === 'refused' ? refusal(f) : f.carries ? [
    f.carries.viewErrorDegrees !== null ? h('p', {}, `Turned away from the true view by about ${f.carries.viewErrorDegrees.toFixed(0)}°, as estimated. The film may be rotated, or the distal humerus may be: look for a fracture before blaming the view.`) : '',
    h('p', {}, h('b', {}, 'Can carry: '), f.carries.can.length ? f.carries.can.join('; ') + '.' : 'nothing that is measured; look at it all the same.'),
    f.carries.cannot.length ? h('ul', { className: 'cannot' }, f.carries.cannot.map(c => h('li', {}, h('b', {}, c.title), ': ', c.reasons.join(' ')))) : ''] : h('p', {}, 'Being read…')]);
}

function measured(room) {
  const cross = room.study.together;
  // The film on view first.
  const ordered = [...room.study.films].sort((a, b) => Number(b.id === room.active) - Number(a.id === room.active));
  return [
    cross.length ? h('ul', {}, cross.map(c => h('li', {}, c))) : '',
    ordered.length ? h('p', { className: 'quiet' }, 'In brackets: where the value would fall in 95 of 100 redraws on that film. It says nothing about fracture.') : '',
    ordered.map(f => h('section', { aria: { label: `Measurements, ${filmTitle(f)}` } }, h('h4', {}, filmTitle(f)),
      f.state === 'refused' ? refusal(f) : f.alignment ? [measurementList(f), turning(room, f)] : h('p', {}, f.state === 'reading' ? 'Being read…' : 'This film has no reading.')))];
}

/** Measurements in words; withheld ones with the reason and no number. */
export function measurementList(film) {
  const order = { 'either-side': 0, measured: 1, withheld: 2 };
  return h('dl', { className: 'measured', id: `measured-${film.id}` }, [...film.alignment.measurements].sort((a, b) => order[a.state] - order[b.state]).map(m => h('div', { className: m.state, data: { name: m.name } },
    h('dt', {}, m.title),
    h('dd', {},
      h('div', { className: 'now' }, said(m)),
      m.value ? h('details', {}, h('summary', {}, 'How, and what is published'), h('p', {}, m.note), h('p', {}, m.source), m.references.length ? h('ul', {}, m.references.map(r => h('li', {}, r))) : '') : ''))));
}

const said = m => [
  m.value ? h('span', { className: 'value' }, m.value) : '',
  h('span', { className: 'word' }, { 'either-side': 'on either side of a limit', measured: 'measured', withheld: 'withheld' }[m.state]),
  m.reasons.length ? h('span', { className: 'why' }, m.reasons.join(' ')) : ''];

/** Follows a landmark that is dragged: only what changed is written anew, and each stays where it is. */
export function followMeasurements(filmId, measurements) {
  const list = document.getElementById(`measured-${filmId}`);
  if (!list) return;
  const rows = new Map([...list.children].map(row => [row.dataset.name, row]));
  for (const m of measurements) {
    const row = rows.get(m.name), now = JSON.stringify([m.value, m.state, m.reasons]);
    if (!row || row.now === now) continue;
    row.now = now;
    row.className = m.state;
    row.querySelector('.now').replaceChildren(...said(m).flat().filter(Boolean));
  }
}

function evidence(room) {
  return room.study.films.filter(f => f.evidence?.length).map(f => [h('h4', {}, filmTitle(f)), h('ul', {}, f.evidence.map(e => h('li', {}, e.title, ': ', e.lookHere ? 'look here' : 'not assessable on this film')))]);
}

function growth(room) {
  const strip = () => h('img', { className: 'strip', alt: 'Ossification centres by age, with your marks', src: `/api/studies/${room.id}/growth.svg?v=${room.study.version}` });
  const larger = () => {
    const dialog = h('dialog', { className: 'larger', aria: { label: 'Growth centres' }, onclose: () => dialog.remove() },
      strip(), h('form', { method: 'dialog' }, h('button', { className: 'main', autofocus: true }, 'Close')));
    document.body.append(dialog);
    dialog.showModal();
  };
  return [strip(), h('button', { type: 'button', id: 'larger', className: 'plain', onclick: larger }, 'Show it larger')];
}

function refusal(film) {
  return h('div', { className: 'refusal' }, h('p', {}, h('b', {}, 'No reading of this film.')), film.refusal.map(r => h('p', {}, r)),
    h('p', {}, 'You can still look at the film, lay your own lines and answer every question. A displaced fragment can make a film look rotated: look for a fracture before blaming the view.'));
}

function messages(room) {
  const refused = room.study.films.filter(f => f.state === 'refused'), broken = room.study.films.filter(f => f.state === 'unreadable'), sides = room.study.films.filter(f => f.sideContradicted);
  const settle = (f, side) => h('button', { type: 'button', onclick: () => room.do(() => api.words(room.id, f.id, { side })) }, side);
  return h('div', { className: 'messages' },
    broken.map(f => h('p', { className: 'message' }, f.message ?? `${f.name} cannot be read.`)),
    room.stepNow?.topic === 'views' || !room.walk ? refused.map(f => h('div', { className: 'message' }, h('b', {}, `${f.name}: `), refusal(f))) : '',
    sides.map(f => h('p', { className: 'message' }, `What is said of the side of ${f.name} contradicts itself. Which side is it? `, settle(f, 'left'), ' ', settle(f, 'right'))),
    room.study.exportStopped ? room.study.conflicts.map(c => h('p', { className: 'message' }, c)) : '');
}

function prompts(room) {
  if (room.study.prompts.length === 0) return '';
  return h('section', { className: 'prompts', aria: { label: 'To think of' } }, h('h3', {}, 'To think of'), h('ul', {}, room.study.prompts.map(p =>
    h('li', {}, p.text, ' ', h('small', {}, p.source), room.walk.concludedAt ? '' : h('button', { type: 'button', className: 'plain', id: `settle-${p.code}`, onclick: () => room.do(() => api.settle(room.id, p.code)) }, 'Dealt with')))));
}

/** The closed read: report, text, files, follow-up. */
export function closedView(room) {
  const text = h('pre', { className: 'report', tabIndex: 0, aria: { label: 'Report as plain text' } });
  if (room.study.reportReady && !room.study.exportStopped) api.reportText(room.id).then(t => { text.textContent = t; }, e => { text.textContent = e.message; });
  const base = `/api/studies/${room.id}`;
  return h('div', { className: 'leaf' },
    h('h2', { id: 'report-title', tabIndex: -1 }, 'The read is closed'),
    messages(room),
    room.study.exportStopped ? '' : h('div', { className: 'way out' },
      h('a', { className: 'button main', href: `${base}/report.html`, target: '_blank', rel: 'noopener' }, 'Open the report'),
      h('button', { type: 'button', id: 'copy', onclick: () => room.copy() }, 'Copy as text ', key('C')),
      h('a', { className: 'button', href: `${base}/export.zip`, download: '' }, 'Files for other programs')),
    followUp(room),
    prompts(room),
    text,
    h('details', {}, h('summary', {}, 'Measurements of all films'), measured(room)),
    h('div', { className: 'way' },
      h('a', { className: 'button', href: `${base}/backup.zip`, download: '' }, 'Everything kept'),
      h('a', { className: 'button', href: `${base}/case.json`, download: 'elbow-case.json' }, 'Case file for a class'),
      h('a', { className: 'button', href: `${base}/lines.json`, download: 'elbow-lines.json' }, 'Your lines, without a name'),
      h('button', { type: 'button', id: 'delete', className: 'plain', onclick: () => remove(room) }, 'Delete this study')));
}

function followUp(room) {
  if (!room.study.followUp) return '';
  if (room.study.outcome) return h('p', { className: 'follow' }, `Follow-up (${room.study.followUp}): ${room.study.outcome}`);
  const input = h('input', { id: 'outcome', maxLength: 2000, autocomplete: 'off' });
  return h('form', { className: 'follow', onsubmit: e => { e.preventDefault(); room.do(() => api.outcome(room.id, input.value)); } },
    h('label', { for: 'outcome' }, `On your follow-up list: ${room.study.followUp}. What became of it?`), input, h('button', { type: 'submit' }, 'Enter'));
}

async function remove(room) {
  if (!confirm('Delete this study with its films and everything noted? It cannot be brought back.')) return;
  await api.remove(room.id);
  location.hash = '';
}
