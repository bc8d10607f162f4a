// The join token comes in the fragment, which is never sent; it moves into the form and leaves the address.
const token = location.hash.slice(1);
if (token) {
  document.getElementById('token').value = token;
  history.replaceState(null, '', location.pathname);
}
