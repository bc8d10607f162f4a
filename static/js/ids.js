// Ids of acts are made where the act happens: 128 random bits, as hexadecimal digits.
export function newId() {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((b) => b.toString(16).padStart(2, '0')).join('');
}
