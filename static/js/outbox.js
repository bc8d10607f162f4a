// No tap is lost: each goes into this device's own database before the screen shows it, and stays there
// until the server has said "saved". Events on document: skeinday:tap with detail {id, kind, state, reason, n};
// state is "on this tablet", "Saved" or "needs a look".
import { pace } from './pace.js';
import { say } from './connection.js';
import { newId } from './ids.js';

/** Taps in one request; the server takes no more. */
export const MOST = 50;
let failures = 0;
let timer = 0;
let sending = null;
const store = open();

function open() {
  return new Promise((done, fail) => {
    const asked = indexedDB.open('skeinday', 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore('taps', { keyPath: 'id' });
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
}

async function within(mode, deed) {
  const database = await store;
  return new Promise((done, fail) => {
    const work = database.transaction('taps', mode, { durability: 'strict' });
    const asked = deed(work.objectStore('taps'));
    work.oncomplete = () => done(asked.result);
    work.onerror = work.onabort = () => fail(work.error);
  });
}

const all = async () => (await within('readonly', (taps) => taps.getAll())).sort((a, b) => a.order - b.order);
const waiting = async () => (await all()).filter((tap) => tap.state === 'on this tablet');

function tell(tap) {
  document.dispatchEvent(new CustomEvent('skeinday:tap', { detail: { ...tap } }));
}

async function count() {
  const taps = await all();
  const here = taps.filter((tap) => tap.state === 'on this tablet').length;
  say({ waiting: here, look: taps.length - here });
  unsent = here;
}
let unsent = 0;

const meta = (name) => document.querySelector(`meta[name="${name}"]`)?.content ?? '';

/** Keeps a tap and sends it as soon as that is possible; answers when it is safe on this device. */
export async function addTap(kind, content) {
  const tap = { id: newId(), kind, content, at: new Date().toISOString(), who: meta('who'), order: Date.now() + Math.random(), state: 'on this tablet' };
  await within('readwrite', (taps) => taps.put(tap));
  tell(tap);
  await count();
  flush();
  return tap.id;
}

/** Taps that the server refused or has not taken yet. */
export const kept = all;

/** Takes a refused tap away, after a person has looked at it. */
export async function dismiss(id) {
  await within('readwrite', (taps) => taps.delete(id));
  await count();
}

/** All taps that are only on this device, as text for a file that the laptop takes in. */
export async function asText() {
  const taps = (await all()).map(plain);
  return JSON.stringify({ holds: 'entries of Skeinday', device: meta('device'), who: meta('who'), taps }, null, 1);
}

// What the record is told of a tap.
const plain = ({ id, kind, at, content }) => ({ id, kind, at, content });

/** Posts JSON with the header that another site's page cannot set. */
export const post = (address, body, keepalive = false) => fetch(address, {
  method: 'POST', body: JSON.stringify(body), keepalive, headers: { 'Content-Type': 'application/json', 'X-Skeinday': '1' },
});

export function flush(keepalive = false) {
  sending ??= send(keepalive).finally(() => { sending = null; });
  return sending;
}

async function send(keepalive) {
  clearTimeout(timer);
  for (let taps = await waiting(); taps.length > 0; taps = await waiting()) {
    if (!(await sendSome(taps.slice(0, MOST), keepalive))) { later(); return; }
    failures = 0;
  }
}

async function sendSome(taps, keepalive) {
  try {
    const answer = await post('/taps', { taps: taps.map(plain) }, keepalive);
    if (!answer.ok) return false;
    say({ connected: true });
    const { answers } = await answer.json();
    for (const one of answers) await settle(taps.find((tap) => tap.id === one.id), one);
    await count();
    return answers.every((one) => one.state !== 'later');
  } catch {
    say({ connected: false });
    return false;
  }
}

async function settle(tap, answer) {
  if (!tap || answer.state === 'later') return;
  if (answer.state === 'saved') {
    await within('readwrite', (taps) => taps.delete(tap.id));
    tell({ ...tap, state: 'Saved', n: answer.n });
  } else {
    const refused = { ...tap, state: 'needs a look', reason: answer.reason };
    await within('readwrite', (taps) => taps.put(refused));
    tell(refused);
  }
}

function later() {
  failures = Math.min(failures + 1, 5);
  const most = Math.min(pace.retry, pace.retry / 16 * 2 ** failures);
  timer = setTimeout(() => flush(), most * (0.5 + 0.5 * Math.random()));
}

window.addEventListener('online', () => flush());
window.addEventListener('pageshow', () => flush());
document.addEventListener('visibilitychange', () => flush(document.hidden));
window.addEventListener('pagehide', () => flush(true));
window.addEventListener('beforeunload', (event) => { if (unsent > 0) event.preventDefault(); });
count().then(() => flush());
