// One watch on the Timing page. The element contract:
//   <section data-watch data-attempt="id" data-slot="1">
//     <p data-watch-words></p> <output data-watch-clock></output>
//     <button data-watch-target>Release</button> <button data-watch-undo hidden>Still flying</button>
//   </section>
// Both times are time stamps of the input itself on this device's monotonic clock; the network never enters.
import { addTap } from './outbox.js';

const SWALLOW_MS = 300;
const GAP_MS = 100;

export function format(ms) {
  const tenths = Math.floor(ms / 100);
  return `${Math.floor(tenths / 600)}:${String(Math.floor(tenths / 10) % 60).padStart(2, '0')}.${tenths % 10}`;
}

function start(place) {
  const { attempt, slot } = place.dataset;
  const key = `skeinday.watch.${attempt}.${slot}`;
  const find = (name) => place.querySelector(`[data-watch-${name}]`);
  const clock = find('clock'), target = find('target'), words = find('words'), undo = find('undo');
  let state = JSON.parse(localStorage.getItem(key) ?? '{"state":"ready"}');
  let last = -Infinity;
  // After a reload the monotonic clock has a new origin: the wall clock joins the two, and says so.
  if (state.state === 'air' && state.origin !== performance.timeOrigin) {
    state = { ...state, at: state.origin + state.at - performance.timeOrigin, origin: performance.timeOrigin, gap: true };
  }
  const keep = (next) => { state = next; localStorage.setItem(key, JSON.stringify(state)); show(); };
  const gapNow = () => Math.abs(Date.now() - (performance.timeOrigin + performance.now()) - (state.drift ?? 0)) > GAP_MS;

  function press(stamp) {
    if (stamp - last < SWALLOW_MS) return;
    last = stamp;
    if (state.state === 'ready') release(stamp); else if (state.state === 'air') land(stamp);
  }
  function release(stamp) {
    const drift = Date.now() - (performance.timeOrigin + performance.now());
    keep({ state: 'air', at: stamp, origin: performance.timeOrigin, drift, gap: false });
    addTap('watch.release', { attempt, slot: Number(slot) });
    requestAnimationFrame(run);
  }
  function land(stamp) {
    const ms = Math.round(stamp - state.at);
    keep({ ...state, state: 'down', ms, gap: state.gap || gapNow() });
    addTap('watch.landing', { attempt, slot: Number(slot), ms });
  }
  function run() {
    if (state.state !== 'air') return;
    clock.textContent = format(performance.now() - state.at);
    requestAnimationFrame(run);
  }
  function show() {
    place.dataset.state = state.state;
    words.textContent = { ready: 'ready', air: 'in the air', down: 'down' }[state.state]
      + (state.gap ? ' – the clock jumped: slept, or was it set?' : '');
    target.textContent = { ready: 'Release', air: 'Down', down: 'Stopped' }[state.state];
    clock.textContent = state.state === 'down' ? format(state.ms) : format(0);
    undo.hidden = state.state !== 'down';
  }

  target.addEventListener('pointerdown', (event) => { event.preventDefault(); press(event.timeStamp); });
  target.addEventListener('keydown', (event) => {
    if ((event.key === ' ' || event.key === 'Enter') && !event.repeat) { event.preventDefault(); press(event.timeStamp); }
  });
  undo.addEventListener('click', () => { keep({ ...state, state: 'air' }); requestAnimationFrame(run); });
  show();
  requestAnimationFrame(run);
}

document.querySelectorAll('[data-watch]').forEach(start);
document.addEventListener('skeinday:fresh', (event) => event.target.querySelectorAll('[data-watch]').forEach(start));
