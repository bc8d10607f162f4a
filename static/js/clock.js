// The server's clock, from exchanges with it (RFC 5905 §8): of the last sixteen the fastest knows best, and is wrong by
// at most half of what it took. Counted on this device's monotonic clock, so that a clock set by hand changes nothing.
import { pace } from './pace.js';

const MOST = 16;
const FIRST = 8;
const EVERY_MS = 2.4 * pace.watchdog;
const DRIFT = 50e-6; // a tablet's quartz against another's, s per s; RFC 5905 assumes 15e-6 for good ones
const BETWEEN_MS = 120;
const exchanges = [];

const here = () => performance.timeOrigin + performance.now();

// The server tells whole milliseconds, and what was learnt grows old.
const boundOf = (one) => one.delay / 2 + 1 + DRIFT * (performance.now() - one.at);

const best = () => exchanges.reduce((a, b) => (boundOf(b) < boundOf(a) ? b : a));

/** Epoch ms on the server, as well as it is known. */
export const serverNow = () => here() + (exchanges.length > 0 ? best().offset : 0);

/** By how many ms that may be wrong; Infinity before the first answer. */
export const serverBound = () => (exchanges.length > 0 ? boundOf(best()) : Infinity);

/** A press by the server's clock, with by how much that may be wrong: a tap that comes late still says when it was. */
export function serverMoment(stamp = performance.now()) {
  const boundMs = Math.ceil(serverBound());
  return Number.isFinite(boundMs) ? { serverMs: Math.round(serverNow() - (performance.now() - stamp)), boundMs } : {};
}

/** Takes one exchange in: t1 sent and t4 received here, t2 received and t3 sent there, all epoch ms. */
export function learn(t1, t2, t3, t4) {
  const one = { offset: (t2 - t1 + t3 - t4) / 2, delay: Math.max(0, t4 - t1 - (t3 - t2)), at: performance.now() };
  // Further off than both bounds allow: the server's clock was set, or this device slept. What was known is worth nothing.
  if (exchanges.length > 0 && Math.abs(one.offset - best().offset) > boundOf(one) + boundOf(best())) exchanges.length = 0;
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
