const NAME = 'play-along ';

/** What the browser keeps of an earlier visit; null where there is nothing, or nothing may be kept. */
export function recall(name: string): string | null {
  try {
    return localStorage.getItem(NAME + name);
  } catch {
    return null;
  }
}

/** Keeps something for the next visit, if it may. */
export function remember(name: string, value: string): void {
  try {
    localStorage.setItem(NAME + name, value);
  } catch {
    // A browser that keeps nothing plays all the same.
  }
}

/** Lets go of what was kept. */
export function forget(name: string): void {
  try {
    localStorage.removeItem(NAME + name);
  } catch {
    // As above.
  }
}
