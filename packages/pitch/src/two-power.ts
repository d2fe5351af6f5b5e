// Powers and logarithms of two in plain arithmetic. `**`, `Math.log2` and `Math.exp` differ in the last
// bit between JavaScript engines; + - * / do not, so here the same input gives the same bits everywhere.

/** 1/n! from n = 14 down: enough for e^t with |t| up to ln 2 / 2, where what is left is below 1e-19. */
const EXPONENTIAL_SERIES: readonly number[] = /* @__PURE__ */ (() => {
  const terms = [1];
  for (let n = 1; n <= 14; n += 1) terms.unshift((terms[0] as number) / n);
  return terms;
})();

/** 1/n from n = 21 down, odd: enough for the logarithm between √½ and √2, within 1e-18. */
const LOGARITHM_SERIES: readonly number[] = /* @__PURE__ */ (() =>
  [21, 19, 17, 15, 13, 11, 9, 7, 5, 3, 1].map((n) => 1 / n))();

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (const coefficient of coefficients) sum = sum * x + coefficient;
  return sum;
}

/**
 * Two to a power, the same bits on every engine; within 4e-16 of the true value, and exact for whole
 * numbers.
 *
 * @internal
 * @param exponent −1074 to 1023; below it is 0, above endless
 * @example
 * ```ts
 * import { powerOfTwo } from '@reedplate/pitch';
 *
 * powerOfTwo(10); // => 1024
 * powerOfTwo(-1); // => 0.5
 * ```
 */
export function powerOfTwo(exponent: number): number {
  if (exponent > 1024) return Number.POSITIVE_INFINITY;
  if (exponent < -1080) return 0;
  const whole = Math.round(exponent);
  let power = polynomial(EXPONENTIAL_SERIES, (exponent - whole) * Math.LN2);
  for (let n = 0; n < whole; n += 1) power *= 2;
  for (let n = 0; n > whole; n -= 1) power /= 2;
  return power;
}

/**
 * The logarithm to base two, the same bits on every engine; within 4e-16 of the true value or of 1,
 * whichever is more, and exact for whole powers of two.
 *
 * @internal
 * @param value above 0, finite
 * @example
 * ```ts
 * import { logOfTwo } from '@reedplate/pitch';
 *
 * logOfTwo(1024); // => 10
 * logOfTwo(0.5); // => -1
 * ```
 */
export function logOfTwo(value: number): number {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) return Math.log2(value);
  let mantissa = value;
  let whole = 0;
  for (; mantissa >= Math.SQRT2; whole += 1) mantissa /= 2;
  for (; mantissa < Math.SQRT2 / 2; whole -= 1) mantissa *= 2;
  const s = (mantissa - 1) / (mantissa + 1);
  return whole + 2 * s * polynomial(LOGARITHM_SERIES, s * s) * Math.LOG2E;
}
