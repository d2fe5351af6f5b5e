import { workspacePackages } from './lib/packages.mjs';
import { packageFacts } from './manifests/facts.js';
import { IMPORT_RULES } from './manifests/import-rules.js';
import { MANIFEST_RULES } from './manifests/manifest-rules.js';
import { workspaceComplaints } from './manifests/workspace-rules.js';

// Holds every package against the rules of the house and names each breach.
const packages = workspacePackages().map(packageFacts);
const complaints = packages.flatMap((facts) =>
  [...MANIFEST_RULES, ...IMPORT_RULES]
    .flatMap((rule) => rule(facts))
    .map((complaint) => `packages/${facts.dir}: ${complaint}`),
);
complaints.push(...workspaceComplaints(packages));

for (const complaint of complaints) console.error(complaint);
console.log(`${packages.length} packages checked, ${complaints.length} breaches`);
process.exitCode = complaints.length === 0 ? 0 : 1;
