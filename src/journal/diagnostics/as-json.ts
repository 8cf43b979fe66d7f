import type { Diagnostic } from './diagnostic.ts';

/** Raised when a field is taken away or changes its meaning; new fields do not raise it. */
export const JSON_VERSION = 1;

/**
 * What `check --format json` prints: a plain object for other programs. Lines and columns count from 1,
 * paths are relative to the journal folder.
 *
 * @param found in file order
 * @param notes how many notes were read
 */
export function diagnosticsToJson(found: readonly Diagnostic[], notes: number): object {
  const errors = found.filter((one) => one.severity === 'error').length;
  return {
    version: JSON_VERSION,
    notes,
    errors,
    warnings: found.length - errors,
    diagnostics: found.map(({ place, related, ...rest }) => ({
      ...rest,
      ...place,
      related: related.map((other) => ({ message: other.message, ...other.place })),
    })),
  };
}
