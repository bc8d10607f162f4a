// What is on this device only: shown on every page, since no page can be fetched while the laptop is away.
import { asText, dismiss, kept } from './outbox.js';
import { tapWords } from './tapwords.js';

const show = document.getElementById('entries-show');
const place = document.getElementById('entries');

function element(name, words, attributes = {}) {
  const made = document.createElement(name);
  made.textContent = words;
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

function line(tap) {
  const item = element('li', '');
  const at = new Date(tap.at).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit', second: '2-digit', hourCycle: 'h23' });
  item.append(element('b', tapWords(tap)), element('span', `${at} · ${tap.who}`, { class: 'quiet' }));
  item.append(element('span', tap.reason ? `${tap.state}: ${tap.reason}` : tap.state));
  if (tap.state === 'needs a look') item.append(deleting(tap));
  return item;
}

// It is gone for good then, so it takes two presses.
function deleting(tap) {
  const button = element('button', 'Delete this entry', { id: `delete-${tap.id}` });
  button.addEventListener('click', () => {
    if (button.dataset.sure) { dismiss(tap.id); return; }
    button.dataset.sure = '1';
    button.textContent = 'Told the captain? Press again to delete';
  });
  return button;
}

async function save() {
  const link = element('a', '', { download: `skeinday-entries-${new Date().toISOString().slice(0, 16).replace(':', '')}.json` });
  link.href = URL.createObjectURL(new Blob([await asText()], { type: 'application/json' }));
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

let shown = '';
async function render() {
  const taps = await kept();
  if (taps.length === 0) close();
  const now = JSON.stringify(taps);
  if (place.hidden || now === shown) return;
  shown = now;
  const list = element('ul', '');
  list.append(...taps.map(line));
  const button = element('button', 'Save them to a file');
  button.addEventListener('click', save);
  place.replaceChildren(
    element('p', 'These are kept on this device until the laptop has them; nothing is lost when it sleeps. Leave this page open: without the laptop it cannot be loaded again, though the entries stay and are sent by the next page that opens.'),
    list, button, element('p', 'The laptop takes such a file in on its page Devices.', { class: 'quiet' }));
}

function open(wanted) {
  place.hidden = !wanted;
  shown = '';
  show.setAttribute('aria-expanded', String(wanted));
  show.textContent = wanted ? 'Hide them' : 'Show them';
}
const close = () => open(false);

show.addEventListener('click', () => {
  open(place.hidden);
  render();
});
document.addEventListener('skeinday:entries', render);
