// Elements with data-until (server epoch ms) count down, those with data-since count up, by the server's clock.
let offset = 0;
const exchanges = [];

// RFC 5905 §8; the fastest of the last exchanges knows best.
async function exchange() {
  const t1 = performance.timeOrigin + performance.now();
  const answer = await fetch('/clock', { cache: 'no-store' });
  if (!answer.ok) return;
  const { receivedMs, sentMs } = await answer.json();
  const t4 = performance.timeOrigin + performance.now();
  exchanges.push({ offset: (receivedMs - t1 + sentMs - t4) / 2, delay: t4 - t1 - (sentMs - receivedMs) });
  if (exchanges.length > 8) exchanges.shift();
  offset = exchanges.reduce((best, one) => (one.delay < best.delay ? one : best)).offset;
}

export const serverNow = () => performance.timeOrigin + performance.now() + offset;

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
  }
}

if (document.querySelector('[data-until], [data-since], [data-refetch]')) {
  exchange().catch(() => {});
  setInterval(() => exchange().catch(() => {}), 60000);
}
setInterval(show, 250);
show();
