// Buttons and small forms that send one tap: <button data-tap="kind" data-motor="…">, <form data-tap="kind">. What stands in
// data- is sent with it; the moment by the server's clock too, so that a tap that comes late still says when it was.
import { addTap, kept } from './outbox.js';
import { newId } from './ids.js';
import { serverMoment, serverNow } from './clock.js';

const SWALLOW_MS = 400;
const sent = new Map(); // tap to the place where its words stand
let refused = null; // the form or key that was refused last, and why
let last = { what: '', at: -Infinity };

const plain = (value) => (value === 'true' ? true : value === 'false' ? false : value);

function content(element) {
  const told = {};
  for (const [name, value] of Object.entries(element.dataset)) {
    if (!['tap', 'gone', 'undoes'].includes(name)) told[name] = plain(value);
  }
  if (element.dataset.undoes) told.tap = element.dataset.undoes; // data-tap is the kind
  if (element instanceof HTMLFormElement) new FormData(element).forEach((value, name) => { told[name] = value; });
  return told;
}

// The order by hand and the impound know no moment of their own.
const TIMED = ['bench.step', 'attempt.take-motor', 'step.tick', 'step.read-aloud', 'step.skip', 'step.undo', 'wind.floor-mark', 'wind.undo'];

function send(element) {
  const kind = element.dataset.tap;
  const told = content(element);
  const what = kind + JSON.stringify(told);
  if (what === last.what && performance.now() - last.at < SWALLOW_MS) return;
  last = { what, at: performance.now() };
  const id = newId();
  const place = placeOf(element);
  sent.set(id, place);
  refused = null;
  if (place) say(place, 'on this tablet');
  const typed = element instanceof HTMLFormElement ? new FormData(element) : null;
  // An item of a list can come too early, for the line comes last: said beside it too, and nothing is left to look at.
  const says = typed || kind === 'step.tick' ? (reason) => sayRefused(id, element, typed, reason) : null;
  addTap(kind, TIMED.includes(kind) ? { ...told, ...serverMoment() } : told, id, says).then(tell);
}

const placeOf = (element) => element.closest('article, .problem, details')?.querySelector('[data-tap-words]') ?? null;

function say(place, words, wrong = false) {
  place.textContent = words;
  place.classList.toggle('wrong', wrong);
}

// The same form or key in a part that came fresh meanwhile.
const same = (element) => (element.isConnected ? element : [...document.querySelectorAll(`${element.localName}[data-tap]`)]
  .find((one) => JSON.stringify(one.dataset) === JSON.stringify(element.dataset)));

/** Says a refusal beside its field or key and puts a value back to be mended; false when nobody can see it there. */
function sayRefused(id, element, typed, reason) {
  const now = same(element);
  const place = now ? placeOf(now) : null;
  if (!place || document.hidden) return false;
  sent.delete(id);
  refused = { form: now, reason };
  say(place, `Not saved: ${reason}`, true);
  offerToInsist(now);
  typed?.forEach((value, name) => {
    const field = now.elements[name];
    if (field && field.value === '') field.value = value;
  });
  return true;
}

// What is unlikely is asked about once: whoever was asked may say that it is so.
function offerToInsist(form) {
  form.querySelector('[data-insist]')?.removeAttribute('hidden');
}

// A fresh part knows nothing of it.
document.addEventListener('skeinday:fresh', () => {
  const now = refused && same(refused.form);
  const place = now ? placeOf(now) : null;
  if (!place) return;
  say(place, `Not saved: ${refused.reason}`, true);
  offerToInsist(now);
});

async function tell() {
  const waiting = await kept();
  for (const [id, place] of sent) {
    const tap = waiting.find((one) => one.id === id);
    const words = tap ? (tap.reason ? `${tap.state}: ${tap.reason}` : tap.state) : 'Saved';
    if (place?.isConnected) say(place, words);
    if (!tap) sent.delete(id);
  }
}

document.addEventListener('click', (event) => {
  const button = event.target.closest('button[data-tap]');
  if (button) send(button);
});
document.addEventListener('submit', (event) => {
  if (!event.target.matches('form[data-tap]')) return;
  event.preventDefault();
  send(event.target);
  event.target.reset();
});
document.addEventListener('skeinday:entries', tell);

// What can be taken back only for some seconds goes when they are over.
setInterval(() => {
  for (const button of document.querySelectorAll('[data-gone]')) {
    if (Number(button.dataset.gone) < serverNow()) button.hidden = true;
  }
}, 500);
