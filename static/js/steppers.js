// Buttons beside a number: <div data-stepper><input><button data-step="10"></div>. Nothing below 0.
document.addEventListener('click', (event) => {
  const button = event.target.closest('[data-stepper] [data-step]');
  if (!button) return;
  const input = button.closest('[data-stepper]').querySelector('input');
  const now = Number(input.value.replace(',', '.')) || 0;
  input.value = String(Math.max(0, Math.round((now + Number(button.dataset.step)) * 100) / 100));
  input.dispatchEvent(new Event('input', { bubbles: true }));
});
