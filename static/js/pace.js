// The waits of the server's Pace record, in ms, as the page was told them.
const content = document.querySelector('meta[name="pace"]')?.content ?? '';
const told = Object.fromEntries(content.split(' ').filter(Boolean).map((part) => part.split('=')));
export const pace = {
  watchdog: Number(told.watchdog ?? 25000),
  retry: Number(told.retry ?? 5000),
  undo: Number(told.undo ?? 10000),
};
