// Keeps the page's parts fresh. A part is an element with data-topic (what it shows; several by comma)
// and data-refetch (the address of its fragment). Nothing but hints comes over the stream.
import { pace } from './pace.js';
import { say } from './connection.js';

let source = null;
let heardAt = 0;
let again = 0;
let timer = 0;
const tags = new WeakMap();
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
    say({ connected: true });
    deed(event);
  };
  source.addEventListener('resync', heard(refreshAll));
  source.addEventListener('hint', heard((event) => refreshTopics(JSON.parse(event.data).topics)));
  source.addEventListener('here', heard(() => {}));
  source.addEventListener('full', () => away());
  source.onerror = () => away();
}

function disconnect() {
  source?.close();
  source = null;
}

// Spread in time, so that a hall of tablets does not come back in one moment.
function away() {
  disconnect();
  say({ connected: false });
  clearTimeout(timer);
  again = Math.min(again + 1, 4);
  timer = setTimeout(connect, (0.3 + 0.7 * Math.random()) * pace.retry * again / 4);
}

function refreshAll() { parts().forEach(refresh); }
function refreshTopics(topics) {
  parts().filter((part) => topicsOf(part).some((topic) => topics.includes(topic))).forEach(refresh);
}

async function refresh(part) {
  if (busy.get(part)) { busy.set(part, 'again'); return; }
  busy.set(part, 'now');
  try {
    const headers = { 'HX-Request': 'true' };
    if (tags.has(part)) headers['If-None-Match'] = tags.get(part);
    const answer = await fetch(part.dataset.refetch, { headers, cache: 'no-store' });
    if (answer.status === 200) swap(part, await answer.text(), answer.headers.get('ETag'));
  } catch {
    say({ connected: false });
  }
  const more = busy.get(part) === 'again';
  busy.delete(part);
  if (more) refresh(part);
}

// A half-typed entry is worth more than a fresh part: the swap waits until the field is left.
function edited(part) {
  const field = document.activeElement;
  return part.contains(field) && 'value' in field && field.value !== field.defaultValue && field.tagName !== 'BUTTON';
}

function swap(part, html, tag) {
  if (edited(part)) { postponed.add(part); return; }
  if (tag) tags.set(part, tag);
  if (part.innerHTML === html) return;
  const focus = part.contains(document.activeElement) ? document.activeElement.id : '';
  part.innerHTML = html;
  window.htmx?.process(part);
  if (focus) document.getElementById(focus)?.focus({ preventScroll: true });
  part.dispatchEvent(new CustomEvent('skeinday:fresh', { bubbles: true }));
}

document.addEventListener('focusout', () => setTimeout(() => {
  for (const part of [...postponed]) {
    if (!edited(part)) { postponed.delete(part); refresh(part); }
  }
}));
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
