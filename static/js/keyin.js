// Key in: the keyboard alone. The first field, or the first that is wrong, has the focus; Ctrl+Enter saves from anywhere.
function begin() {
  const place = document.querySelector('.key-in [aria-invalid="true"]') ?? document.querySelector('.key-in [data-first]');
  place?.focus();
  place?.select?.();
}
document.addEventListener('htmx:afterSwap', begin);
begin();
