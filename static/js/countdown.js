// Elements with data-until (server epoch ms) count down, those with data-since count up, by the server's clock.
import { keepTime, serverBound, serverNow } from './clock.js';

/** 1:36, or 1:02:03; a time that has passed has a minus sign. */
export function clockWords(ms) {
  const s = Math.floor(Math.abs(ms) / 1000);
  const two = (v) => String(v).padStart(2, '0');
  const words = s >= 3600 ? `${Math.floor(s / 3600)}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}` : `${Math.floor(s / 60)}:${two(s % 60)}`;
  return ms <= -1000 ? `−${words}` : words;
}

function show() {
  for (const place of document.querySelectorAll('[data-until], [data-since]')) {
    const left = place.dataset.until ? Number(place.dataset.until) - serverNow() : serverNow() - Number(place.dataset.since);
    const words = clockWords(left);
    if (place.textContent !== words) place.textContent = words;
    place.classList.toggle('late', Boolean(place.dataset.until) && left < 0);
    if (place.dataset.atZero && place.dataset.until && left < 0) lookAgain(place, left);
  }
}

// By the server's clock as this device knows it, which may be early: asked again, a few times, until the part is another.
const asked = new WeakMap();
function lookAgain(place, left) {
  const { times, at } = asked.get(place) ?? { times: 0, at: -Infinity };
  if (left > -serverBound() || times >= 5 || performance.now() - at < 1000) return;
  asked.set(place, { times: times + 1, at: performance.now() });
  place.dispatchEvent(new CustomEvent('skeinday:stale', { bubbles: true }));
}

if (document.querySelector('[data-until], [data-since], [data-refetch]')) keepTime();
setInterval(show, 250);
document.addEventListener('skeinday:fresh', show);
show();
