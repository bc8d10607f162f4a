// The next list of the day opens where the last one stood, under the finger that ticked its last item: for a second nothing in
// it can be tapped.
const SETTLES_MS = 1000;
const shown = new WeakMap(); // part to the list that stands in it
let until = 0;

const listOf = (part) => part.querySelector('[data-walk]')?.dataset.walk ?? '';
const ticksOf = (part) => part.querySelector('[data-walk] .ticks');

function fresh(part) {
  const now = listOf(part);
  if (shown.has(part) && now !== shown.get(part) && now !== '') until = performance.now() + SETTLES_MS;
  shown.set(part, now);
  const ticks = ticksOf(part);
  const left = until - performance.now();
  if (!ticks || left <= 0) return;
  const focused = ticks.contains(document.activeElement) ? document.activeElement : null;
  ticks.inert = true;
  setTimeout(() => {
    ticks.inert = false;
    if (focused?.isConnected && document.activeElement === document.body) focused.focus({ preventScroll: true });
  }, left);
}

document.querySelectorAll('[data-topic]').forEach((part) => shown.set(part, listOf(part)));
document.addEventListener('skeinday:fresh', (event) => fresh(event.target));
