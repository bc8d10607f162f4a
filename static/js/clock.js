// The server's clock, from exchanges with it (RFC 5905 §8): of the last sixteen the fastest knows best, and is wrong by
// at most half of what it took. Counted on this device's monotonic clock, so that a clock set by hand changes nothing.
const MOST = 16;
const FIRST = 8;
const EVERY_MS = 60000;
const BETWEEN_MS = 120;
const exchanges = [];

const here = () => performance.timeOrigin + performance.now();

const best = () => exchanges.reduce((a, b) => (b.delay < a.delay ? b : a));

/** Epoch ms on the server, as well as it is known. */
export const serverNow = () => here() + (exchanges.length > 0 ? best().offset : 0);

/** By how many ms that may be wrong; Infinity before the first answer. */
export const serverBound = () => (exchanges.length > 0 ? best().delay / 2 : Infinity);

/** Takes one exchange in: t1 sent and t4 received here, t2 received and t3 sent there, all epoch ms. */
export function learn(t1, t2, t3, t4) {
  const one = { offset: (t2 - t1 + t3 - t4) / 2, delay: Math.max(0, t4 - t1 - (t3 - t2)) };
  // Further off than both bounds allow: the server's clock was set, or this device slept. What was known is worth nothing.
  if (exchanges.length > 0 && Math.abs(one.offset - best().offset) > (one.delay + best().delay) / 2 + 1) exchanges.length = 0;
  exchanges.push(one);
  if (exchanges.length > MOST) exchanges.shift();
}

async function exchange() {
  const t1 = here();
  const answer = await fetch('/clock', { cache: 'no-store' });
  if (!answer.ok) return;
  const { receivedMs, sentMs } = await answer.json();
  learn(t1, receivedMs, sentMs, here());
}

/** Several in a row: the fastest of them is close to the best that this network can do. */
export async function exchangeSome(count = FIRST) {
  for (let i = 0; i < count; i++) {
    await exchange().catch(() => {});
    await new Promise((done) => setTimeout(done, BETWEEN_MS));
  }
}

let running = false;
/** Begins, and goes on each minute and whenever the page comes back into sight. */
export function keepTime() {
  if (running) return;
  running = true;
  exchangeSome();
  setInterval(() => { if (!document.hidden) exchange().catch(() => {}); }, EVERY_MS);
  document.addEventListener('visibilitychange', () => { if (!document.hidden) exchangeSome(2); });
}
