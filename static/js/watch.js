// One watch on the Timing page. The element contract:
//   <section data-watch data-attempt="id" data-slot="1">
//     <p data-watch-words></p> <output data-watch-clock></output>
//     <button data-watch-target>Release</button> <button data-watch-undo hidden>Still flying</button>
//   </section>
// Both times are time stamps of the input itself on this device's monotonic clock; the network never enters.
import { addTap } from './outbox.js';
import { format } from './watchtime.js';
import { serverBound, serverNow } from './clock.js';

// The press by the server's clock, with by how much that may be wrong: a tap that comes late still says when it was.
function when(stamp) {
  const boundMs = Math.ceil(serverBound());
  if (!Number.isFinite(boundMs)) return {};
  return { serverMs: Math.round(serverNow() - (performance.now() - stamp)), boundMs };
}

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
    addTap('watch.release', { attempt, slot: Number(slot), ...when(stamp) });
    requestAnimationFrame(run);
  }
  function land(stamp) {
    const ms = Math.round(stamp - state.at);
    const corrects = state.landing;
    keep({ ...state, state: 'down', ms, gap: state.gap || gapNow() });
    addTap('watch.landing', { attempt, slot: Number(slot), ms, ...when(stamp), ...(corrects ? { corrects } : {}) })
      .then((landing) => keep({ ...state, landing }));
  }
  function run() {
    if (state.state !== 'air' || !place.isConnected) return;
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
    kept.textContent = state.kept ?? '';
  }
  // Whether the last tap is only on this device or in the record: the two never look alike.
  const told = (event) => {
    if (!place.isConnected) { document.removeEventListener('skeinday:tap', told); return; }
    if (!event.detail.kind.startsWith('watch.')) return;
    const { state: words, reason } = event.detail;
    keep({ ...state, kept: reason ? `${words}: ${reason}` : words });
  };
  document.addEventListener('skeinday:tap', told);

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
