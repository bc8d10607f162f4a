// This device's own database of entries. A browser may close it at any time, or refuse it: it is opened again, and what
// cannot be written stays in this page's memory until it can.
const spare = new Map();
let opened = null;

/** Whether something is kept in this page's memory only: it must not be closed. */
export const onlyHere = () => spare.size > 0;

function open() {
  return new Promise((done, fail) => {
    const asked = indexedDB.open('skeinday', 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore('taps', { keyPath: 'id' });
    asked.onsuccess = () => {
      const database = asked.result;
      const forget = () => { opened = null; };
      database.onclose = forget;
      database.onversionchange = () => { database.close(); forget(); };
      done(database);
    };
    asked.onerror = asked.onblocked = () => fail(asked.error ?? new Error('blocked'));
  });
}

async function tryOnce(mode, deed) {
  opened ??= open();
  const database = await opened;
  return new Promise((done, fail) => {
    const work = database.transaction('taps', mode, { durability: 'strict' });
    const asked = deed(work.objectStore('taps'));
    work.oncomplete = () => done(asked?.result);
    work.onerror = work.onabort = () => fail(work.error);
  });
}

async function within(mode, deed) {
  try {
    return await tryOnce(mode, deed);
  } catch {
    opened = null;
    return tryOnce(mode, deed);
  }
}

/** Keeps a tap; never fails. */
export async function put(tap) {
  try {
    await within('readwrite', (taps) => taps.put(tap));
    spare.delete(tap.id);
  } catch {
    spare.set(tap.id, tap);
  }
}

/** Changes a tap that is still there and fit to be changed: a late answer must not bring back what is settled. */
export async function change(id, fits, changed) {
  if (spare.has(id) && fits(spare.get(id))) spare.set(id, { ...spare.get(id), ...changed });
  await within('readwrite', (taps) => {
    const asked = taps.get(id);
    asked.onsuccess = () => { if (asked.result && fits(asked.result)) taps.put({ ...asked.result, ...changed }); };
    return asked;
  }).catch(() => {});
}

export async function remove(id) {
  spare.delete(id);
  await within('readwrite', (taps) => taps.delete(id)).catch(() => {});
}

/** In the order in which they were tapped. */
export async function all() {
  for (const tap of [...spare.values()]) await put(tap);
  const there = await within('readonly', (taps) => taps.getAll()).catch(() => []);
  return [...there, ...spare.values()].sort((a, b) => a.order - b.order);
}
