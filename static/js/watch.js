// One watch on the Timing page. The element contract:
//   <section data-watch data-attempt="id" data-slot="1">
//     <p data-watch-words></p> <output data-watch-clock></output>
//     <button data-watch-target>Release</button> <button data-watch-undo hidden>Still flying</button>
//   </section>
// Both times are time stamps of the input itself on this device's monotonic clock; the network never enters.
import { addTap, kept as entries } from './outbox.js';
import { newId } from './ids.js';
import { format } from './watchtime.js';
import { serverMoment } from './clock.js';

// By this page's monotonic clock, what another page of this device began.
const here = (state) => ({ ...state, at: state.origin + state.at - performance.timeOrigin, origin: performance.timeOrigin });

const SWALLOW_MS = 300;
const GAP_MS = 100;

function start(place) {
  const { attempt, slot } = place.dataset;
  const key = `skeinday.watch.${attempt}.${slot}`;
  const find = (name) => place.querySelector(`[data-watch-${name}]`);
  const clock = find('clock'), target = find('target'), words = find('words'), undo = find('undo'), kept = find('kept');
  let state = JSON.parse(localStorage.getItem(key) ?? '{"state":"ready"}');
  let last = -Infinity;
  // After a reload the monotonic clock has a new origin: the wall clock joins the two, and says so.
  if (state.state === 'air' && state.origin !== performance.timeOrigin) state = { ...here(state), gap: true };
  const keep = (next) => { state = next; localStorage.setItem(key, JSON.stringify(state)); show(); };
  const gapNow = () => Math.abs(Date.now() - (performance.timeOrigin + performance.now()) - (state.drift ?? 0)) > GAP_MS;

  function press(stamp) {
    if (stamp - last < SWALLOW_MS) return;
    last = stamp;
    if (state.state === 'ready') release(stamp); else if (state.state === 'air') land(stamp);
  }
  function release(stamp) {
    const drift = Date.now() - (performance.timeOrigin + performance.now());
    const tap = newId();
    keep({ state: 'air', at: stamp, origin: performance.timeOrigin, drift, gap: false, taps: [tap] });
    send('watch.release', tap, serverMoment(stamp));
    tick();
  }
  function land(stamp) {
    const ms = Math.round(stamp - state.at);
    const corrects = state.landing;
    const tap = newId();
    keep({ ...state, state: 'down', ms, gap: state.gap || gapNow(), landing: tap, taps: [...(state.taps ?? []), tap] });
    send('watch.landing', tap, { ms, ...serverMoment(stamp), ...(corrects ? { corrects } : {}) });
  }
  function send(kind, tap, more) {
    kept.textContent = '';
    storing = addTap(kind, { attempt, slot: Number(slot), ...more }, tap);
    storing.finally(tellKept);
  }
  function run() {
    if (state.state !== 'air' || !place.isConnected) return;
    clock.textContent = format(performance.now() - state.at);
    tick();
  }
  let frame = 0;
  function tick() {
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(run);
  }
  function show() {
    place.dataset.state = state.state;
    words.textContent = { ready: 'ready', air: 'in the air', down: 'down' }[state.state]
      + (state.gap ? ' – the clock jumped: slept, or was it set?' : '');
    target.textContent = { ready: 'Release', air: 'Down', down: 'Stopped' }[state.state];
    clock.textContent = state.state === 'down' ? format(state.ms) : format(0);
    undo.hidden = state.state !== 'down';
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

  target.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || !event.isPrimary) return;
    event.preventDefault();
    press(event.timeStamp);
  });
  target.addEventListener('keydown', (event) => {
    if ((event.key === ' ' || event.key === 'Enter') && !event.repeat) { event.preventDefault(); press(event.timeStamp); }
  });
  undo.addEventListener('click', () => { keep({ ...state, state: 'air' }); tick(); });
  show();
  tellKept();
  tick();
}

document.querySelectorAll('[data-watch]').forEach(start);
document.addEventListener('skeinday:fresh', (event) => event.target.querySelectorAll('[data-watch]').forEach(start));
