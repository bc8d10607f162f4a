// The reader's keys while a motor is wound. Each has one place and one meaning, from before the first crank turn until the
// motor is off the meter. What is shown at once is this device's own count; every tap goes to the outbox with the time since
// the first crank turn, and can be undone for some seconds, which is a tap of its own.
import { addTap, kept } from './outbox.js';
import { newId } from './ids.js';
import { serverMoment, serverNow } from './clock.js';
import { near, picks, place as placeOf, turnsWords, word } from './readerwords.js';
import { pace } from './pace.js';

const AT_ONCE_MS = 60; // a key that bounced
const PULSE_MS = 20;
const SLEEP_MS = 700; // the keys come up under a hand that taps the first crank turn twice
const WORDS = {
  'winding': 'winding at full stretch', 'stepping-in': 'walking in', 'stopped': 'last turn is on: back off now',
  'backed-off': 'holding', 'off-meter': 'Off the meter. Load without hurry; thirty seconds cost almost nothing.',
};
// What each step is called once it is done, and after which phases it can be said.
const STEPS = {
  'stepping-in': ['Walking in', ['winding']],
  'stopped': ['Last turn', ['winding', 'stepping-in']],
  'backed-off': ['Backed off', ['stopped']],
  'off-meter': ['Off the meter', ['stopped', 'backed-off']],
  'again': ['More turns', ['stopped', 'backed-off']],
  'back-on': ['Back on the meter', ['off-meter']],
  'broke': ['Broke', []],
};
const ORDER = ['winding', 'stepping-in', 'stopped', 'backed-off', 'off-meter'];
const turns = { 'winding': true, 'stepping-in': true };

// The last taps, each of which can be undone for some seconds: kept with the wind, so that a reload loses none.
const MOST_UNDONE = 20;
const remember = (taps, tap) => [...(taps ?? []), { ...tap, at: Date.now() }].slice(-MOST_UNDONE);
function lastTap(taps) {
  const tap = (taps ?? []).at(-1);
  return tap && Date.now() - tap.at < pace.undo ? tap : null;
}

function pulse(times = 1) {
  try {
    navigator.vibrate?.(times === 1 ? PULSE_MS : [PULSE_MS, 2 * PULSE_MS, PULSE_MS]);
  } catch { /* a device that cannot */ }
}

