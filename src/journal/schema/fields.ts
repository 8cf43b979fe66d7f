/**
 * The kinds of value a field may take. All scalars arrive as text; a kind turns the text into what it
 * means, or says with a permanent code why it cannot.
 */
import * as z from 'zod';
import type { Code } from '../diagnostics/catalogue.ts';
import { didYouMean, likeliest } from '../diagnostics/nearest.ts';
import { withoutPrintedMarks } from '../values/as-typed.ts';
import { readDate } from '../values/date.ts';
import { convertTo, type Quantity, readQuantity } from '../values/quantity.ts';
import { bad, ok, type Reading } from '../values/reading.ts';
import { having } from './facts.ts';
import type { SaidFor } from './said-for.ts';

/** Carried by a zod issue of ours, so that it comes out under its own code. */
export interface IssueParams {
  readonly code: Code;
  readonly hint: string | null;
  /** What is believed in place of what stands there. */
  readonly meant?: string | null | undefined;
}

/** What YAML lets escapes stand for, and no text holds. */
const CONTROLS = /[^\P{Cc}\t\n\r]/u;

/**
 * A line of text. Printed quotation marks around it stand for those that YAML knows. A letter and its mark are one character,
 * however they were typed (Unicode, NFC).
 */
export const text = having(
  z
    .string()
    .overwrite((written) => withoutPrintedMarks(written).normalize('NFC'))
    .check(({ value, issues }) => {
      if (!CONTROLS.test(value)) return;
      const params: IssueParams = { code: 'A111', hint: 'Take it out.' };
      issues.push({ code: 'custom', message: 'A control character stands in this text, which nobody can see.', params, input: value });
    }),
  { standIn: '' },
);

/** Text in which somebody says something in words. */
export const prose = having(text, { prose: true });

/**
 * A kind of value read from its text.
 *
 * @param standIn a text that the reader takes
 */
export function read<T>(reader: (text: string) => Reading<T>, standIn = '1') {
  const kind = text.transform((written, context): T => {
    const reading = reader(written);
    if (reading.ok) return reading.value;
    const params: IssueParams = { code: reading.code, hint: reading.hint, meant: reading.meant };
    context.issues.push({ code: 'custom', message: reading.problem, params, input: written });
    return z.NEVER;
  });
  return having(kind, { standIn });
}

/**
 * One of a few words. Capitals, and a space or a line where a word has a hyphen, make no other word.
 *
 * @param saidFor what to write for words that people try first
 */
export function oneOf<const Words extends readonly string[]>(words: Words, saidFor: SaidFor = new Map()) {
  const kind = read((written): Reading<Words[number]> => {
    const plain = written.toLowerCase().replaceAll(/[\s_]+/g, '-');
    if (words.includes(plain)) return ok(plain);
    const problem = `\`${written}\` is not a word this field takes.`;
    const said = saidFor.get(plain);
    const meant = words.find((word) => said === `\`${word}\``);
    if (said !== undefined) return bad('A304', problem, `Write ${said}.`, meant);
    const several = written.split(',').map((one) => one.trim().toLowerCase());
    if (several.length > 1 && several.every((one) => words.includes(one)))
      return bad('A304', problem, `Several stand in brackets: \`[${several.join(', ')}]\`.`);
    const hint = didYouMean(written, words) ?? `One of ${words.map((word) => `\`${word}\``).join(', ')}.`;
    return bad('A304', problem, hint, likeliest(written, words));
  }, words[0]);
  return having(kind, { words });
}

/** A field that may be absent, which is null. */
export function maybe<T extends z.ZodType>(kind: T) {
  return kind.nullable().default(null);
}

/** A list, or one value that stands for a list of one. */
export function listOf<T extends z.ZodType>(item: T) {
  const list = z.preprocess((value) => (value === undefined || Array.isArray(value) ? value : [value]), z.array(item));
  return having(list, { oneOrMany: true });
}

/** Any number of a kind: a list, one value that stands for a list of one, or no field at all. */
export function manyOf<T extends z.ZodType>(item: T) {
  return listOf(item).default([]);
}

/** Entries under a field: always a list, and empty without the field. */
export function entries<T extends z.ZodType>(item: T) {
  return z.array(item).default([]);
}

/** Named fields, no others. A name of two words is written `goes-back` and given out as `goesBack`. */
export function fields<Shape extends z.ZodRawShape>(shape: Shape): z.ZodType<Named<z.output<z.ZodObject<Shape, z.core.$strict>>>> {
  const object = z.strictObject(shape);
  const names = new Map(Object.keys(shape).map((name) => [name, oneWord(name)]));
  const named = [...names].some(([name, one]) => name !== one) ? object.transform((written) => inOneWord(written, names)) : object;
  return named as unknown as z.ZodType<Named<z.output<typeof object>>>;
}

type OneWord<Name> = Name extends `${infer First}-${infer Rest}` ? `${First}${Capitalize<OneWord<Rest>>}` : Name;
type Named<Fields> = { [Name in keyof Fields as OneWord<Name>]: Fields[Name] };

const oneWord = (name: string): string => name.replaceAll(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());

/** @param names every name that may be written, by that */
function inOneWord(written: object, names: ReadonlyMap<string, string>): object {
  return Object.fromEntries(Object.entries(written).map(([name, value]) => [names.get(name) ?? name, value]));
}

/** More than nothing of what a unit measures, written in any unit for it: `45 lbf.ft` where N.m is expected. */
export function amountIn(unit: string) {
  const kind = read((written): Reading<Quantity> => {
    const read = readQuantity(written);
    if (!read.ok) return read;
    const inUnit = convertTo(read.value, unit);
    if (!inUnit.ok) return inUnit;
    if (inUnit.value.compare(0) > 0) return read;
    return bad('A308', `\`${written}\` is nothing: an amount is more than that.`, 'Leave the field out where there is none.');
  }, `1 ${unit}`);
  return having(kind, { form: `a number and a unit, as 1 ${unit}` });
}

