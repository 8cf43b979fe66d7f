import type { Statement, StatementLine } from '../journal/ledger/statement.ts';

/** A line as a client reads it: an entry, or several of one evening that no word on the statement tells apart, added up. */
export interface ToldLine {
  readonly line: StatementLine;
  readonly entries: number;
}

/**
 * Lines that read the same as one, in the order of the first: the shares of a purchase that was split, or two things of
 * one name. Hours stay apart, each a time of somebody's.
 */
export function withAlikeJoined(lines: readonly StatementLine[]): readonly ToldLine[] {
  const alike = Map.groupBy(lines, (line) => (line.kind === 'labour' ? line.entry : readingOf(line)));
  return [...alike.values()].flatMap((some) => {
    const [first, ...others] = some;
    return first === undefined ? [] : [{ line: others.reduce(added, first), entries: some.length }];
  });
}

/** Whether a line says anything: a time, or an amount of those that the statement shows. What a bill’s tax comes to beyond its lines is often charged at nothing. */
export function saysSomething(line: StatementLine, shows: Statement['shows']): boolean {
  const { minutes, cost, net, markUp, tax, charged } = line;
  return minutes !== null || [shows.includes('costs') ? cost : 0, net, markUp, tax, charged].some((amount) => amount !== 0);
}

const readingOf = ({ date, kind, what, subsystem, rate, notCharged, late }: StatementLine): string =>
  JSON.stringify([date, kind, what, subsystem, rate?.toFraction() ?? null, notCharged, late]);

function added(one: StatementLine, other: StatementLine): StatementLine {
  const sum = (of: 'cost' | 'net' | 'markUp' | 'tax' | 'charged'): number => one[of] + other[of];
  return { ...one, cost: sum('cost'), net: sum('net'), markUp: sum('markUp'), tax: sum('tax'), charged: sum('charged') };
}