function start(place) {
  if (place.dataset.started) return; // a part that came back unchanged is not begun twice
  place.dataset.started = '1';
  const told = place.dataset;
  const key = told.motor ? `skeinday.wind.motor.${told.motor}` : `skeinday.wind.${told.attempt}.${told.of}`;
  const find = (name) => place.querySelector(`[data-${name}]`);
  const number = (text) => (text === '' || text === undefined ? null : Number(text));
  let state = JSON.parse(localStorage.getItem(key) ?? 'null');
  let last = -Infinity, begunHere = -Infinity, setting = false;
  const isUndone = (wind) => localStorage.getItem(`${key}.undone`) === wind;
  if (!told.wind && state && told.done.split(' ').includes(state.wind)) state = null; // wound once more
  // Another device began, or this one lost what it knew: the server's wind is gone on with from here.
  if (told.wind && state?.wind !== told.wind && !isUndone(told.wind)) {
    state = { wind: told.wind, at: Number(told.began), level: Number(told.level), phase: told.phaseNow, phases: Number(told.phases), taps: [], ...(told.inMs ? { inMs: Number(told.inMs) } : {}) };
  }
  const elapsed = () => Math.max(0, Math.round(serverNow() - state.at));
  const keep = (next) => { state = next; if (next) localStorage.setItem(key, JSON.stringify(state)); else localStorage.removeItem(key); show(); };
  const asleep = () => performance.now() - begunHere < SLEEP_MS;
  const turning = () => turns[state.phase] === true;

  function send(kind, content) {
    const id = newId();
    state.taps.push(id);
    addTap(kind, { ...content, ...serverMoment() }, id).then(tellKept);
    return id;
  }
  // What was tapped, with what stood before it.
  const undoable = (id, words) => remember(state.undo, { id, words, level: state.level, phase: state.phase, inMs: state.inMs });

  function begin() {
    if (state) return;
    state = { taps: [] };
    begunHere = performance.now();
    const id = told.motor ? send('wind.alone', alone()) : send('wind.begin', { attempt: told.attempt, motor: told.of, ...(told.station ? { station: told.station } : {}) });
    pulse();
    keep({ ...state, wind: `${id}-0`, at: Math.round(serverNow()), level: 0, phase: 'winding', phases: 0, undo: remember([], { id, words: 'First crank turn', first: true }) });
    setTimeout(show, SLEEP_MS);
    tellOthers('begun');
  }
  // A metronome on the page, if it is on, goes with the wind.
  function alone() {
    const beats = document.querySelector('[data-metronome]')?.dataset.beats;
    return { motor: told.motor, stop: told.stop, ...(told.station ? { station: told.station } : {}), ...(beats ? { beats: Number(beats) } : {}) };
  }
  const tellOthers = (what) => document.dispatchEvent(new CustomEvent('skeinday:wind', { detail: { what } }));
  function mark(step) {
    const now = performance.now();
    if (!state || now - last < AT_ONCE_MS || state.level + step < 0) return;
    last = now;
    const id = send('wind.mark', { wind: state.wind, step, elapsedMs: elapsed() });
    const level = state.level + step;
    pulse(step > 0 && turning() && level === number(told.ceiling) ? 2 : 1);
    keep({ ...state, level, undo: undoable(id, `${step > 0 ? '+1' : '−1'} division`) });
  }
  function setTo(division) {
    if (!state || !Number.isInteger(division) || division < 0) return;
    const id = send('wind.set', { wind: state.wind, division, elapsedMs: elapsed() });
    setting = false;
    pulse();
    keep({ ...state, level: division, undo: undoable(id, `Set to ${division}`) });
  }
  function phase(name) {
    if (!state) return;
    const ms = elapsed();
    const wasOn = !['broke', 'off-meter'].includes(state.phase);
    const id = send('wind.phase', { wind: state.wind, phase: name, elapsedMs: ms });
    const undo = state.phase === 'broke' ? [] : undoable(id, STEPS[name][0]); // after a break people come first
    const next = name === 'back-on' ? 'backed-off' : name !== 'again' ? name : state.inMs ? 'stepping-in' : 'winding';
    setting = setting && wasOn;
    pulse();
    keep({ ...state, undo, phases: (state.phases ?? 0) + 1, phase: next, ...(name === 'stepping-in' ? { inMs: ms } : {}) });
    tellOthers(name);
  }
  function undo() {
    const tap = state && lastTap(state.undo);
    if (!tap) return;
    send('wind.undo', { wind: state.wind, tap: `${tap.id}-0`, elapsedMs: elapsed() });
    pulse();
    if (tap.first) {
      localStorage.setItem(`${key}.undone`, state.wind);
      keep(null);
      return;
    }
    const before = { level: tap.level, phase: tap.phase, inMs: tap.inMs };
    keep({ ...state, ...before, phases: (state.phases ?? 0) + 2, undo: state.undo.slice(0, -1) });
    tellOthers(state.phase === 'winding' || state.phase === 'stepping-in' ? 'again' : state.phase);
  }
  // Crank turns by the pace at full stretch, once walking in began; about, and never more than a tenth beyond the plan.
  function count() {
    const atFull = number(told.atFull), target = number(told.target);
    if (atFull === null || target === null || !state.inMs || state.phase !== 'stepping-in') return null;
    return Math.min(target * 1.1, atFull * elapsed() / state.inMs);
  }
  const set = (element, text) => { if (element.textContent !== text) element.textContent = text; };
  function show() {
    if (!place.isConnected) return;
    const on = state !== null, broke = on && state.phase === 'broke', off = on && state.phase === 'off-meter';
    find('show').hidden = !on;
    find('before').hidden = on;
    find('begin').disabled = on;
    keys(on, broke, off);
    showUndo();
    if (!on) return;
    const per = number(told.perMark), about = count();
    find('readings').hidden = broke || setting;
    const asksAbove = Boolean(told.attempt) && document.querySelector(`#first input[name="attempt"][value="${told.attempt}"]`) !== null;
    find('broken').hidden = !broke || asksAbove;
    find('word').hidden = broke && asksAbove;
    find('setto').hidden = !setting || broke || off;
    set(find('level'), String(state.level));
    set(find('torque'), per === null ? '' : `${(state.level * per).toFixed(2)} ${told.unit}`);
    set(find('phase'), broke ? '' : WORDS[state.phase]);
    set(find('word'), broke ? 'Broke. Hands off. Check people.' : turning() ? word(told, state.level, about) : '');
    set(find('near'), near(told, state, turning()));
    find('near-dot').hidden = !find('near').textContent;
    const at = turning() ? placeOf(told, about) : { label: '', at: '', next: state.phase === 'stopped' && told.backOff ? `back off ${told.backOff} crank turns at least` : '' };
    for (const name of ['label', 'at', 'next']) set(find(`place-${name}`), at[name]);
    set(find('turns'), turning() ? turnsWords(told, about) : '');
  }
  // A key keeps its place and its meaning; what cannot be said now is dashed, what was said has its tick.
  function keys(on, broke, off) {
    find('keys').hidden = !on;
    const awake = on && !asleep(), needle = awake && !broke && !off;
    const atLimit = needle && turning() && number(told.ceiling) !== null && state.level >= number(told.ceiling);
    const due = !needle ? '' : atLimit ? 'stopped' : turning() ? 'up' : state.phase === 'stopped' ? 'down' : 'off-meter';
    for (const name of ['up', 'down', 'set']) find(name).disabled = !needle;
    find('up').classList.toggle('due', due === 'up');
    find('down').classList.toggle('due', due === 'down');
    find('broke').disabled = !awake || broke;
    place.querySelectorAll('[data-say]').forEach((button) => {
      const name = button.dataset.say, [words, from] = STEPS[name];
      const done = on && ORDER.includes(name) && ORDER.indexOf(state.phase) >= ORDER.indexOf(name) && (name !== 'stepping-in' || state.inMs !== undefined);
      button.disabled = !awake || !from.includes(state.phase);
      button.classList.toggle('due', due === name);
      set(button, done ? `✓ ${words}` : words);
    });
    find('drawer').hidden = !on || broke || turning();
  }
  function showUndo() {
    const tap = state && lastTap(state.undo);
    find('undo').hidden = !tap;
    set(find('undo-words'), tap ? tap.words : '');
  }
  function showPicks() {
    setting = !setting;
    const room = find('picks');
    room.replaceChildren(...picks(state.level, told.meterEnds).map((division) => {
      const pick = document.createElement('button');
      pick.type = 'button';
      pick.textContent = String(division);
      pick.dataset.pick = String(division);
      if (division === state.level) pick.setAttribute('aria-pressed', 'true');
      return pick;
    }));
    show();
  }
  async function tellKept() {
    const own = (await kept()).filter((tap) => state?.taps?.includes(tap.id));
    const look = own.find((tap) => tap.reason);
    set(find('kept'), look ? `${look.state}: ${look.reason}` : own.length > 0 ? own[0].state : state?.taps?.length ? 'Saved' : '');
  }
  // The captain, or whoever was nearest, said so first: the keys go on from there, once nothing of this device is on its way.
  async function adopt() {
    if (!state || !told.wind || state.wind !== told.wind || state.phase === told.phaseNow) return;
    const own = (await kept()).filter((tap) => state?.taps?.includes(tap.id));
    if (!state) return;
    // A part that was made before this device's last tap came in knows less than this device does.
    const older = Number(told.phases) < (state.phases ?? 0) && !own.some((tap) => tap.reason);
    if (older || own.some((tap) => !tap.reason) || !place.isConnected || state.phase === told.phaseNow) return;
    keep({ ...state, undo: [], phases: Number(told.phases), phase: told.phaseNow, ...(told.inMs ? { inMs: Number(told.inMs) } : {}) });
    tellOthers(told.phaseNow);
  }
  const press = (button, deed) => {
    button.addEventListener('pointerdown', (event) => {
      if (event.button !== 0 || !event.isPrimary || button.disabled) return;
      event.preventDefault();
      deed();
    });
    button.addEventListener('keydown', (event) => {
      if ((event.key === ' ' || event.key === 'Enter') && !event.repeat && !button.disabled) { event.preventDefault(); deed(); }
    });
  };
  press(find('begin'), begin);
  press(find('up'), () => mark(1));
  press(find('down'), () => mark(-1));
  press(find('set'), showPicks);
  press(find('undo'), undo);
  place.querySelectorAll('[data-say]').forEach((button) => press(button, () => phase(button.dataset.say)));
  press(find('unhurt'), () => phase('off-meter'));
  press(find('whole'), () => phase('again'));
  find('broke').addEventListener('skeinday:held', (event) => { event.preventDefault(); phase('broke'); });
  find('picks').addEventListener('click', (event) => { if (event.target.dataset.pick) setTo(Number(event.target.dataset.pick)); });
  find('type').addEventListener('submit', (event) => {
    event.preventDefault();
    setTo(Number.parseInt(find('typed').value, 10));
    find('typed').value = '';
  });
  document.addEventListener('skeinday:entries', function heard() {
    if (place.isConnected) tellKept(); else document.removeEventListener('skeinday:entries', heard);
  });
  const timer = setInterval(() => { if (place.isConnected) show(); else clearInterval(timer); }, 250);
  show();
  tellKept();
  adopt();
}

document.querySelectorAll('[data-reader]').forEach(start);
document.addEventListener('skeinday:fresh', (event) => event.target.querySelectorAll('[data-reader]').forEach(start));
