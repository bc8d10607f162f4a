// Elements with data-until (server epoch ms) count down, those with data-since count up, by the server's clock.
import { keepTime, serverNow } from './clock.js';

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
    if (place.dataset.atZero && place.dataset.until && left < 0) {
      delete place.dataset.atZero;
      place.dispatchEvent(new CustomEvent('skeinday:stale', { bubbles: true }));
    }
  }
}

if (document.querySelector('[data-until], [data-since], [data-refetch]')) keepTime();
setInterval(show, 250);
document.addEventListener('skeinday:fresh', show);
show();
