/** A watch's time as people read it, for example 1:01.2; whole tenths, never rounded up. */
export function format(ms) {
  const tenths = Math.floor(ms / 100);
  return `${Math.floor(tenths / 600)}:${String(Math.floor(tenths / 10) % 60).padStart(2, '0')}.${tenths % 10}`;
}
