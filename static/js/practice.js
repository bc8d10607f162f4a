// The time is what is new of each flight: it has the focus once the page is there, and after each flight.
const begin = () => (document.querySelector('.practice [aria-invalid="true"]') ?? document.getElementById('f-time'))?.focus();
document.addEventListener('htmx:afterSwap', (event) => { if (event.detail.target.id === 'practice') begin(); });
begin();
