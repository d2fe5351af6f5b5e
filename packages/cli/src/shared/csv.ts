import { stringify } from 'csv-stringify/sync';

/** Sets flat records as CSV (RFC 4180) with a head line; `\n` ends each line. */
export function setCsv(rows: readonly object[]): string {
  return stringify([...rows], { header: true });
}
