import { readdirSync } from 'node:fs';
import { ROOT } from './lib/root.mjs';
import { run } from './lib/run.mjs';
import { pnpm, tool } from './lib/tools.mjs';

// A release takes two runs, so that what is published is what is committed: the first turns the
// changesets into versions and changelogs, the second checks everything and publishes.
const pending = readdirSync(`${ROOT}.changeset`).filter((file) => /^(?!README).*\.md$/u.test(file));
if (pending.length > 0) version();
else publish();

function version() {
  tool('changeset', ['version']);
  pnpm(['install', '--lockfile-only']);
  console.log(
    '\nVersions and changelogs are written. Commit them, then run this again to publish.',
  );
}

function publish() {
  if (run('git', ['status', '--porcelain'], { capture: true }) !== '') {
    throw new Error('commit everything before publishing');
  }
  run('npm', ['test']);
  pnpm(['exec', 'changeset', 'publish']);
}
