import { fileURLToPath } from 'node:url';

/** The folder of the workspace, with a closing slash. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));
