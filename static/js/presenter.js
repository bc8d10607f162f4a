// Keys of a keyboard, and those that a presenter's buttons send: forward presses the watch, back marks a contact, the one
// that blanks a screen marks that the building holds the model.
const PRESS = [' ', 'Enter', 'PageDown', 'ArrowRight', 'ArrowDown'];
const TOUCH = ['PageUp', 'ArrowLeft', 'ArrowUp', 't', 'T'];
const HOLD = ['b', 'B', '.', 'h', 'H'];
const BUSY = 'input, select, textarea, button, a, summary';

/** press, touch or hold; null for a key that is not the watch's, or that belongs to what has the focus. */
export function pressedKey(event, own) {
  if (event.ctrlKey || event.altKey || event.metaKey) return null;
  const busy = event.target.closest?.(BUSY);
  if (busy && !own.includes(busy) && (['Enter', ' '].includes(event.key) || busy.matches('input, select, textarea'))) return null;
  if (PRESS.includes(event.key)) return 'press';
  if (TOUCH.includes(event.key)) return 'touch';
  return HOLD.includes(event.key) ? 'hold' : null;
}
