import type { Code } from '../diagnostics/catalogue.ts';
import { type Diagnostic, diagnostic, type More } from '../diagnostics/diagnostic.ts';
import type { Place } from '../diagnostics/place.ts';
import type { SureRepair } from '../diagnostics/repair.ts';
import type { Reading } from '../values/reading.ts';

/** Collects diagnostics. */
export interface Reporter {
  readonly diagnostics: Diagnostic[];
  /** What may be written without asking, of faults that are told and of what is read as it was meant. @see toldRepairs */
  readonly repairs: SureRepair[];
  report(code: Code, place: Place, message: string, more?: More): void;
  /** The value, or null with its problem reported at the place. */
  take<T>(reading: Reading<T>, place: Place): T | null;
}

export function reporter(): Reporter {
  const diagnostics: Diagnostic[] = [];
  return {
    diagnostics,
    repairs: [],
    report: (code, place, message, more) => {
      diagnostics.push(diagnostic(code, place, message, more));
    },
    take: (reading, place) => {
      if (reading.ok) return reading.value;
      diagnostics.push(diagnostic(reading.code, place, reading.problem, { hint: reading.hint }));
      return null;
    },
  };
}
