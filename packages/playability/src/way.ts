/** A way through a line: a choice for each event, and what it costs in thousandths. */
export interface Way {
  readonly choices: readonly number[];
  readonly cost: number;
  /** Cost of the dearest step. */
  readonly worst: number;
}
