// What this device can do, looked at before it joins: cookies, a store of its own, a clock that is about right.
const say = (id, words) => {
  const line = document.getElementById(id);
  line.textContent = words;
  line.hidden = false;
};

say('hello-script', 'Script: well.');
say('hello-cookies', navigator.cookieEnabled
  ? 'Cookies: well.'
  : 'Cookies are off: the laptop would forget this device with each page. Allow them for this address, and use no private window.');

const asked = indexedDB.open('skeinday-hello', 1);
const cannot = () => say('hello-storage', 'This browser keeps nothing (a private window?): entries made while the Wi-Fi is away would be lost with the page. Use a usual window.');
asked.onerror = cannot;
asked.onsuccess = () => {
  asked.result.close();
  indexedDB.deleteDatabase('skeinday-hello');
  say('hello-storage', 'Storage: well.');
};

const MINUTE_MS = 60000;
const answer = await fetch(location.pathname, { method: 'HEAD', cache: 'no-store' });
const apart = Math.abs(Date.now() - Date.parse(answer.headers.get('Date')));
say('hello-clock', apart < 2 * MINUTE_MS
  ? 'Clock: as the laptop’s.'
  : `This device’s clock and the laptop’s are ${Math.round(apart / MINUTE_MS)} min apart: times are right all the same, but set it.`);
