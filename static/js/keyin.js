// Key in: the keyboard alone. The first field, or the first that is wrong, has the focus; Enter saves from anywhere.
function begin() {
  const place = document.querySelector('.key-in [aria-invalid="true"]') ?? document.querySelector('.key-in [data-first]');
  place?.focus();
  place?.select?.();
}
document.addEventListener('htmx:afterSwap', (event) => { if (event.detail.target.id === 'key-in') begin(); });
begin();
