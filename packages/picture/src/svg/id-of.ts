const FNV_OFFSET = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

/** A short id made of a text: the same text, the same id. FNV-1a, 32 bits, of its UTF-16 units. */
export function idOf(text: string): string {
  let hash = FNV_OFFSET;
  for (let at = 0; at < text.length; at += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(at), FNV_PRIME);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}
