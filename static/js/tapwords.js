// What each kind of tap is called where a person reads it; the record's own names never reach the page.
import { format } from './watchtime.js';

const NAMES = {
  'watch.release': 'Release',
  'watch.landing': 'Landing',
  'watch.mark': 'A press of the watch',
  'bench.step': 'A step on the bench',
  'bench.undo': 'A step on the bench taken back',
  'bench.place': 'A place in the order of the bench',
  'bench.impound': 'A motor handed in or given back',
  'wind.begin': 'Begin of winding',
  'wind.alone': 'Begin of winding on the bench',
  'wind.mark': 'A mark of the torque meter',
  'wind.phase': 'A step of winding',
  'wind.leave-out': 'A mark of the torque meter left out',
  'wind.confirm': 'A mark of the torque meter confirmed',
  'wind.set': 'The torque meter as it was read',
  'wind.floor-mark': 'The winder at a floor mark',
  'wind.undo': 'A tap of winding undone',
  'station.output': 'Which way the hook turns for the crank',
  'wind.take-over': 'Reading taken over by this device',
  'attempt.take-motor': 'Another motor for the attempt',
  'attempt.station': 'Another winding place for the attempt',
  'step.tick': 'A tick on a list',
  'step.read-aloud': 'A list read aloud',
  'step.skip': 'An item of a list left out',
  'step.undo': 'A tick on a list taken back',
  'caution.met': 'A caution that was read',
  'clock.slept': 'What happened to the clock',
};

/** For example "Landing after 1:01.2, watch 1", or "A tick on a list: 8 N". */
export function tapWords({ kind, content }) {
  const watch = content.slot ? `, watch ${content.slot}` : '';
  if (kind === 'watch.landing') return `Landing after ${format(content.ms)}${watch}`;
  if (kind === 'watch.mark' && content.what) return `${NAMES[kind]}: ${content.what.replaceAll('-', ' ')}${watch}`;
  const typed = content.answer ? `: ${content.answer}` : '';
  return `${NAMES[kind] ?? 'An entry'}${typed}${watch}`;
}
