// On the wall nobody scrolls: a table that is longer than the screen is shown page by page, the leaders first.
import { pace } from './pace.js';

let first = 0; // row of the page that is shown

const table = () => document.querySelector('table[data-pages]');
const rows = () => [...table().tBodies[0].rows];

/** Of all rows from the one that is shown as many as end above the foot of the screen, one at least. */
function lay() {
  if (!table()) return 0;
  const all = rows();
  if (first >= all.length) first = 0;
  all.forEach((row) => { row.hidden = false; });
  const words = document.querySelector('[data-page-words]');
  words.textContent = '';
  if (document.documentElement.scrollHeight <= innerHeight || !isWall()) return 0;
  words.textContent = '\u00a0'; // its own line is there when the rows are counted
  all.forEach((row, i) => { row.hidden = i < first; });
  let last = all.length;
  while (last > first + 1 && document.documentElement.scrollHeight > innerHeight) all[--last].hidden = true;
  words.textContent = `Rows ${first + 1} to ${last} of ${all.length}. `;
  return last;
}

// A phone is held in a hand that scrolls.
const isWall = () => innerWidth >= 700;

let next = lay();
setInterval(() => {
  if (!table() || !next) return;
  first = next >= rows().length ? 0 : next;
  next = lay();
}, pace.turn);
document.addEventListener('skeinday:fresh', () => { next = lay(); });
addEventListener('resize', () => { first = 0; next = lay(); });
