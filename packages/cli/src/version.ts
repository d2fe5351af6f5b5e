import manifest from '../package.json' with { type: 'json' };

/** Version of the package, as its manifest has it. */
export const version: string = manifest.version;
