import type { Origin, Whereabouts } from '../model.ts';

/** Where something is, in words that follow "it is": `in stores, shelf B2`. */
export function whereInWords(where: Whereabouts): string {
  switch (where.at) {
    case 'fitted':
      return where.within === undefined ? `fitted at ${where.position}` : `fitted at ${where.position} in ${where.within}`;
    case 'in':
      return `in ${where.part}, ${whereInWords(where.where)}`;
    case 'stores':
      return where.store === null ? 'in stores, unplaced' : `in stores, ${where.store}`;
    case 'bag':
      return `in bag ${where.bag}`;
    case 'out':
      return `out with ${where.firm}`;
    case 'gone':
      return `gone (${where.how.replaceAll('-', ' ')})`;
    case 'missing':
      return 'missing';
    case 'not-yet':
      return 'not yet here';
    case 'considered':
      return 'considered, not here';
  }
}

/** False for what has not come, or was only thought of. What is gone or missing belongs to the record and counts. */
export function isHere({ at }: Whereabouts): boolean {
  return at !== 'not-yet' && at !== 'considered';
}

/** Texts one after the other: commas between them, and semicolons where one has a comma of its own. */
export function inARow(texts: readonly string[]): string {
  return texts.join(texts.some((text) => text.includes(',')) ? '; ' : ', ');
}

/** Some of a numbered lot: `number 2`, `numbers 2 and 4`, `numbers 1, 3 to 7 and 12`. */
export function numbersInWords(which: readonly number[]): string {
  const [last, ...before] = spansOf(which).toReversed();
  const list = before.length === 0 ? last : `${before.toReversed().join(', ')} and ${last}`;
  return which.length === 1 ? `number ${list}` : `numbers ${list}`;
}

/** Of three and more in a row the first and the last. */
function spansOf(which: readonly number[]): readonly string[] {
  const rows: number[][] = [];
  for (const number of which) {
    const row = rows.at(-1);
    if (row !== undefined && row.at(-1) === number - 1) row.push(number);
    else rows.push([number]);
  }
  return rows.flatMap((row) => (row.length < 3 ? row.map(String) : [`${row[0]} to ${row.at(-1)}`]));
}

/** How many of a lot, and which of a numbered one: `2 of 5, numbers 2 and 4`; '' for all. */
export function someInWords(count: number, of: number, which: readonly number[] | null): string {
  if (count >= of) return '';
  return `${count} of ${of}${which === null || which.length === 0 ? '' : `, ${numbersInWords(which)}`}`;
}

/** An origin as a reader says it; null is an origin that nobody knows. */
export function originInWords(origin: Origin | null): string {
  return origin === null ? 'origin not known' : origin.replaceAll('-', ' ');
}

/** True when both are the same place. */
export function sameWhere(a: Whereabouts, b: Whereabouts): boolean {
  return whereKey(a) === whereKey(b);
}

/** A text that two whereabouts share just when they are the same place. */
export function whereKey(where: Whereabouts): string {
  return where.at === 'stores' && where.store === null ? 'stores' : `${where.at}:${detailOf(where)}`;
}

function detailOf(where: Whereabouts): string {
  switch (where.at) {
    case 'fitted':
      return where.within === undefined ? where.position : `${where.position}@${where.within}`;
    case 'in':
      return `${where.position}@${where.part}/${whereKey(where.where)}`;
    case 'stores':
      return where.store ?? '';
    case 'bag':
      return String(where.bag);
    case 'out':
      return where.firm;
    case 'gone':
      return where.how;
    default:
      return '';
  }
}
