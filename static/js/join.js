// The join token comes in the fragment, which is never sent; it moves into the form and leaves the address.
const token = location.hash.slice(1);
if (token) {
  document.getElementById('token').value = token;
  history.replaceState(null, '', location.pathname);
}

// What waits here was tapped by the one before: it is sent before somebody else takes over. Fetched only then, so that
// nothing stands between the code and the form.
document.addEventListener('htmx:confirm', (event) => {
  if (!event.target.closest?.('#join')) return;
  event.preventDefault();
  import('./outbox.js').then((outbox) => outbox.flush()).catch(() => {}).then(() => event.detail.issueRequest(true));
});
