import leven from 'leven';

/**
 * The name a person most likely meant: the one fewest letters away, at most a third of the longer
 * (and at least one). The earlier of two equally near wins. Of names that begin with a day, such as notes have, the one
 * nearest in the calendar is meant by a day, where one is of that month.
 *
 * @returns null when nothing is near
 */
export function nearest(written: string, names: Iterable<string>): string | null {
  const wanted = written.toLowerCase();
  const ofDay = nearestDay(written, names);
  if (ofDay !== null) return ofDay;
  let best: string | null = null;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const name of names) {
    const longer = Math.max(name.length, wanted.length);
    const limit = Math.min(bestDistance - 1, Math.max(1, Math.floor(longer / 3)));
    const distance = isSwap(wanted, name.toLowerCase()) ? 1 : leven(wanted, name.toLowerCase(), { maxDistance: limit + 1 });
    // Of two words that share no letter neither was meant for the other.
    if (distance > limit || distance >= longer) continue;
    best = name;
    bestDistance = distance;
  }
  return best;
}

/** So many days off a day may be meant for another one. */
const MOST_DAYS = 31;

function nearestDay(written: string, names: Iterable<string>): string | null {
  const day = dayOf(written);
  if (day === null || written.length !== 10) return null;
  const away = (name: string): number => Math.abs((dayOf(name) ?? Number.POSITIVE_INFINITY) - day);
  const [best] = [...names].filter((name) => away(name) <= MOST_DAYS).sort((a, b) => away(a) - away(b));
  return best ?? null;
}

/** The days since 1970 of the date that a name begins with. */
function dayOf(name: string): number | null {
  const day = /^\d{4}-\d{2}-\d{2}(?!\d)/.test(name) ? Date.parse(`${name.slice(0, 10)}T00:00Z`) / 86_400_000 : Number.NaN;
  return Number.isNaN(day) ? null : day;
}

/** What may be offered for a name: the nearest, else the only one that it begins, as `mag` does `magneto`, else the only one that has all of its words, as `outside-work` has `outside`. */
export function likeliest(written: string, names: readonly string[]): string | null {
  const near = nearest(written, names);
  if (near !== null) return near;
  const begun = names.filter((name) => written.length >= SHORTEST_BEGINNING && name.toLowerCase().startsWith(written.toLowerCase()));
  if (begun.length === 1) return begun[0] ?? null;
  const found = namesWith(written, names);
  return found.length === 1 ? (found[0] ?? null) : null;
}

/** The names that have every word of what was written as a word of theirs, or as the beginning of one. */
function namesWith(written: string, names: Iterable<string>): string[] {
  const wordsOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];
  const words = wordsOf(written);
  if (words.join('').length < SHORTEST) return [];
  return [...names].filter((name) => {
    const own = wordsOf(name);
    return words.every((word) => own.some((one) => one === word || (word.length >= SHORTEST && one.startsWith(word))));
  });
}

/** Fewer letters begin too many words. */
const SHORTEST = 4;
/** As `SHORTEST`, where what was written is the beginning of the whole name. */
const SHORTEST_BEGINNING = 3;
/** So many names are offered where one cannot be chosen. */
const MOST_OFFERED = 5;

/** Whether two words differ only in two neighbouring letters that have changed places. */
function isSwap(a: string, b: string): boolean {
  if (a.length !== b.length || a === b) return false;
  const at = [...a].findIndex((letter, n) => letter !== b[n]);
  return a.slice(0, at) + a[at + 1] + a[at] + a.slice(at + 2) === b;
}

/** The question whether a name was meant. */
export function asQuestion(name: string): string {
  return `Did you mean \`${name}\`?`;
}

/** `Did you mean …?`, a few that it may be, or the whole list when it is short, or null. */
export function didYouMean(written: string, names: Iterable<string>): string | null {
  const list = [...names];
  const name = likeliest(written, list);
  if (name !== null) return asQuestion(name);
  const several = namesWith(written, list);
  if (several.length > 0 && several.length <= MOST_OFFERED) return `Perhaps ${several.map((each) => `\`${each}\``).join(', ')}.`;
  if (list.length === 0) return null;
  return list.length <= 12 ? `Known: ${list.map((each) => `\`${each}\``).join(', ')}.` : null;
}
