import { CATALOGUE, type Code } from './catalogue.ts';
import { asQuestion, didYouMean, likeliest, nearest } from './nearest.ts';
import type { Place } from './place.ts';

export type Severity = 'error' | 'warning';

/** Another place that belongs to the same problem: the first of two that contradict each other. */
export interface Related {
  readonly place: Place;
  readonly message: string;
}

/** What names in a journal name. */
export type Sort = 'part' | 'position' | 'person' | 'subsystem' | 'milestone' | 'consumable' | 'store' | 'item' | 'bag' | 'session';

/** A name that nothing in the journal has, where one of these sorts was asked for. */
export interface Unknown {
  readonly sorts: readonly Sort[];
  readonly name: string;
  /** The known name that was most likely meant. */
  readonly nearest: string | null;
}

/** One problem of one file. The shape is the same for every stage and every output. */
export interface Diagnostic {
  readonly code: Code;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  /** The repair, said as something to do. */
  readonly hint: string | null;
  readonly related: readonly Related[];
  /** For a name that is not known. */
  readonly unknown: Unknown | null;
}

/** What a diagnostic may carry beside its message. */
export interface More {
  readonly hint?: string | null;
  readonly related?: readonly Related[];
  readonly unknown?: Unknown;
}

/**
 * Makes a diagnostic from the catalogue.
 *
 * @param code its permanent code
 * @param place where it is
 * @param message what was found and what was expected
 * @param more the repair and other places, where there are any
 */
export function diagnostic(code: Code, place: Place, message: string, more: More = {}): Diagnostic {
  return {
    code,
    severity: CATALOGUE[code].severity,
    message,
    place,
    hint: more.hint ?? null,
    related: more.related ?? [],
    unknown: more.unknown ?? null,
  };
}

/**
 * @param known the names that the journal has of these sorts
 * @param called the one of them whose thing is called what was written
 */
export function unknownName(
  sorts: Sort | readonly Sort[],
  name: string,
  known: Iterable<string>,
  called?: string,
): { hint: string | null; unknown: Unknown } {
  if (called !== undefined)
    return { hint: `Write \`${called}\`: that is its id.`, unknown: { sorts: [sorts].flat(), name, nearest: called } };
  const names = [...known];
  const unknown = { sorts: [sorts].flat(), name, nearest: nearest(name, names) };
  const near = likeliest(name, names);
  const hint =
    near === null ? [didYouMean(name, names), WHERE[unknown.sorts[0] ?? 'part'](name)].filter(Boolean).join(' ') : asQuestion(near);
  return { hint, unknown };
}

/** Where a name comes into the journal, for one that nothing in it is near to. */
const WHERE: Readonly<Record<Sort, (name: string) => string>> = {
  part: partsAre,
  position: partsAre,
  person: (name) => `A new one goes under \`people\` in journal.yaml: \`${name}: { name: … }\`.`,
  subsystem: (name) => `A new one goes under \`subsystems\` in journal.yaml: \`${name}: { name: … }\`.`,
  milestone: (name) => `A new one goes under \`milestones\` in journal.yaml: \`${name}: …\`.`,
  consumable: (name) => `A new one goes into consumables.yaml: \`${name}: { name: …, unit: L }\`.`,
  store: (name) => `A new one goes into the list \`stores\` in journal.yaml: \`${name}\`.`,
  item: () => 'It is opened under `opens`.',
  bag: () => 'It is filled under `bags`.',
  session: () => 'A session is named by its day, or by the name of its note.',
};

function partsAre(name: string): string {
  const id = /[\sA-Z]/.test(name) ? '…' : name;
  return `A new one goes into a file of \`parts/\`: \`- { id: ${id}, name: …, origin: … }\`; \`asfound find\` finds those that there are.`;
}

/** File order, then line, column and code, so that a run always prints the same. */
export function inFileOrder(a: Diagnostic, b: Diagnostic): number {
  return (
    compareText(a.place.file, b.place.file) ||
    a.place.line - b.place.line ||
    a.place.column - b.place.column ||
    compareText(a.code, b.code) ||
    compareText(a.message, b.message)
  );
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The start of a file, for what concerns the whole of it. */
export function startOf(file: string): Place {
  return { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
}
