// The join token comes in the fragment, which is never sent; it moves into the form and leaves the address.
const token = location.hash.slice(1);
if (token) {
  document.getElementById('token').value = token;
  history.replaceState(null, '', location.pathname);
  askWho({ token });
}
document.addEventListener('change', ({ target }) => {
  const isWhole = target.value.replace(/[\s-]/g, '').length === 6;
  if (target.id === 'code' && isWhole && !document.getElementById('token').value) askWho({ code: target.value });
});

// What waits here was tapped by the one before: it is sent before somebody else takes over. Fetched only then, so that
// nothing stands between the code and the form.
document.addEventListener('htmx:confirm', (event) => {
  if (!event.target.closest?.('[data-joining]')) return;
  event.preventDefault();
  const sent = import('./outbox.js').then((outbox) => outbox.flush()).catch(() => {});
  Promise.race([sent, new Promise((done) => setTimeout(done, 3000))]).then(() => event.detail.issueRequest(true));
});

// The crew's names are only for who has the code.
async function askWho(shown) {
  const form = document.getElementById('join');
  if (form.querySelectorAll('#person option').length > 1) return;
  const answer = await fetch('/join/who', {
    method: 'POST', headers: { 'HX-Request': 'true' }, body: new URLSearchParams(shown),
  });
  if (answer.status !== 200 && answer.status !== 422) return;
  form.outerHTML = await answer.text();
  window.htmx?.process(document.getElementById('join'));
}

// Whether the screen stays on is a setting of the device, so that it is kept on the device; the page Timing asks again.
import { screenStays, sayScreenStays } from './screen.js';
const tickScreen = () => { const box = document.getElementById('screen-stays'); if (box) box.checked = screenStays(); };
document.addEventListener('change', (event) => { if (event.target.id === 'screen-stays') sayScreenStays(event.target.checked); });
tickScreen();

// The number of the first joining stays until an answer has come, over a page that is loaded again: a lost answer, and the
// same device joins again, makes no second one.
const JOINING = 'skeinday-joining';
document.addEventListener('htmx:configRequest', (event) => {
  const form = event.detail.elt.closest('[data-joining]');
  if (!form) return;
  event.detail.parameters.act = localStorage.getItem(JOINING) ?? event.detail.parameters.act;
  localStorage.setItem(JOINING, event.detail.parameters.act);
});
document.addEventListener('htmx:afterRequest', (event) => {
  const { elt, xhr } = event.detail;
  if (elt.closest('[data-joining]') && xhr.status >= 200 && xhr.status < 500) localStorage.removeItem(JOINING);
});
