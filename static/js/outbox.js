// No tap is lost: each goes into this device's own database before the screen says so, and stays there until the server
// has said "saved". States: "on this tablet", "needs a look"; what is saved is there no more. Whenever something changed,
// in this page or another of this device, the document hears skeinday:entries.
import { all, change, onlyHere, put, remove } from './taps.js';
import { pace } from './pace.js';
import { say } from './connection.js';
import { newId } from './ids.js';

/** Taps in one request; the server takes no more. */
export const MOST = 50;
const HERE = 'on this tablet';
const STUCK_MS = 2000;
let failures = 0;
let timer = 0;
let sending = null;
let wanted = false; // asked for while one sends
let asking = null;
let askedAt = 0;
let here = []; // what waits, as last counted: a page that goes has no time to look
const others = typeof BroadcastChannel === 'function' ? new BroadcastChannel('skeinday') : null;

const meta = (name) => document.querySelector(`meta[name="${name}"]`)?.content ?? '';

async function count() {
  const taps = await all();
  here = taps.filter((tap) => tap.state === HERE);
  say({ waiting: here.length, look: taps.length - here.length, onlyHere: onlyHere() });
  document.dispatchEvent(new CustomEvent('skeinday:entries'));
}

async function changed() {
  await count();
  others?.postMessage('changed');
}

// Who reads a refusal that comes at once: id to what says it on the page and answers whether it could.
const atOnce = new Map();

/**
 * Keeps a tap and sends it as soon as that is possible; answers its id when it is safe on this device. Where it is refused
 * in its first try and says(reason) answers true, a person has seen so: it is not kept as one that needs a look.
 */
export async function addTap(kind, content, id = newId(), says = null) {
  if (says) atOnce.set(id, says);
  await put({ id, kind, content, at: new Date().toISOString(), device: meta('device'), who: meta('who'), order: Date.now() + Math.random(), state: HERE });
  await changed();
  flush();
  return id;
}

/** Taps that the server refused or has not taken yet. */
export const kept = all;

/** Takes a refused tap away, after a person has looked at it. */
export async function dismiss(id) {
  await remove(id);
  await changed();
}

/** All taps that are only on this device, as text for a file that the laptop takes in. */
export async function asText() {
  const taps = (await all()).map((tap) => ({ ...plain(tap), device: tap.device ?? meta('device') }));
  return JSON.stringify({ holds: 'entries of Skeinday', device: meta('device'), who: meta('who'), taps }, null, 1);
}

// What the record is told of a tap.
const plain = ({ id, kind, at, content }) => ({ id, kind, at, content });

/** Posts JSON with the header that another site's page cannot set. */
export const post = (address, body, more = {}) => fetch(address, {
  method: 'POST', body: JSON.stringify(body), headers: { 'Content-Type': 'application/json', 'X-Skeinday': '1' }, ...more,
});

const postTaps = (taps, more) => post('/taps', { taps: taps.map(plain) }, more);

/** Whoever asks while one sends may have what that one has not seen, or be the timer that it set: it is sent once more. */
export function flush() {
  if (sending) wanted = true;
  sending ??= sendWhileWanted().finally(() => { sending = null; });
  return sending;
}

async function sendWhileWanted() {
  do {
    wanted = false;
    await send();
  } while (wanted);
}

/** The network is back, or the page is seen: a request that hangs is given up, which is harmless, and sent again. */
function hurry() {
  if (asking && performance.now() - askedAt > STUCK_MS) asking.abort();
  Promise.resolve(sending).finally(flush);
}

async function send() {
  clearTimeout(timer);
  try {
    for (let taps = await waiting(); taps.length > 0; taps = await waiting()) {
      if (!(await sendSome(taps.slice(0, MOST)))) { later(); return; }
      failures = 0;
    }
  } catch {
    later();
  } finally {
    await count();
  }
}

const waiting = async () => (await all()).filter((tap) => tap.state === HERE);

async function sendSome(taps) {
  let answer;
  asking = new AbortController();
  askedAt = performance.now();
  const limit = setTimeout(() => asking?.abort(), pace.answer);
  try {
    answer = await postTaps(taps, { signal: asking.signal });
    const told = await answer.json().catch(() => ({}));
    say({ connected: true, ended: answer.status === 401, why: answer.ok || answer.status === 401 ? '' : told.error ?? '' });
    if (!answer.ok || !told.answers) return false;
    return await settleAll(taps, told.answers);
  } catch {
    say({ connected: false, why: '' });
    return false;
  } finally {
    clearTimeout(limit);
    asking = null;
  }
}

async function settleAll(taps, answers) {
  for (const answer of answers) await settle(answer);
  const late = answers.find((one) => one.state === 'later');
  say({ why: late ? late.reason : '' });
  await changed();
  return !late && answers.length === taps.length;
}

async function settle({ id, state, reason }) {
  const says = atOnce.get(id);
  atOnce.delete(id);
  if (state === 'saved' || (state === 'refused' && says?.(reason))) await remove(id);
  else if (state === 'refused') await change(id, (tap) => tap.state === HERE, { state: 'needs a look', reason });
}

// What has waited is no answer at once any more, whoever looks.
function later() {
  atOnce.clear();
  failures = Math.min(failures + 1, 5);
  const most = Math.min(pace.retry, pace.retry / 16 * 2 ** failures);
  timer = setTimeout(() => flush(), most * (0.5 + 0.5 * Math.random()));
}

// The last word of a page that goes: nothing may be waited for. The answer is never read; the next page asks again.
function leave() {
  if (here.length > 0) postTaps(here.slice(0, MOST), { keepalive: true }).catch(() => {});
}

others?.addEventListener('message', count);
window.addEventListener('online', hurry);
window.addEventListener('pageshow', hurry);
document.addEventListener('visibilitychange', () => { if (document.hidden) leave(); else hurry(); });
window.addEventListener('pagehide', leave);
window.addEventListener('beforeunload', (event) => { if (here.length > 0) event.preventDefault(); });
count().then(flush);
