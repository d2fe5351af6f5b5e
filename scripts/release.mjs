import { run } from './lib/run.mjs';
import { pnpm } from './lib/tools.mjs';

// Checks everything, then publishes the packages whose version is not on the registry yet.
// `npm run changeset version` comes first: it turns the changesets into versions and changelogs.
run('npm', ['test']);
pnpm(['exec', 'changeset', 'publish']);
