import type { Feedback, FeedbackCode } from './score-types.js';

type Details = Partial<Omit<Feedback, 'code'>>;

/** A remark; what is not given is about the whole take. */
export function remark(
  code: FeedbackCode,
  {
    bars = [],
    beat = 1,
    chord = null,
    index = null,
    name = null,
    count = 1,
    by = null,
    otherHarp = null,
    suggestions = [],
  }: Details,
): Feedback {
  return Object.freeze({
    code,
    bars: Object.freeze([...bars]),
    beat,
    chord,
    index,
    name,
    count,
    by,
    otherHarp,
    suggestions: Object.freeze([...suggestions]),
  });
}
