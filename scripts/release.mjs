import { readdirSync } from 'node:fs';
import { ROOT } from './lib/root.mjs';
import { exitCodeOf, run } from './lib/run.mjs';
import { pnpm, tool } from './lib/tools.mjs';

// A release takes two runs, so that what is published is what is committed: the first turns the
// changesets into versions and changelogs, the second checks everything and publishes.
const pending = readdirSync(`${ROOT}.changeset`).filter((file) => /^(?!README).*\.md$/u.test(file));
try {
  if (pending.length > 0) version();
  else publish();
} catch (error) {
  // What failed has said so itself; only its exit code is left to pass on.
  process.exitCode = exitCodeOf(error);
}

function version() {
  tool('changeset', ['version']);
  pnpm(['install', '--lockfile-only']);
  console.log(
    '\nVersions and changelogs are written. Commit them, then run this again to publish.',
  );
}

function publish() {
  if (run('git', ['status', '--porcelain'], { capture: true }) !== '') {
    console.error('Commit everything before publishing.');
    process.exitCode = 1;
    return;
  }
  run('npm', ['test']);
  pnpm(['exec', 'changeset', 'publish', ...process.argv.slice(2)]);
}
