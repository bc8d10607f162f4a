// Whether somebody has set this device's screen to stay on. A page on plain http can neither see nor set it.
const KEY = 'skeinday.screen-stays';

export const screenStays = () => localStorage.getItem(KEY) === 'yes';

export const sayScreenStays = (stays) => localStorage.setItem(KEY, stays ? 'yes' : 'no');
