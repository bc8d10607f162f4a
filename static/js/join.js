// The join token comes in the fragment, which is never sent; it moves into the form and leaves the address.
const token = location.hash.slice(1);
if (token) {
  document.getElementById('token').value = token;
  history.replaceState(null, '', location.pathname);
  askWho();
}

// What waits here was tapped by the one before: it is sent before somebody else takes over. Fetched only then, so that
// nothing stands between the code and the form.
document.addEventListener('htmx:confirm', (event) => {
  if (!event.target.closest?.('#join')) return;
  event.preventDefault();
  import('./outbox.js').then((outbox) => outbox.flush()).catch(() => {}).then(() => event.detail.issueRequest(true));
});

// The crew's names are only for who has the code.
async function askWho() {
  const form = document.getElementById('join');
  if (form.querySelectorAll('#person option').length > 1) return;
  const answer = await fetch('/join/who', {
    method: 'POST', headers: { 'HX-Request': 'true' }, body: new URLSearchParams({ token }),
  });
  form.outerHTML = await answer.text();
  window.htmx?.process(document.getElementById('join'));
}
