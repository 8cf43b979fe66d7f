import { asTyped } from './as-typed.ts';
import type { Quantity } from './quantity.ts';
import { convertTo, readQuantity, upToUnit } from './quantity.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';

export interface Limits {
  readonly low: Quantity | null;
  readonly high: Quantity | null;
}

/**
 * Reads limits: `9.000..9.060 in`, `..9.060 in`, `9.000.. in`, `5 3/8..5 1/2 in`, `-1.5..-0.5 deg`. The unit stands once, after both.
 * They must measure what the value measures (A309).
 */
export function readLimits(text: string, value: Quantity): Reading<Limits> {
  const { low, noUnit, high, unit } = partsOf(text);
  if (noUnit !== '' || (low === '' && high === '')) {
    return bad('A308', `${quoted(text)} is not a pair of limits.`, limitsMeant(text));
  }
  if (unit === '' && value.unit !== COUNTED) {
    return bad(
      'A309',
      `${quoted(text)} has no unit, and ${quoted(value.text)} has one.`,
      `Write it once, after both: \`${text.trim()} ${value.unit}\`.`,
    );
  }
  const from = limit(low, unit, value);
  if (!from.ok) return from;
  const to = limit(high, unit, value);
  if (!to.ok) return to;
  if (from.value && to.value && from.value.base.gt(to.value.base)) {
    return bad(
      'A308',
      `The lower limit of ${quoted(text)} is above the upper one.`,
      `Write the smaller one first: \`${high}..${low} ${unit}\`.`,
    );
  }
  return ok({ low: from.value, high: to.value });
}

/** The unit of a number without one. */
const COUNTED = 'each';

/** The value of limits that have a unit is a number alone (A309); null where it is not. */
export function unitLeftOut(text: string, value: Quantity): Reading<never> | null {
  const { unit } = partsOf(text);
  if (value.unit !== COUNTED || unit === '' || unit === COUNTED) return null;
  return bad('A309', `${quoted(value.text)} has no unit, and its limits have ${quoted(unit)}.`, `Write \`value: ${value.text} ${unit}\`.`);
}

function partsOf(text: string) {
  const [, lower = '', upper = ''] = /^(.*?)\.\.(.*)$/.exec(asTyped(text)) ?? [];
  const [[low, noUnit], [high, unit]] = [upToUnit(lower.trim()), upToUnit(upper.trim())];
  return { low, noUnit, high, unit };
}

/** `9.0-9.06 in` and `9.0 to 9.06 in`, with the two points between and the smaller one first. */
function limitsMeant(text: string): string {
  const [, low, high, unit = ''] = /^\s*([\d.]+)\s*(?:-|–|to|…)\s*([\d.]+)\s*(.*)$/.exec(text) ?? [];
  if (low === undefined || high === undefined) return 'Write `9.000..9.060 in`, `..9.060 in` or `9.000.. in`.';
  const [from, to] = Number(low) > Number(high) ? [high, low] : [low, high];
  return `Write \`${from}..${to} ${unit.trim()}\`.`;
}

function limit(number: string, unit: string, value: Quantity): Reading<Quantity | null> {
  if (number === '') return ok(null);
  const read = readQuantity(`${number} ${unit}`.trim());
  if (!read.ok) return read;
  const same = convertTo(read.value, value.unit);
  return same.ok ? read : bad(same.code, same.problem, same.hint);
}

/** Whether a value is inside its limits, ends included; null without any. */
export function isWithin(value: Quantity, { low, high }: Limits): boolean | null {
  if (low === null && high === null) return null;
  return (low === null || value.base.gte(low.base)) && (high === null || value.base.lte(high.base));
}
