// The waits of the server's Pace record, in ms, as the page was told them.
const content = document.querySelector('meta[name="pace"]')?.content ?? '';
const told = Object.fromEntries(content.split(' ').filter(Boolean).map((part) => part.split('=')));
/**
 * How long a page waits before it connects again, in ms: longer each time up to the fourth, and never two pages of a hall
 * at the same moment.
 */
export const reconnectDelay = (again) => (0.3 + 0.7 * Math.random()) * pace.retry * Math.min(again, 4) / 4;

export const pace = {
  watchdog: Number(told.watchdog ?? 25000),
  retry: Number(told.retry ?? 5000),
  undo: Number(told.undo ?? 10000),
  answer: Number(told.answer ?? 12000),
  turn: Number(told.turn ?? 9000),
};
