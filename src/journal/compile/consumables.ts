/** consumables.yaml → what is used up. */

import { didYouMean } from '../diagnostics/nearest.ts';
import type { Consumable } from '../model.ts';
import type { ConsumableFields } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Tree } from '../read/source/tree.ts';
import { readNewId } from '../schema/fields.ts';
import { HAZARD_STATEMENTS, statementCode, statementWords } from '../values/hazard-statements.ts';
import { readOwnAmount } from '../values/money.ts';
import { stockAmount } from '../values/packs.ts';
import { convertTo, type Quantity, readQuantity } from '../values/quantity.ts';
import type { Reading } from '../values/reading.ts';
import { PACKS, type Pack } from '../values/units.ts';
import type { Catalogues } from './context.ts';

/** Fills the catalogues' consumables. */
export function compileConsumables(
  source: Readonly<Record<string, ConsumableFields>>,
  tree: Tree,
  catalogues: Catalogues,
  out: Reporter,
): void {
  for (const [id, each] of Object.entries(source)) {
    const place = tree.keyPlaceOf([id]);
    out.take(readNewId(id), place);
    const unit = out.take(readUnit(each.unit), tree.placeOf([id, 'unit']));
    if (unit === null) continue;
    const consumable: Consumable = {
      id,
      name: each.name,
      unit: unit.unit,
      statements: statementsOf(id, each, tree, out),
      hazards: each.hazard,
      packs: packsOf(id, each, unit.unit, tree, out),
      opening: null,
      place,
    };
    catalogues.consumables.set(id, { ...consumable, opening: openingOf(each, consumable, tree, catalogues, out) });
  }
}

/** The unit that a stock is kept in. */
function readUnit(written: string): Reading<Quantity> {
  const read = readQuantity(`1 ${written}`);
  if (read.ok) return read;
  if (/^\d+$/.test(written))
    return { ...read, problem: `\`${written}\` is not a unit.`, hint: 'Write `unit: each` for what is counted in pieces.' };
  return { ...read, hint: `${read.hint} What is counted in pieces has \`unit: each\`.` };
}

/** How much each pack holds, in a unit that the stock is kept in. */
function packsOf(id: string, source: ConsumableFields, unit: string, tree: Tree, out: Reporter): Consumable['packs'] {
  const told = PACKS.flatMap((pack): [Pack, Quantity][] => {
    const holds = source[pack];
    return holds !== null && out.take(convertTo(holds, unit), tree.placeOf([id, pack])) !== null ? [[pack, holds]] : [];
  });
  return new Map(told);
}

function statementsOf(id: string, { hazards }: ConsumableFields, tree: Tree, out: Reporter): string[] {
  return hazards.map((written, i) => {
    const code = statementCode(written);
    if (statementWords(code) !== null) return code;
    const hint =
      didYouMean(code, HAZARD_STATEMENTS.keys()) ?? 'A code is H or EUH and three digits, from the safety data sheet, section 2.';
    const message = `\`${written}\` is not a hazard statement known here. It is shown as written.`;
    out.report('A411', tree.placeOf([id, 'hazards', i]), message, { hint });
    return written;
  });
}

/** Opening stock is some of it, worth something or nothing. */
function openingOf(
  source: ConsumableFields,
  consumable: Consumable,
  tree: Tree,
  catalogues: Catalogues,
  out: Reporter,
): Consumable['opening'] {
  if (!source.opening) return null;
  const { amount, value: written } = source.opening;
  const place = (field: string) => tree.placeOf([consumable.id, 'opening', field]);
  const before = out.diagnostics.length;
  const inUnit = out.take(stockAmount(amount, consumable), place('amount'));
  const value = out.take(readOwnAmount(written ?? '0', catalogues.settings), place('value'));
  if (inUnit !== null && (inUnit.n === 0n || inUnit.s < 0n)) {
    out.report('A308', place('amount'), `‘${amount.text}’ is not an amount of stock: it must be more than nothing.`, {
      hint: 'Leave `opening` out where there was none.',
    });
  }
  if (value !== null && value < 0)
    out.report('A808', place('value'), 'The value of the opening stock is negative.', { hint: 'It is 0 or more.' });
  return out.diagnostics.length > before || value === null ? null : { amount, value };
}
