// A page that is for paper has a button that prints it.
for (const button of document.querySelectorAll('[data-print]')) button.addEventListener('click', () => window.print());