/** A number and a unit. */
export const quantity = having(read(readQuantity), { form: 'a number and a unit' });

export const date = having(read(readDate, '2000-01-01'), { form: 'YYYY-MM-DD', writtenAs: 'day' });

export const yes = having(
  read((written): Reading<boolean> => {
    if (written === 'yes') return ok(true);
    return written === 'no' ? ok(false) : bad('A304', `\`${written}\` is not a word this field takes.`, 'Write `yes` or `no`.');
  }, 'no'),
  { words: ['yes', 'no'] },
);

/** A count of things: a whole number from 1. */
export const count = having(
  read((written): Reading<number> => {
    if (/^[1-9]\d{0,5}$/.test(written)) return ok(Number(written));
    const all = /^(?:yes|all|every|each)$/i.test(written);
    const hint = all ? 'Leave it out where all are meant, else write how many.' : 'A count is a whole number from 1.';
    return bad('A310', `\`${written}\` is not a count.`, hint);
  }),
  { form: 'a whole number from 1', writtenAs: 'number' },
);

/** The number on a bag. */
export const bagNumber = having(
  read((written): Reading<number> => {
    if (/^[1-9]\d{0,4}$/.test(written)) return ok(Number(written));
    return bad('A310', `\`${written}\` is not a bag number.`, bagHint(written));
  }),
  { names: ['bag'], writtenAs: 'number' },
);

function bagHint(written: string): string {
  if (/^\d+(?:\s*,\s*\d+)+$/.test(written)) return `Several stand in brackets: \`[${written}]\`.`;
  const number = /^bag\s+([1-9]\d{0,4})$/i.exec(written)?.[1];
  return number === undefined ? 'A bag has a whole number from 1.' : `Write only its number: \`${number}\`.`;
}

/**
 * `to` and `from`: a bag by its number, else the name of a store, firm or position. Without either it is a place in the
 * stores, and a copy that leaves out where things lie does not say which; nobody writes it so.
 */
export type Destination = { bag: number; name: null } | { bag: null; name: string } | { bag: null; name: null };

export function destinationOf(written: string): Destination {
  const number = /^bag\s+([1-9]\d{0,4})$/.exec(written)?.[1];
  return number === undefined ? { bag: null, name: written } : { bag: Number(number), name: null };
}

export const destination = read((written): Reading<Destination> => ok(destinationOf(written)));

export const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/** @returns an id that is made here, as against one that refers to something; A311 for what is none */
export function readNewId(written: string): Reading<string> {
  if (ID.test(written)) return ok(written);
  const repaired = nearestId(written);
  const rule = 'lower-case letters, digits and single hyphens.';
  return bad('A311', `\`${written}\` is not an id.`, repaired === null ? `An id is ${rule}` : `Write \`${repaired}\`: ${rule}`);
}

export const newId = having(read(readNewId), { form: 'lower-case letters, digits and single hyphens', writtenAs: 'new-id' });

/** The id that a text makes when what ids do not take is left out; null when nothing is left. */
export function nearestId(written: string): string | null {
  const repaired = written
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return ID.test(repaired) ? repaired : null;
}

/** Condition class 0 to 3 (EN 16096, by analogy). */
export const condition = having(
  read((written): Reading<0 | 1 | 2 | 3> => {
    if (/^[0-3]$/.test(written)) return ok(Number(written) as 0 | 1 | 2 | 3);
    const hint = '0 no symptoms, 1 minor, 2 moderate, 3 major.';
    return bad('A304', `\`${written}\` is not a condition class.`, hint);
  }),
  { words: ['0', '1', '2', '3'] },
);
