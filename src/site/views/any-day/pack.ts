/**
 * Plain data as JSON has it, for a script that carries a journal: lists, maps, sets, objects, numbers of any size, fractions.
 * The names of the fields of thousands of entries are the same few lists, so each list is written once.
 */
import Fraction from 'fraction.js';

/** What JSON can say. A list begins with what it stands for: one of `KINDS`, or beyond them the list of fields of an object. */
type Json = null | boolean | number | string | readonly Json[];

export interface Packed {
  readonly fields: readonly (readonly string[])[];
  readonly value: Json;
}

const KINDS = { list: 0, map: 1, set: 2, bigint: 3, fraction: 4, absent: 5 } as const;
const OBJECTS = Object.keys(KINDS).length;

/**
 * @param data must be of what is named above alone, and without circles
 * @throws TypeError for what is no data, such as a function
 */
export function packed(data: unknown): Packed {
  const fields: string[][] = [];
  const known = new Map<string, number>();
  const kindOf = (names: string[]): number => {
    const key = JSON.stringify(names);
    const before = known.get(key);
    if (before !== undefined) return before;
    const kind = OBJECTS + fields.push(names) - 1;
    known.set(key, kind);
    return kind;
  };
  const pack = (one: unknown): Json => {
    if (one === null || typeof one === 'string' || typeof one === 'number' || typeof one === 'boolean') return one;
    if (one === undefined) return [KINDS.absent];
    if (typeof one === 'bigint') return [KINDS.bigint, String(one)];
    if (typeof one !== 'object') throw new TypeError(`a ${typeof one} is no data`);
    if (Array.isArray(one)) return packList(KINDS.list, one);
    if (one instanceof Map) return packList(KINDS.map, [...one].flat());
    if (one instanceof Set) return packList(KINDS.set, one);
    if (one instanceof Fraction) return [KINDS.fraction, one.toFraction()];
    return packList(kindOf(Object.keys(one)), Object.values(one));
  };
  const packList = (kind: number, things: Iterable<unknown>): Json => {
    const list: Json[] = [kind];
    for (const thing of things) list.push(pack(thing));
    return list;
  };
  const value = pack(data);
  return { fields, value };
}

/** @param given as `packed` gave it */
export function unpacked({ fields, value }: Packed): unknown {
  const unpack = (one: Json): unknown => {
    if (one === null || typeof one !== 'object') return one;
    const [kind, ...rest] = one as readonly [number, ...Json[]];
    if (kind === KINDS.list) return rest.map(unpack);
    if (kind === KINDS.map) return new Map(pairs(rest.map(unpack)));
    if (kind === KINDS.set) return new Set(rest.map(unpack));
    if (kind === KINDS.bigint) return BigInt(rest[0] as string);
    if (kind === KINDS.fraction) return new Fraction(rest[0] as string);
    if (kind === KINDS.absent) return undefined;
    return Object.fromEntries((fields[kind - OBJECTS] ?? []).map((name, n) => [name, unpack(rest[n] ?? null)]));
  };
  return unpack(value);
}

function pairs(list: readonly unknown[]): [unknown, unknown][] {
  return Array.from({ length: list.length / 2 }, (_, n) => [list[2 * n], list[2 * n + 1]]);
}
