/** How a reed gets to its new pitch. */
export type ReedRemedy = 'leave' | 'file-tip' | 'file-base' | 'weight-tip' | 'replace';
