/**
 * Files on a disk: read within bounds, written, and refused in words.
 *
 * @packageDocumentation
 */

// Reading
export { openFile, systemReason, unreadable } from './open-file.js';
// Where an error stood
export { readAt, readInFile } from './read-at.js';
export { LARGEST_FILE, readBytes, readText } from './read-text.js';
// Writing
export { unwritable } from './unwritable.js';
export { writeBytes } from './write-bytes.js';
export { writeFolder } from './write-folder.js';
export { writeAll } from './write-whole.js';
