// A metronome for practice. Beats are handed to the audio clock ahead of time, so that a busy page does not shift them; it
// starts with the first crank turn and ends with the stop. Off until somebody turns it on.
import { beatFrom, beatSeconds, LEAST, MOST } from './beats.js';

const AHEAD_S = 1; // a page that hangs for less loses no beat
const LOOK_MS = 25;
const LEAD_S = 0.05; // a beat that is asked for at once would be late
const TONE_S = 0.06;
const FLASH_S = 0.12;
const STEP = 5;
const RATE = 'skeinday.beats';
const ENDS = ['stopped', 'broke', 'off-meter'];

function start(place) {
  const find = (name) => place.querySelector(`[data-${name}]`);
  let perMinute = Number(localStorage.getItem(RATE)) || 60;
  let audio = null, on = false, timer = 0, first = null, next = 0, waiting = [];

  function show() {
    const reader = document.querySelector('[data-reader]');
    const winds = first !== null;
    place.hidden = !winds && (!reader || reader.dataset.wind !== '');
    place.querySelectorAll('[data-rates]').forEach((part) => { part.hidden = winds; });
    find('sounds').setAttribute('aria-pressed', String(on));
    find('sounds').textContent = on ? 'Metronome is on' : 'Metronome is off';
    find('rate').textContent = `${perMinute} a minute`;
    find('slower').disabled = perMinute <= LEAST;
    find('faster').disabled = perMinute >= MOST;
    if (on) place.dataset.beats = String(perMinute); else delete place.dataset.beats;
  }
  function turn() {
    on = !on;
    if (on) {
      audio ??= new AudioContext();
      audio.resume();
    } else {
      halt();
    }
    show();
  }
  function change(by) {
    perMinute = Math.min(MOST, Math.max(LEAST, perMinute + by));
    localStorage.setItem(RATE, String(perMinute));
    show();
  }
  function beat(at) {
    const tone = audio.createOscillator(), volume = audio.createGain();
    tone.frequency.value = 1320;
    volume.gain.setValueAtTime(0.3, at);
    volume.gain.exponentialRampToValueAtTime(0.001, at + TONE_S);
    tone.connect(volume).connect(audio.destination);
    tone.start(at);
    tone.stop(at + TONE_S);
    tone.onended = () => { waiting = waiting.filter((one) => one !== tone); };
    waiting.push(tone);
  }
  // What is past by the time it could be asked for is left out: beats in a heap would count turns that nobody made.
  function look() {
    const now = audio.currentTime - first;
    next = Math.max(next, beatFrom(now, perMinute));
    for (; beatSeconds(next, perMinute) <= now + AHEAD_S; next += 1) beat(first + beatSeconds(next, perMinute));
    const last = beatFrom(now, perMinute) - 1;
    find('beat').classList.toggle('now', last >= 0 && now - beatSeconds(last, perMinute) < FLASH_S);
  }
  function run() {
    if (!on || timer) return;
    first ??= audio.currentTime + LEAD_S;
    timer = setInterval(look, LOOK_MS);
    look();
  }
  function halt() {
    clearInterval(timer);
    timer = 0;
    next = 0;
    waiting.forEach((tone) => tone.stop());
    waiting = [];
    find('beat').classList.remove('now');
  }
  document.addEventListener('skeinday:wind', ({ detail: { what } }) => {
    if (what === 'begun' || what === 'again') run();
    if (ENDS.includes(what)) halt();
    if (what === 'off-meter') { first = null; on = false; }
    show();
  });
  document.addEventListener('skeinday:fresh', show);
  find('sounds').addEventListener('click', turn);
  find('slower').addEventListener('click', () => change(-STEP));
  find('faster').addEventListener('click', () => change(STEP));
  show();
}

document.querySelectorAll('[data-metronome]').forEach(start);
