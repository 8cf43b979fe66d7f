import type { Origin, Whereabouts } from '../model.ts';

/** Where something is, in words that follow "it is": `in stores, shelf B2`. */
export function whereInWords(where: Whereabouts): string {
  switch (where.at) {
    case 'fitted':
      return `fitted at ${where.position}`;
    case 'stores':
      return where.store === null ? 'in stores, unplaced' : `in stores, ${where.store}`;
    case 'bag':
      return `in bag ${where.bag}`;
    case 'out':
      return `out with ${where.firm}`;
    case 'gone':
      return `gone (${where.how})`;
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
      return where.position;
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
