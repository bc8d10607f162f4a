// When beats sound: the same rule as winding.Beats on the server. Each is reckoned from the first, so that no error adds up.
export const LEAST = 20;
export const MOST = 180;

/** Seconds after beat 0 at which beat k sounds, one for each crank turn. */
export const beatSeconds = (k, perMinute) => (k * 60) / perMinute;

/** The first beat that is not before this many seconds after beat 0. */
export function beatFrom(seconds, perMinute) {
  let k = Math.max(0, Math.floor((seconds * perMinute) / 60));
  while (beatSeconds(k, perMinute) < seconds) k += 1;
  return k;
}
