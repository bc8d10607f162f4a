// Keeps the page's parts fresh. A part is an element with data-topic (what it shows; several by comma)
// and data-refetch (the address of its fragment). Nothing but hints comes over the stream.
import { pace, reconnectDelay } from './pace.js';
import { say } from './connection.js';

let source = null;
let heardAt = 0;
let again = 0;
let timer = 0;
const tags = new WeakMap();
const texts = new WeakMap();
const busy = new WeakMap();
const postponed = new Set();

const parts = () => [...document.querySelectorAll('[data-topic][data-refetch]')];
const topicsOf = (part) => part.dataset.topic.split(',');

function connect() {
  if (source || document.hidden || parts().length === 0) return;
  const topics = [...new Set(parts().flatMap(topicsOf))].sort().join(',');
  source = new EventSource(`/live?topics=${encodeURIComponent(topics)}`);
  heardAt = performance.now();
  const heard = (deed) => (event) => {
    heardAt = performance.now();
    again = 0;
    say({ connected: true, full: false });
    deed(event);
  };
  source.addEventListener('resync', heard(resync));
  source.addEventListener('hint', heard((event) => refreshTopics(JSON.parse(event.data).topics)));
  source.addEventListener('here', heard(() => {}));
  source.addEventListener('full', full);
  source.onerror = () => away();
}

function disconnect() {
  source?.close();
  source = null;
}

// The house is full: what is shown is brought up to date, and a place asked for again later.
function full() {
  disconnect();
  say({ connected: true, full: true });
  parts().forEach(refresh);
  clearTimeout(timer);
  timer = setTimeout(connect, reconnectDelay(4));
}

// Spread in time, so that a hall of tablets does not come back in one moment.
function away() {
  disconnect();
  say({ connected: false });
  clearTimeout(timer);
  again = Math.min(again + 1, 4);
  timer = setTimeout(connect, reconnectDelay(again));
  askWhy();
}

// The stream itself never says why it ended; a device that was ended must not wait for ever.
async function askWhy() {
  try {
    const answer = await fetch('/clock', { cache: 'no-store' });
    say({ ended: answer.status === 401 });
  } catch {
    // not connected: said already
  }
}

// A page that connects for the first time is usually as new as it was made; nothing is fetched and swapped for that.
let shown = document.querySelector('meta[name="moment"]')?.content ?? '';
function resync(event) {
  const fresh = shown !== '' && JSON.parse(event.data).moment === shown;
  shown = '';
  if (!fresh) parts().forEach(refresh);
}

function refreshTopics(topics) {
  parts().filter((part) => topicsOf(part).some((topic) => topics.includes(topic))).forEach(refresh);
}

async function refresh(part) {
  if (busy.get(part)) { busy.set(part, 'again'); return; }
  busy.set(part, 'now');
  const done = await fetchInto(part);
  const more = busy.get(part) === 'again';
  busy.delete(part);
  if (more) refresh(part);
  else if (!done) setTimeout(() => { if (part.isConnected) refresh(part); }, reconnectDelay(4));
}

// False when nothing is known of the part: it is asked for again. A request that hangs is given up.
async function fetchInto(part) {
  try {
    const headers = { 'HX-Request': 'true' };
    if (tags.has(part)) headers['If-None-Match'] = tags.get(part);
    const address = part.querySelector('[data-refetch-as]')?.dataset.refetchAs ?? part.dataset.refetch; // what was chosen in it
    const answer = await fetch(address, { headers, cache: 'no-store', signal: AbortSignal.timeout(pace.answer) });
    if (answer.status === 200) swap(part, await answer.text(), answer.headers.get('ETag'));
    if (source?.readyState === EventSource.OPEN) say({ connected: true });
    return answer.status < 500 && answer.status !== 429;
  } catch {
    say({ connected: false });
    return false;
  }
}

// A half-typed entry is worth more than a fresh part: the swap waits until the field is left. So does a press until the
// finger is up: a button that is exchanged under it would never be clicked.
const PRESS_MS = 3000;
let pressed = null;
let pressedAt = 0;
function edited(part) {
  const field = document.activeElement;
  const held = pressed && performance.now() - pressedAt < PRESS_MS; // a finger may leave the window unseen
  return (held && part.contains(pressed)) || (part.contains(field) && changed(field));
}

