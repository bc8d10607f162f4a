// The reader's keys while a motor is wound: one for each mark that the needle crosses. What is shown at once is this
// device's own count of them; every tap goes to the outbox with the time since the first crank turn.
import { addTap, kept } from './outbox.js';
import { newId } from './ids.js';
import { serverMoment, serverNow } from './clock.js';

const AT_ONCE_MS = 60; // a key that bounced
const NEXT = {
  'winding': ['stepping-in', 'Stepping in'], 'stepping-in': ['stopped', 'Stopped'],
  'stopped': ['backed-off', 'Backed off'], 'backed-off': ['off-meter', 'Off the meter'],
  'broke': ['off-meter', 'Everyone unhurt, both ends found'],
};
const WORDS = {
  'winding': 'winding at full stretch', 'stepping-in': 'walking in', 'stopped': 'stopped: back off now',
  'backed-off': 'holding', 'off-meter': 'off the meter: load it, unhurried',
  'broke': 'broke: hands off, look to everyone first',
};

function start(place) {
  if (place.dataset.started) return; // a part that came back unchanged is not begun twice
  place.dataset.started = '1';
  const told = place.dataset;
  const key = told.motor ? `skeinday.wind.motor.${told.motor}` : `skeinday.wind.${told.attempt}.${told.of}`;
  const find = (name) => place.querySelector(`[data-${name}]`);
  const number = (text) => (text === '' || text === undefined ? null : Number(text));
  let state = JSON.parse(localStorage.getItem(key) ?? 'null');
  let last = -Infinity;
  if (!told.wind && state && told.done.split(' ').includes(state.wind)) state = null; // wound once more
  // Another device began, or this one lost what it knew: the server's wind is gone on with from here.
  if (told.wind && state?.wind !== told.wind) {
    state = { wind: told.wind, at: Number(told.began), level: Number(told.level), phase: told.phaseNow, phases: Number(told.phases), taps: [], ...(told.inMs ? { inMs: Number(told.inMs) } : {}) };
  }
  const elapsed = () => Math.max(0, Math.round(serverNow() - state.at));
  const keep = (next) => { state = next; localStorage.setItem(key, JSON.stringify(state)); show(); };

  function send(kind, content) {
    const id = newId();
    state.taps.push(id);
    addTap(kind, { ...content, ...serverMoment() }, id).then(tellKept);
    return id;
  }
  function begin() {
    if (state) return;
    state = { taps: [] };
    const id = told.motor ? send('wind.alone', alone()) : send('wind.begin', { attempt: told.attempt, motor: told.of });
    keep({ ...state, wind: `${id}-0`, at: Math.round(serverNow()), level: 0, phase: 'winding', phases: 0 });
    tellOthers('begun');
  }
  // A metronome on the page, if it is on, goes with the wind.
  function alone() {
    const beats = document.querySelector('[data-metronome]')?.dataset.beats;
    return { motor: told.motor, stop: told.stop, ...(beats ? { beats: Number(beats) } : {}) };
  }
  const tellOthers = (what) => document.dispatchEvent(new CustomEvent('skeinday:wind', { detail: { what } }));
  function mark(step) {
    const now = performance.now();
    if (!state || now - last < AT_ONCE_MS || state.level + step < 0) return;
    last = now;
    send('wind.mark', { wind: state.wind, step, elapsedMs: elapsed() });
    keep({ ...state, level: state.level + step });
  }
  function phase(name) {
    if (!state) return;
    const ms = elapsed();
    send('wind.phase', { wind: state.wind, phase: name, elapsedMs: ms });
    keep({ ...state, phases: (state.phases ?? 0) + 1, phase: name !== 'again' ? name : state.inMs ? 'stepping-in' : 'winding', ...(name === 'stepping-in' ? { inMs: ms } : {}) });
    tellOthers(name);
  }
  // Crank turns by the pace at full stretch, once walking in began; about, and never more than a tenth beyond the plan.
  function turns() {
    const atFull = number(told.atFull), target = number(told.target);
    if (atFull === null || target === null || !state.inMs || state.phase !== 'stepping-in') return null;
    return Math.min(target * 1.1, atFull * elapsed() / state.inMs);
  }
  function word(count) {
    if (told.stop === 'breaking' || (state.phase !== 'winding' && state.phase !== 'stepping-in')) return '';
    const ceiling = number(told.ceiling), target = number(told.target);
    const marksLeft = ceiling === null ? Infinity : ceiling - state.level;
    const turnsLeft = count === null || target === null ? Infinity : target - count;
    if (turnsLeft <= 0) return 'count';
    if (marksLeft <= 0) return 'ceiling';
    return marksLeft <= Number(told.slowMarks) || turnsLeft <= Number(told.slowTurns) ? 'slow down' : '';
  }
  function standAt(count) {
    if (!told.floor || (state.phase !== 'winding' && state.phase !== 'stepping-in')) return '';
    const counts = told.floor.split(',').map(Number), words = told.floorWords.split('|');
    let at = 0;
    for (let i = 1; i < counts.length; i++) if (count !== null && counts[i] <= count) at = i;
    return `mark ${at + 1} of ${counts.length} · ${words[at]}`;
  }
  const toGo = (marks) => `${marks} ${marks === 1 ? 'mark' : 'marks'} to go`;
  // How near the ceiling is while turns go on, and afterwards what is wanted at launch.
  function near() {
    const ceiling = number(told.ceiling);
    if (state.phase === 'winding' || state.phase === 'stepping-in') return ceiling === null ? '' : `ceiling ${told.ceilingWords}, ${toGo(Math.max(0, ceiling - state.level))}`;
    return told.wanted && state.phase === 'backed-off' ? `wanted at launch ${told.wanted}` : '';
  }
  const set = (element, text) => { if (element.textContent !== text) element.textContent = text; };
  function show() {
    if (!place.isConnected) return;
    const on = state !== null;
    find('show').hidden = !on;
    find('begin').hidden = on;
    find('before').hidden = on;
    const offMeter = on && state.phase === 'off-meter', broke = on && state.phase === 'broke';
    const falls = on && (state.phase === 'stopped' || state.phase === 'backed-off');
    // No key moves to another place between two phases: what is not wanted now leaves its place empty, and the large key
    // is the one for the way in which the needle goes.
    for (const name of ['up', 'down']) find(name).hidden = !on || offMeter;
    find('up').classList.toggle('away', broke || state?.phase === 'stopped');
    find('down').classList.toggle('away', broke);
    find('keys').classList.toggle('falls', falls);
    find('up').classList.toggle('target', !falls);
    find('down').classList.toggle('target', falls);
    find('next').hidden = !on || offMeter;
    find('again').hidden = !on || (state.phase !== 'stopped' && !broke);
    find('broke').hidden = !on || offMeter;
    find('broke').classList.toggle('away', broke);
    if (!on) return;
    const count = turns();
    const per = number(told.perMark);
    set(find('torque'), per === null ? `${state.level} marks` : `${(state.level * per).toFixed(2)} ${told.unit}`);
    find('torque').hidden = broke; // then only one thing is to be read
    set(find('phase'), broke ? '' : WORDS[state.phase]);
    set(find('word'), broke ? WORDS.broke : word(count));
    set(find('mark'), state.phase === 'stopped' && told.backOff ? `back off${told.wanted ? ` to ${told.wanted},` : ''} ${told.backOff} crank turns at least` : standAt(count));
    set(find('near'), near());
    set(find('next'), NEXT[state.phase]?.[1] ?? '');
    set(find('again'), broke ? 'Not broken: winding goes on' : 'Not stopped: winding goes on');
  }
  async function tellKept() {
    const own = (await kept()).filter((tap) => state?.taps?.includes(tap.id));
    const look = own.find((tap) => tap.reason);
    set(find('kept'), look ? `${look.state}: ${look.reason}` : own.length > 0 ? own[0].state : state?.taps?.length ? 'Saved' : '');
  }
  // The captain, or whoever was nearest, said so first: the keys go on from there, once nothing of this device is on its way.
  async function adopt() {
    if (!state || !told.wind || state.wind !== told.wind || state.phase === told.phaseNow) return;
    const own = (await kept()).filter((tap) => state.taps?.includes(tap.id));
    // A part that was made before this device's last tap came in knows less than this device does.
    const older = Number(told.phases) < (state.phases ?? 0) && !own.some((tap) => tap.reason);
    if (older || own.some((tap) => !tap.reason) || !place.isConnected || state.phase === told.phaseNow) return;
    keep({ ...state, phases: Number(told.phases), phase: told.phaseNow, ...(told.inMs ? { inMs: Number(told.inMs) } : {}) });
    tellOthers(told.phaseNow);
  }
  const down = (name, deed) => find(name).addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || !event.isPrimary) return;
    event.preventDefault();
    deed();
  });
  const press = (name, deed) => {
    down(name, deed);
    find(name).addEventListener('keydown', (event) => {
      if ((event.key === ' ' || event.key === 'Enter') && !event.repeat) { event.preventDefault(); deed(); }
    });
  };
  press('begin', begin);
  press('up', () => mark(1));
  press('down', () => mark(-1));
  press('next', () => phase(NEXT[state.phase][0]));
  press('again', () => phase('again'));
  press('broke', () => phase('broke'));
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
