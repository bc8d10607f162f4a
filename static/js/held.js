// A key that must be held for a second, by a finger or by the keyboard: <button data-hold-key="broke">. Once it was, the button
// hears skeinday:held; a button of a form that nobody listens to sends its form. A press by other means (a voice, a switch)
// cannot be held: it asks for a second one instead. A part that is swapped under the finger changes nothing.
export const HOLD_MS = 1000;
const SHORT_MS = 2000;
const AGAIN_MS = 5000; // so long a second press confirms the first

let now = null; // what is held: its name, and the timer
const asked = new WeakMap();

const find = (event) => (event.target instanceof Element ? event.target.closest('[data-hold-key]') : null);
const place = (name) => document.querySelector(`[data-hold-key="${name}"]`);

function begin(button) {
  if (now || button.disabled) return;
  const name = button.dataset.holdKey;
  button.classList.add('holding');
  now = { name, timer: setTimeout(() => done(name), HOLD_MS) };
}

// Let go too early: the key says what it waits for, since a short tap that does nothing looks like a dead key.
function letGo() {
  const button = now && place(now.name);
  end();
  if (!button) return;
  button.classList.add('short');
  setTimeout(() => button.classList.remove('short'), SHORT_MS);
}

function end() {
  if (!now) return;
  clearTimeout(now.timer);
  document.querySelectorAll('[data-hold-key].holding').forEach((button) => button.classList.remove('holding'));
  now = null;
}

function done(name) {
  end();
  const button = place(name);
  if (button && !button.disabled) held(button);
}

function held(button) {
  const taken = !button.dispatchEvent(new CustomEvent('skeinday:held', { bubbles: true, cancelable: true }));
  if (!taken) button.form?.requestSubmit();
}

// No finger and no key: the second press within some seconds is meant.
function pressed(button) {
  if (performance.now() - (asked.get(button) ?? -Infinity) < AGAIN_MS) {
    asked.delete(button);
    held(button);
    return;
  }
  asked.set(button, performance.now());
  const words = button.getAttribute('aria-label');
  button.setAttribute('aria-label', `${button.textContent.trim()}: press once more to confirm`);
  setTimeout(() => { if (words) button.setAttribute('aria-label', words); else button.removeAttribute('aria-label'); }, AGAIN_MS);
}

const isKey = (event) => event.key === ' ' || event.key === 'Enter';

document.addEventListener('pointerdown', (event) => {
  const button = find(event);
  if (!button || event.button !== 0 || !event.isPrimary) return;
  begin(button);
});
document.addEventListener('pointerup', letGo);
document.addEventListener('pointercancel', end);
document.addEventListener('pointerout', (event) => { if (now && find(event) && !event.relatedTarget?.closest?.('[data-hold-key]')) end(); });
document.addEventListener('keydown', (event) => {
  const button = find(event);
  if (!button || !isKey(event)) return;
  event.preventDefault();
  if (!event.repeat) begin(button);
});
document.addEventListener('keyup', (event) => {
  if (!isKey(event)) return;
  if (find(event)) event.preventDefault(); // else the browser would press it
  letGo();
});
window.addEventListener('blur', end);
document.addEventListener('contextmenu', (event) => { if (find(event)) event.preventDefault(); }); // a long press on a phone
document.addEventListener('click', (event) => {
  const button = find(event);
  if (!button) return;
  event.preventDefault();
  event.stopPropagation();
  if (event.detail === 0 && !button.disabled) pressed(button);
}, true);