function changed(field) {
  if (field.tagName === 'SELECT') return [...field.options].some((o, i) => o.selected !== (o.defaultSelected || (i === 0 && !field.querySelector('[selected]'))));
  return (field.tagName === 'INPUT' || field.tagName === 'TEXTAREA') && field.type !== 'hidden' && field.value !== field.defaultValue;
}

function swap(part, html, tag) {
  if (edited(part)) { postponed.add(part); return; }
  if (tag) tags.set(part, tag);
  const text = asParsed(html);
  if (texts.get(part) === text) return;
  texts.set(part, text);
  const focus = focusIn(part);
  const open = [...part.querySelectorAll('details[open]')].map(nameOf);
  const kept = [...part.querySelectorAll('select[id], input[id], textarea[id]')].filter(changed).map((f) => [f.id, f.value]);
  part.innerHTML = html;
  window.htmx?.process(part);
  part.querySelectorAll('details').forEach((d) => { if (open.includes(nameOf(d))) d.open = true; });
  kept.forEach(([id, value]) => choose(document.getElementById(id), value));
  focus?.()?.focus({ preventScroll: true });
  part.dispatchEvent(new CustomEvent('skeinday:fresh', { bubbles: true }));
}

// Which one it is of several that look alike: what its first line says to a reader of the screen.
const nameOf = (details) => `${details.className} ${details.id || (details.querySelector('summary')?.getAttribute('aria-label') ?? '')}`;

// As a browser writes it, so that a part that came with its page can be compared with one that was fetched.
function asParsed(html) {
  const template = document.createElement('template');
  template.innerHTML = html;
  return template.innerHTML;
}

// How to find what has the focus once the part is another: by its id, else what stands in its place and says the same.
function focusIn(part) {
  const at = document.activeElement;
  if (!part.contains(at)) return null;
  if (at.id) return () => document.getElementById(at.id);
  const like = () => [...part.querySelectorAll(at.tagName)];
  const place = like().indexOf(at), words = at.textContent;
  return () => like().find((one) => one.textContent === words) ?? like()[place];
}

// What a person chose or typed stays; what hangs on it (the plan of the chosen motor) is asked for again.
function choose(field, value) {
  if (!field || (field.tagName === 'SELECT' && ![...field.options].some((o) => o.value === value))) return;
  field.value = value;
  field.dispatchEvent(new Event('change', { bubbles: true }));
}

// A form's answer has replaced the part: what was fetched before says nothing any more.
document.addEventListener('htmx:afterSwap', (event) => {
  const part = event.detail.target.closest('[data-refetch]');
  if (!part) return;
  tags.delete(part);
  if (event.detail.target === part) texts.set(part, asParsed(event.detail.xhr.responseText)); else texts.delete(part);
  if (event.detail.target === part) part.dispatchEvent(new CustomEvent('skeinday:fresh', { bubbles: true }));
});
document.addEventListener('skeinday:stale', (event) => {
  const part = event.target.closest('[data-refetch]');
  if (part) refresh(part);
});

const catchUp = () => setTimeout(() => {
  for (const part of [...postponed]) {
    if (!edited(part)) { postponed.delete(part); refresh(part); }
  }
});
document.addEventListener('focusout', catchUp);
document.addEventListener('pointerdown', (event) => {
  pressed = event.target;
  pressedAt = performance.now();
  setTimeout(catchUp, PRESS_MS);
}, true);
for (const up of ['pointerup', 'pointercancel']) document.addEventListener(up, () => { pressed = null; catchUp(); }, true);
document.addEventListener('visibilitychange', () => {
  if (document.hidden) disconnect(); else connect();
});
window.addEventListener('pagehide', disconnect);
window.addEventListener('pageshow', connect);
window.addEventListener('online', connect);
setInterval(() => {
  if (source && performance.now() - heardAt > pace.watchdog) away();
}, Math.max(200, pace.watchdog / 5));
connect();
