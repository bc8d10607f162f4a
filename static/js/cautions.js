// A caution that stood in full in front of a person for some seconds was met: told once, so that tomorrow's first is in full
// again and today's next is one line.
import { addTap } from './outbox.js';

const LOOKED_MS = 3000;
const told = new Set();
const since = new Map();

setInterval(() => {
  const now = performance.now();
  for (const caution of document.querySelectorAll('[data-met]')) {
    const { met, day } = caution.dataset;
    const box = caution.getBoundingClientRect();
    const seen = !document.hidden && box.bottom > 0 && box.top < window.innerHeight;
    if (!seen || told.has(met)) { since.delete(met); continue; }
    if (!since.has(met)) since.set(met, now);
    if (now - since.get(met) < LOOKED_MS) continue;
    told.add(met);
    addTap('caution.met', { caution: met, day });
  }
}, 500);
