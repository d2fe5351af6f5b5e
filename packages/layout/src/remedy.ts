/** How a reed gets to its new pitch. */
export type Remedy = 'leave' | 'file-tip' | 'file-base' | 'weight-tip' | 'replace';
