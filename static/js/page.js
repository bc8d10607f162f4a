// Starts what every page needs; other modules are added by the pages that need them.
import './stream.js';
import './outbox.js';
import './entries.js';
import './countdown.js';
import './held.js';
// Of Winding alone, but so small that a request of its own would cost more.
import './readerwords.js';
import { newId } from './ids.js';

// Our own header on each htmx post: another site's page cannot set it. Each form gets the id of its act when it is
// first sent and keeps it until an answer came, so that pressing again after a lost answer counts once.
document.addEventListener('htmx:configRequest', (event) => {
  event.detail.headers['X-Skeinday-Page'] = '1';
  const form = event.detail.elt.closest('form');
  if (event.detail.verb === 'post' && form) {
    form.dataset.act ??= newId();
    event.detail.parameters.act = form.dataset.act;
  }
});

document.addEventListener('htmx:afterRequest', (event) => {
  const form = event.detail.elt.closest('form');
  if (form && event.detail.xhr.status >= 200 && event.detail.xhr.status < 500) delete form.dataset.act;
});

// No answer, or none yet: said beside the form, which stays as it was and asks again by itself until it has one.
document.addEventListener('htmx:sendError', (event) => unsure(event.detail.elt));
document.addEventListener('htmx:responseError', (event) => {
  if (event.detail.xhr.status >= 500) unsure(event.detail.elt, event.detail.xhr.status === 507);
});

function unsure(element, full = false) {
  const form = element.closest('form');
  if (!form) return;
  let place = form.querySelector('[data-unsure]');
  if (!place) {
    place = document.createElement('p');
    place.dataset.unsure = '';
    place.className = 'wrong';
    place.setAttribute('role', 'alert');
    form.append(place);
  }
  place.textContent = full
    ? 'Not saved: the laptop\u2019s disk is full. Press again when there is space.'
    : 'No answer yet: this is sent again in a few seconds. Press again: it counts once.';
  if (!full) askAgain(element, form);
}

const AGAIN_MS = 5000;
const waiting = new WeakMap();

// The same entry under the same number: its result is never left open, and it counts once.
function askAgain(element, form) {
  clearTimeout(waiting.get(form));
  waiting.set(form, setTimeout(() => {
    if (form.isConnected && element.isConnected && form.dataset.act) {
      window.htmx.trigger(element, element === form ? 'submit' : 'click');
    }
  }, AGAIN_MS));
}
