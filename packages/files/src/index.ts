/**
 * Files on a disk: read within bounds, written, and refused in words.
 *
 * @packageDocumentation
 */

// Reading
export { listFolder } from './list-folder.js';
export { openFile, systemCode, systemReason, unreadable } from './open-file.js';
// Where an error stood
export { readAt, readInFile } from './read-at.js';
export { LARGEST_FILE, readBytes, readChunk, readText, requireText } from './read-text.js';
// Writing
export { unwritable, whyUnwritten } from './unwritable.js';
export { writeBytes } from './write-bytes.js';
export { writeFolder } from './write-folder.js';
export { writeAll } from './write-whole.js';
