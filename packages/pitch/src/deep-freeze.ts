/**
 * Freezes a plain value and all it holds, and returns it. Shared parts already frozen are not
 * walked again, so freezing a large catalogue twice costs nothing.
 *
 * @internal
 * @example
 * ```ts
 * import { deepFreeze } from '@reedplate/pitch';
 *
 * Object.isFrozen(deepFreeze({ holes: [{ hole: 1 }] }).holes[0]); // => true
 * ```
 */
export function deepFreeze<Value>(value: Value): Value {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const part of Object.values(value)) deepFreeze(part);
  return value;
}
