// The words about the connection: one place, so that stream and outbox never contradict each other.
const state = { connected: true, waiting: 0, look: 0 };

export function say(change) {
  Object.assign(state, change);
  const place = document.getElementById('connection');
  if (!place) return;
  const words = wordsOf(state);
  if (place.textContent !== words) place.textContent = words;
  place.classList.toggle('away', !state.connected);
}

function wordsOf({ connected, waiting, look }) {
  const parts = [];
  if (!connected) parts.push('Not connected');
  if (waiting > 0) parts.push(`${waiting} ${waiting === 1 ? 'entry' : 'entries'} waiting to be sent`);
  if (look > 0) parts.push(`${look} ${look === 1 ? 'entry needs' : 'entries need'} a look`);
  return parts.join(' – ');
}
