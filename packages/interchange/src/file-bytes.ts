/**
 * The bytes of a file that was written. TypeScript before 5.7 and after takes them for a `Blob`, a
 * `Response` or the body of `fetch`.
 */
export type FileBytes = Uint8Array & { readonly buffer: ArrayBuffer };

/** A file to be read: its bytes in any view or buffer, as `fetch` and file inputs give them, or its text. */
export type FileInput = string | Uint8Array | ArrayBuffer;

/** The bytes of a file to be read; `undefined` for text and what is no bytes. */
export function bytesOf(input: unknown): Uint8Array | undefined {
  if (input instanceof Uint8Array) return input;
  if (ArrayBuffer.isView(input)) {
    return new Uint8Array(input.buffer, input.byteOffset, input.byteLength);
  }
  return isBuffer(input) ? new Uint8Array(input) : undefined;
}

/** Told by its tag, since a buffer of another window or worker is of another class. */
function isBuffer(input: unknown): input is ArrayBuffer {
  return Object.prototype.toString.call(input) === '[object ArrayBuffer]';
}
