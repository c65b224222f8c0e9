const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/**
 * CRC-32 of a text's UTF-8 bytes (ISO 3309, as in ZIP and PNG). It tells a record that was damaged where it lay from a
 * sound one; it is no seal against a person. Computed at once: a page that is being closed cannot wait for a digest.
 */
export function checkSum(text: string): number {
  let sum = 0xffffffff;
  for (const byte of new TextEncoder().encode(text)) sum = TABLE[(sum ^ byte) & 255]! ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}
