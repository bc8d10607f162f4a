// The words about the connection: one place, so that stream and outbox never contradict each other.
const state = { connected: true, ended: false, full: false, onlyHere: false, why: '', waiting: 0, look: 0 };

export function say(change) {
  Object.assign(state, change);
  const place = document.getElementById('connection');
  if (!place) return;
  const words = wordsOf(state);
  if (place.textContent !== words) place.textContent = words;
  const line = document.getElementById('connection-line');
  line.hidden = words === '';
  line.classList.toggle('away', !state.connected || state.ended || state.onlyHere);
  document.getElementById('entries-show').hidden = state.waiting + state.look === 0;
}

// Who has never joined has no rights either: at the door only a device with entries of its own is told that it was ended.
const isKnown = () => document.querySelector('meta[name="device"]')?.content !== '';
const standsAtTheDoor = (entries) => entries === 0 && (location.pathname.startsWith('/join') || !isKnown());

function wordsOf({ connected, ended, full, onlyHere, why, waiting, look }) {
  const parts = [];
  if (onlyHere) parts.push('This device cannot keep entries: write the time down and leave this page open');
  if (ended && standsAtTheDoor(waiting + look)) return parts.join(' – ');
  if (ended) parts.push('This device was ended: it joins again with a new code');
  else if (!connected) parts.push('Not connected');
  else if (full) parts.push('The laptop has as many pages open as it can serve: this one looks again by itself');
  if (waiting > 0) parts.push(`${waiting} ${waiting === 1 ? 'entry' : 'entries'} waiting to be sent`);
  if (waiting > 0 && why && !ended) parts.push(why);
  if (look > 0) parts.push(`${look} ${look === 1 ? 'entry needs' : 'entries need'} a look`);
  return parts.join(' – ');
}
