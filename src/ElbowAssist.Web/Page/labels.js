// Names of lines keep their size on the screen, however small the film is; so they are moved where they would leave it or
// lie on the thirds or on the title of the film.

/** Moves the names of an overlay clear of the thirds and of the film's title, and into the pane. */
export function clearLabels(overlay, pane, title) {
  const matrix = overlay.getScreenCTM()?.inverse();
  if (!matrix) return;
  const thirds = [...overlay.querySelectorAll('.thirds *')].map(e => e.getBoundingClientRect()).filter(b => b.width > 0);
  const names = [...overlay.querySelectorAll('text')].filter(t => !t.closest('.thirds'));
  for (const name of names) name.style.translate = '';
  const boxes = names.map(n => n.getBoundingClientRect());
  for (const [i, name] of names.entries()) {
    const box = boxes[i];
    const x = Math.min(0, pane.right - 6 - box.right) + Math.max(0, pane.left + 6 - box.left);
    let y = 0;
    for (const taken of thirds) {
      const meets = box.left + x < taken.right && box.right + x > taken.left && box.top < taken.bottom && box.bottom > taken.top;
      if (meets) y = Math.min(y, taken.top - 3 - box.bottom);
    }
    const meetsTitle = box.left + x < title.right && box.right + x > title.left && box.top + y < title.bottom && box.bottom + y > title.top;
    if (meetsTitle) y = title.bottom + 3 - box.top;
    if (x || y) name.style.translate = `${matrix.a * x + matrix.c * y}px ${matrix.b * x + matrix.d * y}px`;
  }
}
