// Starts what every page needs; other modules are added by the pages that need them.
import './stream.js';
import './outbox.js';
import './countdown.js';

// Our own header on each htmx post: another site's page cannot set it.
document.addEventListener('htmx:configRequest', (event) => {
  event.detail.headers['X-Skeinday-Page'] = '1';
});
