// What the reader's page says of a wind: figures in, words out. The server says the same to those who follow
// (bench.web.FollowerWords).
const number = (text) => (text === '' || text === undefined ? null : Number(text));

/** "2 to go" until the torque limit, "at the limit"; what is wanted at launch once the last turn is on. */
export function near(told, state, turning) {
  if (!turning) return told.wanted ? `launch at ${told.wanted}` : '';
  const limit = number(told.ceiling);
  if (limit === null) return '';
  return limit - state.level > 0 ? `${limit - state.level} to go` : 'at the limit';
}

/** The one word for the winder while turns go on; empty for none. @param count crank turns, null when not known */
export function word(told, level, count) {
  if (told.stop === 'breaking') return '';
  const limit = number(told.ceiling), target = number(told.target);
  const marksLeft = limit === null ? Infinity : limit - level;
  const turnsLeft = count === null || target === null ? Infinity : target - count;
  if (turnsLeft <= 0) return 'turns limit';
  if (marksLeft <= 0) return 'torque limit';
  return marksLeft <= Number(told.slowMarks) || turnsLeft <= Number(told.slowTurns) ? 'slower' : '';
}

/**
 * Where the winder stands: where somebody saw them, else by the count at the pace so far, which is an estimate.
 * @returns {{label: string, at: string, next: string}} empty texts where there is no plan
 */
export function place(told, count) {
  if (!told.floor) return { label: '', at: '', next: '' };
  const counts = told.floor.split(',').map(Number);
  const seen = number(told.atMark);
  let at = seen ?? 1;
  for (let i = 2; seen === null && i <= counts.length; i++) if (count !== null && counts[i - 1] <= count) at = i;
  const estimated = seen === null && count !== null;
  const next = at < counts.length ? `to mark ${at + 1} by ${counts[at]}` : told.floorWords.split('|')[at - 1];
  return { label: seen === null ? 'stand at' : 'at', at: String(at), next: estimated ? `${next} · estimated` : next };
}

/** "about 180 of 225 turns, estimated"; empty while nothing is known of them. */
export function turnsWords(told, count) {
  if (count === null) return '';
  return `about ${Math.round(count)}${told.target ? ` of ${told.target}` : ''} turns, estimated`;
}

/** Divisions around the one that was counted, which the needle may stand at. */
export function picks(level, ends) {
  const last = number(ends) ?? Infinity;
  const first = Math.max(0, Math.min(level - 2, last - 4));
  return [0, 1, 2, 3, 4].map((i) => first + i).filter((division) => division <= last);
}
