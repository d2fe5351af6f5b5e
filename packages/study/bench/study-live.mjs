import { appendFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { threadId } from 'node:worker_threads';

// Loaded before the command, in each of its threads (`--import`): now and then collects all garbage,
// and writes down what is live. A worker never comes back to its event loop, so it is asked when it
// takes the time of a batch.

const file = process.env.LIVE_MEMORY;
const EVERY = 200;

if (file !== undefined) {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc');
  const now = performance.now.bind(performance);
  let next = 0;
  performance.now = () => {
    if (now() >= next) {
      collect();
      const { heapUsed, external } = process.memoryUsage();
      appendFileSync(file, `${JSON.stringify({ threadId, heapUsed, external })}\n`);
      next = now() + EVERY;
    }
    return now();
  };
  if (threadId === 0) setInterval(() => performance.now(), EVERY).unref();
}
