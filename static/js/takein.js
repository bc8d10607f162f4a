// Takes a file of entries in that a device could not send: in batches, each answered for itself.
import { MOST, post } from './outbox.js';

const file = document.getElementById('entries-file');
const said = document.getElementById('entries-taken');

async function read(chosen) {
  let entries;
  try {
    entries = JSON.parse(await chosen.text());
  } catch {
    throw new Error('This file cannot be read: a file of entries is saved on a tablet by “Save them to a file”.');
  }
  if (entries.holds !== 'entries of Skeinday' || !Array.isArray(entries.taps)) {
    throw new Error('This is no file of entries: choose one that a tablet has saved.');
  }
  return entries;
}

async function send(device, taps) {
  const answer = await post('/taps/file', { device, taps }).catch(() => {
    throw new Error('The laptop did not answer: choose the file again, each entry counts once.');
  });
  const told = await answer.json();
  if (!answer.ok) throw new Error(told.error);
  return told.answers;
}

// A tablet that was ended and has joined again has entries of both.
function byDevice(device, taps) {
  const owners = new Map();
  for (const tap of taps) {
    const owner = tap.device ?? device;
    owners.set(owner, [...(owners.get(owner) ?? []), tap]);
  }
  return owners;
}

async function takeIn(chosen) {
  const { device, taps } = await read(chosen);
  const answers = [];
  for (const [owner, own] of byDevice(device, taps)) {
    for (let from = 0; from < own.length; from += MOST) answers.push(...await send(owner, own.slice(from, from + MOST)));
  }
  const saved = answers.filter((one) => one.state === 'saved').length;
  const reasons = [...new Set(answers.filter((one) => one.state !== 'saved').map((one) => one.reason))];
  return `${saved} of ${taps.length} entries are saved.${reasons.length > 0 ? ` Not saved: ${reasons.join('; ')}.` : ''}`;
}

file.addEventListener('change', async () => {
  if (file.files.length === 0) return;
  try {
    said.textContent = await takeIn(file.files[0]);
  } catch (problem) {
    said.textContent = `Nothing more was taken. ${problem.message}`;
  }
  file.value = '';
});
