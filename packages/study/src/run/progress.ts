/** Shows how far a study has come. */
export interface Progress {
  readonly update: (bytes: number, tunes: number) => void;
  readonly stop: () => void;
}

const NONE: Progress = { update: () => {}, stop: () => {} };

/**
 * A bar on standard error where that is a terminal; nothing elsewhere, so that logs stay clean.
 *
 * @param total bytes of the input; 0 where they are not known, and then there is no bar
 */
export async function showProgress(total: number): Promise<Progress> {
  if (process.stderr.isTTY !== true || total === 0) return NONE;
  const { default: cliProgress } = await import('cli-progress');
  const bar = new cliProgress.SingleBar({
    stream: process.stderr,
    format: '[{bar}] {percentage} %, {tunes} tunes, {eta_formatted} left',
    hideCursor: true,
  });
  bar.start(total, 0, { tunes: 0 });
  return {
    update: (bytes, tunes) => bar.update(Math.min(bytes, total), { tunes }),
    stop: () => bar.stop(),
  };
}
