// A page that is for paper has a button that prints it; cards are noted in the record first, and what has come is printed.
document.addEventListener('click', (event) => { if (event.target.closest('[data-print]')) window.print(); });
document.addEventListener('htmx:afterSettle', () => {
  const now = document.querySelector('[data-print-now]');
  if (!now) return;
  now.remove();
  window.print();
});
