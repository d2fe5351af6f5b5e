import { type ErrorPlace, isReedplateError, ReedplateError } from '@reedplate/pitch';

/**
 * What a reader gives; an error of it says where in the input it stood, too.
 *
 * @throws ReedplateError what `read` throws, with the place added to its `where`
 */
export function readAt<Value>(place: ErrorPlace, read: () => Value): Value {
  try {
    return read();
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    const { code, value, expected, nearest, where } = error;
    throw new ReedplateError({ code, value, expected, nearest, where: { ...where, ...place } });
  }
}

/**
 * What is read from a file; an error says which file.
 *
 * @throws ReedplateError what `read` throws, with `where.file`
 */
export function readInFile<Value>(file: string, read: () => Value): Value {
  return readAt({ file }, read);
}
