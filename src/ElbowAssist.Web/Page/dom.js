// Small means to build the page: elements without markup in strings, so that no text of a file can become markup.

/** Makes an element. Properties beginning with "on" are listeners; "data", "aria" hold maps; null children are left out. */
export function h(tag, properties = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(properties ?? {})) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith('on')) element.addEventListener(name.slice(2), value);
    else if (name === 'data') Object.assign(element.dataset, value);
    else if (name === 'aria') for (const [k, v] of Object.entries(value)) { if (v !== null && v !== undefined) element.setAttribute(`aria-${k}`, v); }
    else if (name in element && typeof value !== 'string') element[name] = value;
    else element.setAttribute(name === 'className' ? 'class' : name, value === true ? '' : value);
  }
  element.append(...children.flat(3).filter(c => c !== null && c !== undefined && c !== false));
  return element;
}

/** Makes an SVG element. */
export function s(tag, attributes = {}) {
  const element = document.createElementNS('http://www.w3.org/2000/svg', tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  return element;
}

/** Parses an SVG document of the service; nothing in it can run. */
export function parseSvg(text) {
  const root = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  return root.localName === 'svg' ? [...root.querySelectorAll(':scope > g')].map(g => document.importNode(g, true)) : [];
}

/** A key cap. */
export const key = label => h('kbd', { aria: { hidden: 'true' } }, label);

/** Tells the reader something in the line at the foot of the page, which screen readers speak. */
export function tell(text) {
  document.getElementById('told').textContent = text;
}
