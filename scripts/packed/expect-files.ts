import type { Packed } from './pack.js';

/** What every package ships. */
const ALWAYS = ['LICENSE', 'README.md', 'package.json'] as const;

/** What a package may ship besides, by the shape of its path. Nothing else is for strangers' disks. */
const ALLOWED: readonly RegExp[] = [
  /^CHANGELOG\.md$/u,
  /^THIRD-PARTY-LICENSES\.md$/u,
  /^schemas\/[a-z-]+\.json$/u,
  // What tsup makes: the index, a command, a worker, and what they share.
  /^dist\/(?:index|bin|study-worker|[a-z-]+-[A-Z0-9]{8}|chunk-[A-Z0-9]{8})\.(?:js|cjs)(?:\.map)?$/u,
  /^dist\/index\.d\.(?:ts|cts)$/u,
];

/** Says what is wrong with the files of a package; nothing where all is as it should be. */
export function wrongFiles({ name, files, schemas }: Omit<Packed, 'tarball' | 'dir'>): string[] {
  const needed = [
    ...ALWAYS,
    'dist/index.js',
    'dist/index.cjs',
    'dist/index.d.ts',
    'dist/index.d.cts',
    ...schemas.map((file) => `schemas/${file}`),
  ];
  const missing = needed.filter((file) => !files.includes(file));
  const known = (file: string): boolean =>
    ALWAYS.some((each) => each === file) || ALLOWED.some((shape) => shape.test(file));
  const strange = files.filter((file) => !known(file));
  return [
    ...missing.map((file) => `${name} does not ship ${file}`),
    ...strange.map((file) => `${name} ships ${file}, which nobody asked for`),
  ];
}
