/** consumables.yaml → what is used up. */

import { didYouMean } from '../diagnostics/nearest.ts';
import type { ConsumableFields } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Tree } from '../read/source/tree.ts';
import { readNewId } from '../schema/fields.ts';
import { HAZARD_STATEMENTS, statementCode, statementWords } from '../values/hazard-statements.ts';
import { readAmount } from '../values/money.ts';
import { convertTo, readQuantity } from '../values/quantity.ts';
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
    const unit = out.take(readQuantity(`1 ${each.unit}`), tree.placeOf([id, 'unit']));
    if (unit === null) continue;
    catalogues.consumables.set(id, {
      id,
      name: each.name,
      unit: unit.unit,
      statements: statementsOf(id, each, tree, out),
      hazards: each.hazard,
      opening: openingOf(id, each, unit.unit, tree, catalogues, out),
      place,
    });
  }
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
function openingOf(id: string, source: ConsumableFields, unit: string, tree: Tree, catalogues: Catalogues, out: Reporter) {
  if (!source.opening) return null;
  const { amount, value: written } = source.opening;
  const place = (field: string) => tree.placeOf([id, 'opening', field]);
  const before = out.diagnostics.length;
  const inUnit = out.take(convertTo(amount, unit), place('amount'));
  const value = out.take(readAmount(written, catalogues.settings.currencyDigits), place('value'));
  if (inUnit !== null && (inUnit.n === 0n || inUnit.s < 0n)) {
    out.report('A308', place('amount'), `‘${amount.text}’ is not an amount of stock: it must be more than nothing.`, {
      hint: 'Leave `opening` out where there was none.',
    });
  }
  if (value !== null && value < 0)
    out.report('A808', place('value'), 'The value of the opening stock is negative.', { hint: 'It is 0 or more.' });
  return out.diagnostics.length > before || value === null ? null : { amount, value };
}
