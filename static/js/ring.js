// Sound and flash when a wait is over: elements with data-until and data-rings (what it is, so that it rings once). Sound
// needs one tap anywhere first, as browsers ask for; it can be muted, and the button says so.
import { serverNow } from './clock.js';

const RECENT_MS = 15000;
const MUTE = 'skeinday.mute';
const rung = new Set();
let audio = null;

const muted = () => localStorage.getItem(MUTE) === 'yes';

function wake() {
  audio ??= new AudioContext();
  if (audio.state === 'suspended') audio.resume();
  showMute();
}

// Two short notes, three times: a hall is loud.
function beep() {
  if (!audio || muted()) return;
  for (let i = 0; i < 6; i++) {
    const at = audio.currentTime + i * 0.22;
    const tone = audio.createOscillator(), volume = audio.createGain();
    tone.frequency.value = i % 2 ? 660 : 880;
    volume.gain.setValueAtTime(0.25, at);
    volume.gain.exponentialRampToValueAtTime(0.001, at + 0.18);
    tone.connect(volume).connect(audio.destination);
    tone.start(at);
    tone.stop(at + 0.2);
  }
}

function look() {
  for (const place of document.querySelectorAll('[data-rings]')) {
    const over = serverNow() - Number(place.dataset.until);
    place.classList.toggle('over', over >= 0);
    if (over < 0 || rung.has(place.dataset.rings)) continue;
    rung.add(place.dataset.rings);
    if (over < RECENT_MS) beep();
  }
}

function showMute() {
  for (const button of document.querySelectorAll('[data-mute]')) {
    button.textContent = muted() ? 'Sound is off' : audio ? 'Sound is on' : 'Tap for sound';
  }
}

document.addEventListener('pointerdown', wake);
document.addEventListener('keydown', wake);
document.addEventListener('click', (event) => {
  if (!event.target.closest('[data-mute]')) return;
  localStorage.setItem(MUTE, muted() ? 'no' : 'yes');
  showMute();
});
setInterval(look, 250);
document.addEventListener('skeinday:fresh', look);
showMute();
look();
