// The service. Every refusal comes as a problem with one sentence, which is thrown for the page to tell; so is its silence.

export class Refused extends Error {
  constructor(status, problem) {
    super(problem?.detail ?? 'The service does not answer; start it again with "elbowassist serve".');
    this.status = status;
    this.code = problem?.code ?? 'unknown';
  }
}

let under = 0;
/** The reader's own word for themselves, kept with every change; it stays in this browser. */
export const mark = { get: () => localStorage.getItem('reader') ?? '', set: text => localStorage.setItem('reader', text.trim().slice(0, 12)) };
const busy = by => { under += by; document.getElementById('room').setAttribute('aria-busy', String(under > 0)); };

async function call(method, path, body, init = {}) {
  // Looking whether something came is nothing to wait for.
  if (init.quiet) return send(method, path, body, init);
  busy(1);
  try {
    return await send(method, path, body, init);
  } finally {
    busy(-1);
  }
}

async function send(method, path, body, init) {
  const response = await fetch(path, {
    method,
    headers: { ...body === undefined || body instanceof Blob ? {} : { 'Content-Type': 'application/json' }, ...mark.get() ? { Reader: encodeURIComponent(mark.get()) } : {}, ...init.headers },
    body: body === undefined || body instanceof Blob ? body : JSON.stringify(body),
    signal: init.signal,
  }).catch(e => { throw init.signal?.aborted ? e : new Refused(0, null); });
  if (response.status === 304) return response;
  if (!response.ok) throw new Refused(response.status, await response.json().catch(() => null));
  return response;
}

const parsed = async file => {
  try {
    return JSON.parse(await file.text());
  } catch {
    throw new Refused(0, { detail: `${file.name} is not JSON; choose a file that this page saved.` });
  }
};

const json = async (method, path, body, init) => {
  const response = await call(method, path, body, init);
  return response.status === 204 ? null : response.json();
};

export const api = {
  /** The studies kept, or null where nothing has changed since the list that carried the tag. */
  studies: async tag => {
    const response = await call('GET', '/api/studies', undefined, { headers: tag ? { 'If-None-Match': tag } : {}, quiet: !!tag });
    return response.status === 304 ? null : { list: await response.json(), tag: response.headers.get('ETag') };
  },
  demos: () => json('GET', '/api/demos'),
  begin: wanted => json('POST', '/api/studies', wanted),
  study: id => json('GET', `/api/studies/${id}`),
  remove: id => json('DELETE', `/api/studies/${id}`),
  addFilm: (id, file, stated, signal) => json('POST',
    `/api/studies/${id}/films?name=${encodeURIComponent(file.name)}${stated ? `&stated=${encodeURIComponent(stated)}` : ''}`, file, { signal }),
  archive: () => json('GET', '/api/archive'),
  archiveStudies: (date, accession) => json('GET', `/api/archive/studies?${accession ? `accession=${encodeURIComponent(accession)}` : `from=${date}`}`),
  openArchived: uid => json('POST', `/api/archive/studies/${encodeURIComponent(uid)}`),
  fetchFilm: (id, film, signal) => json('POST', `/api/studies/${id}/films/archived`, film, { signal }),
  question: (id, question) => json('POST', `/api/studies/${id}/question`, question),
  words: (id, film, words) => json('POST', `/api/studies/${id}/films/${film}/words`, words),
  answers: (id, answers) => json('POST', `/api/studies/${id}/answers`, answers),
  show: (id, topic) => json('POST', `/api/studies/${id}/shown`, { topic }),
  settle: (id, code) => json('POST', `/api/studies/${id}/prompts/${encodeURIComponent(code)}`, {}),
  close: id => json('POST', `/api/studies/${id}/close`),
  outcome: (id, text) => json('POST', `/api/studies/${id}/outcome`, { text }),
  line: (id, film, line) => json('POST', `/api/studies/${id}/films/${film}/lines`, line),
  compare: (id, film, name) => json('POST', `/api/studies/${id}/films/${film}/lines/${name}/compare`),
  tryPlace: (id, film, landmark, place) => json('POST', `/api/studies/${id}/films/${film}/landmarks/${landmark}/try`, place),
  place: (id, film, landmark, place) => json('PUT', `/api/studies/${id}/films/${film}/landmarks/${landmark}`, place),
  giveBack: (id, film, landmark) => json('DELETE', `/api/studies/${id}/films/${film}/landmarks/${landmark}`),
  enhanced: async (id, film, item) => (await call('POST', `/api/studies/${id}/films/${film}/enhanced/${item}`)).blob(),
  turned: (id, film) => json('GET', `/api/studies/${id}/films/${film}/turned`),
  bringLines: async (id, file) => json('POST', `/api/studies/${id}/lines.json`, await parsed(file)),
  openCase: async file => json('POST', '/api/cases', await parsed(file)),
  reportText: async id => (await call('GET', `/api/studies/${id}/report.txt`)).text(),
  samples: path => samples(path),
  practise: wish => json('POST', '/api/practice', wish),
  practiceAnswer: (id, answer) => json('POST', `/api/practice/${id}/answer`, answer),
  hand: () => json('POST', '/api/practice/hand'),
  handAnswer: (id, line) => json('POST', `/api/practice/hand/${id}/answer`, line),
  practiceResults: () => json('GET', '/api/practice/results'),
  deletePractice: () => json('DELETE', '/api/practice/results'),
};

/** A film's 16-bit samples with their size and the window to begin with. */
async function samples(path) {
  const response = await call('GET', path);
  const number = name => Number(response.headers.get(name));
  return {
    values: new Uint16Array(await response.arrayBuffer()),
    columns: number('Film-Columns'), rows: number('Film-Rows'),
    width: number('Film-Original-Columns'), height: number('Film-Original-Rows'),
    low: number('Film-Low'), high: number('Film-High'),
  };
}
