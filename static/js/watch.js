// One watch on the Timing page; its places are the data-watch- attributes of attempt/_timing.jte. Release and landing are
// time stamps of the input itself on this device's monotonic clock; the network never enters.
import { addTap, kept as entries } from './outbox.js';
import { newId } from './ids.js';
import { format } from './watchtime.js';
import { clockWords } from './countdown.js';
import { serverMoment, serverNow } from './clock.js';
import { screenStays, sayScreenStays } from './screen.js';
import { pressedKey } from './presenter.js';

// By this page's monotonic clock, what another page of this device began.
const here = (state) => ({ ...state, at: state.origin + state.at - performance.timeOrigin, origin: performance.timeOrigin });

const SWALLOW_MS = 300;
const GAP_MS = 100;
const SIDE_MS = 600; // the small keys do not answer the second tap of a double one
const LOOK_MS = 1000;

const apart = () => Date.now() - (performance.timeOrigin + performance.now());

// What a double tap is measured from: it outlives a part that is exchanged between its two taps.
const pressedAt = new Map();

function start(place) {
  const { attempt, slot } = place.dataset;
  const heldMs = Number(place.dataset.held);
  const key = `skeinday.watch.${attempt}.${slot}`;
  const find = (name) => place.querySelector(`[data-watch-${name}]`);
  const clock = find('clock'), target = find('target'), words = find('words'), side = find('side'), kept = find('kept');
  const touched = find('touched'), held = find('held'), contact = find('contact'), contactBack = find('contact-back');
  let state = JSON.parse(localStorage.getItem(key) ?? '{"state":"ready"}');
  const at = pressedAt.get(key) ?? { press: -Infinity, contact: -Infinity, side: -Infinity };
  pressedAt.set(key, at);
  const over = place.dataset.over === 'true';
  const recalled = place.dataset.recalled === 'true';
  // After a reload the monotonic clock has a new origin: the wall clock joins the two, and says so.
  if (state.at != null && state.origin !== performance.timeOrigin) state = { ...here(state), reloaded: true, drift: apart() };
  // Taken over in the air: this device saw no release, and counts from the one that the laptop tells. Only the landing counts.
  const aloft = Number(place.dataset.aloft);
  if (aloft > 0 && state.state === 'ready' && !recalled) {
    state = { ...state, state: 'air', aloft, since: serverNow() - aloft, at: performance.now(), origin: performance.timeOrigin, drift: apart(), gap: 0 };
  }
  const msOf = (stamp) => (state.aloft ? serverNow() - (performance.now() - stamp) - state.aloft : stamp - state.at);
  const keep = (next) => { state = next; localStorage.setItem(key, JSON.stringify(state)); show(); };

  /** The second tap of a double one is no decision; that it was made is kept. */
  function isDouble(stamp, before) {
    const soon = stamp - before < SWALLOW_MS;
    if (soon && state.state !== 'ready') mark('swallowed', Math.max(0, Math.round(msOf(stamp))), stamp);
    return soon;
  }
  function press(stamp) {
    if (isDouble(stamp, Math.max(at.press, at.side))) return;
    at.press = stamp;
    if (state.state === 'ready') release(stamp); else if (state.state === 'air') land(stamp);
  }
  function release(stamp) {
    const tap = newId();
    keep({ ready: state.ready, state: 'air', at: stamp, origin: performance.timeOrigin, drift: apart(), gap: 0, taps: [...(state.taps ?? []), tap] });
    send('watch.release', tap, serverMoment(stamp));
    tick();
  }
  function land(stamp) {
    lookAtClocks();
    const ms = Math.max(0, Math.round(msOf(stamp)));
    const corrects = state.landing;
    const tap = newId();
    const told = { ...(state.gap ? { gapMs: Math.round(state.gap) } : {}), ...(state.reloaded && !state.aloft ? { reloaded: true } : {}), ...(state.aloft ? { partial: true } : {}) };
    keep({ ...state, state: 'down', ms, landing: tap, taps: [...(state.taps ?? []), tap] });
    send('watch.landing', tap, { ms, ...serverMoment(stamp), ...(corrects ? { corrects } : {}), ...told });
  }
  /** One of the other keys. @return the tap's id */
  function mark(what, ms, stamp, about) {
    const tap = newId();
    state = { ...state, taps: [...(state.taps ?? []), tap] };
    localStorage.setItem(key, JSON.stringify(state));
    send('watch.mark', tap, { what, ...(ms == null ? {} : { ms }), ...(about ? { about } : {}), ...serverMoment(stamp) });
    return tap;
  }
  function send(kind, tap, more) {
    kept.textContent = '';
    storing = addTap(kind, { attempt, slot: Number(slot), ...more }, tap);
    storing.finally(tellKept);
  }

  // Contacts, without stopping.
  const flown = (stamp) => Math.max(0, Math.round(msOf(stamp)));
  const mayContact = (stamp) => {
    if (state.state !== 'air' || isDouble(stamp, Math.max(at.press, at.contact))) return false;
    at.contact = stamp;
    return true;
  };
  function touch(stamp) {
    if (!mayContact(stamp)) return;
    const ms = flown(stamp);
    keep({ ...state, contact: { tap: mark('touched', ms, stamp), words: `touched at ${format(ms)}` } });
  }
  function hold(stamp) {
    if (!mayContact(stamp)) return;
    const ms = flown(stamp);
    const free = state.heldAt != null;
    const tap = mark(free ? 'free' : 'held', ms, stamp);
    const since = free ? ` for ${((ms - state.heldAt) / 1000).toFixed(1)} s` : '';
    keep({ ...state, heldAt: free ? null : ms, contact: { tap, words: `caught at ${format(free ? state.heldAt : ms)}${since}`, was: state.heldAt ?? null } });
  }
  function takeBack(stamp) {
    const { tap, was } = state.contact;
    mark('taken-back', flown(stamp), stamp, tap);
    keep({ ...state, heldAt: was ?? null, contact: null });
  }

  // What the small key does: ready before the release, then what takes the last press back.
  function sideKey(stamp) {
    if (stamp - Math.max(at.press, at.side) < SIDE_MS) return;
    at.side = stamp;
    if (recalled || state.state === 'air') {
      mark('not-released', flown(stamp), stamp);
      keep({ state: 'ready', ready: state.ready, taps: state.taps, was: recalled ? null : state });
    } else if (state.state === 'down') {
      mark('still-flying', flown(stamp), stamp, state.landing);
      keep({ ...state, state: 'air' });
      tick();
    } else if (state.was) {
      const { was } = state;
      const tap = newId();
      keep({ ...was, taps: [...(state.taps ?? []), tap] });
      send('watch.release', tap, serverMoment(was.at));
      tick();
    } else {
      mark('ready', null, stamp);
      keep({ ...state, ready: true });
    }
  }

  // Monotonic and wall clock apart: the device slept, or somebody set its clock. They look alike, so that both are flagged.
  let lookedAt = 0;
  function lookAtClocks() {
    const gap = apart() - (state.drift ?? 0);
    if (Math.abs(gap) > GAP_MS && Math.abs(gap) > Math.abs(state.gap ?? 0)) keep({ ...state, gap });
  }
  function run() {
    if (state.state !== 'air' || !place.isConnected) return;
    const ms = msOf(performance.now());
    clock.textContent = format(ms);
    if (performance.now() - lookedAt > LOOK_MS) { lookedAt = performance.now(); lookAtClocks(); }
    if (state.heldAt != null) {
      const since = ms - state.heldAt;
      contact.textContent = heldMs >= 0 && since >= heldMs ? `caught ${heldMs / 1000} s: stop` : `caught for ${Math.floor(since / 1000)} s`;
    }
    tick();
  }
  let frame = 0;
  function tick() {
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(run);
  }
  function sideWords() {
    if (recalled || state.state === 'air') return 'Not released';
    if (state.state === 'down') return 'Still flying';
    return state.was ? 'Released after all' : state.ready ? 'Ready' : 'I am ready';
  }
  function show() {
    const now = state.state;
    place.dataset.state = now;
    const since = state.aloft && now === 'air' ? ` since about ${clockWords(state.since)}: only landing counts` : '';
    words.textContent = (now === 'ready' && state.ready ? 'ready, the captain sees it' : { ready: 'not ready yet', air: `in the air${since}`, down: state.aloft ? 'down: only landing counts' : 'down' }[now])
      + (state.gap ? ' – the clock jumped: slept, or was it set?' : '') + (state.reloaded && now !== 'ready' ? ' – the page was loaded anew' : '');
    target.textContent = { ready: 'Release', air: 'Down', down: 'Stopped' }[now];
    target.disabled = over && now === 'ready';
    if (now !== 'air') clock.textContent = now === 'down' ? format(state.ms) : format(0);
    side.textContent = sideWords();
    side.disabled = over || Boolean(state.aloft && now === 'air');
    side.classList.toggle('done', now === 'ready' && Boolean(state.ready) && !state.was);
    touched.disabled = held.disabled = now !== 'air' || over;
    held.textContent = state.heldAt != null ? 'Free again' : 'Caught';
    contact.textContent = state.contact?.words ?? '';
    contactBack.hidden = now !== 'air' || !state.contact || over;
  }
  // Whether this watch's taps are only on this device or in the record: the two never look alike, and one that needs a
  // look is not covered by a later one that was saved.
  let storing = Promise.resolve();
  async function tellKept() {
    await storing;
    const own = (await entries()).filter((tap) => state.taps?.includes(tap.id));
    const look = own.find((tap) => tap.reason);
    const words = look ? `${look.state}: ${look.reason}` : own.length > 0 ? own[0].state : state.taps ? 'Saved' : '';
    if (kept.textContent !== words) kept.textContent = words;
  }
  const whileHere = (deed) => function heard(event) {
    if (place.isConnected) deed(event); else event.currentTarget.removeEventListener(event.type, heard);
  };
  document.addEventListener('skeinday:entries', whileHere(tellKept));
  // The same watch in another tab of this device.
  window.addEventListener('storage', whileHere((event) => {
    if (event.key !== key || !event.newValue) return;
    state = here(JSON.parse(event.newValue));
    show();
    tellKept();
    tick();
  }));

  const onPress = (element, deed) => element.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || !event.isPrimary || element.disabled) return;
    if (element === target) event.preventDefault();
    deed(event.timeStamp);
  });
  onPress(target, press);
  onPress(touched, touch);
  onPress(held, hold);
  side.addEventListener('click', (event) => sideKey(event.timeStamp));
  contactBack.addEventListener('click', (event) => takeBack(event.timeStamp));
  // The whole page is the key, for a keyboard and for a presenter in the hand; what has the focus and does something of its
  // own keeps its keys.
  document.addEventListener('keydown', whileHere((event) => {
    const pressed = pressedKey(event, [target, touched, held]);
    if (!pressed) return;
    event.preventDefault();
    if (event.repeat) return;
    const own = { touch: touched, hold: held }[pressed];
    if (event.target === touched || own === touched) touch(event.timeStamp);
    else if (event.target === held || own === held) hold(event.timeStamp);
    else press(event.timeStamp);
  }));
  show();
  tellKept();
  tick();
}

/** Asked before the flight, where there is room, until somebody says that it is so. */
function askForScreen(root) {
  root.querySelectorAll('[data-screen-hint]').forEach((hint) => {
    hint.hidden = screenStays();
    hint.querySelector('button').addEventListener('click', () => { sayScreenStays(true); hint.hidden = true; });
  });
}

askForScreen(document);
document.addEventListener('skeinday:fresh', (event) => askForScreen(event.target));
document.querySelectorAll('[data-watch]').forEach(start);
document.addEventListener('skeinday:fresh', (event) => event.target.querySelectorAll('[data-watch]').forEach(start));
