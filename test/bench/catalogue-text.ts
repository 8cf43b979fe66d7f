import type { BenchPart, BenchPosition } from './catalogue.ts';
import { flowList, flowMapping, scalar } from './flow-mapping.ts';
import { pounds } from './money-text.ts';
import { CONSUMABLES, MILESTONES, STORES, SUBSYSTEMS } from './trade-words.ts';

/**
 * `journal.yaml` of a generated journal.
 *
 * @param arrived the day of the as-found state
 * @param raised a later day, from which one of the people costs more
 */
export function journalYaml(arrived: string, raised: string): string {
  return [
    'title: A measured van',
    'vehicle: { make: Quernby, model: Ten, year: 1952, marks: { chassis: QT10 4417 } }',
    `arrived: ${arrived}`,
    'currency: GBP',
    'time-zone: Europe/London',
    'locale: en-GB',
    'people:',
    '  rh: { name: Ruth Haskell-Dray, rate: 0 }',
    `  jm: { name: Jory Mundle, rate: [ { from: ${arrived}, per-hour: 12.00 }, { from: ${raised}, per-hour: 28.50 } ] }`,
    '  tw: { name: Tamsin Wray, rate: 32.00 }',
    'subsystems:',
    ...SUBSYSTEMS.map(({ id, name }) => `  ${id}: { name: ${name}, budget: { hours: 400, money: 4000.00 } }`),
    'milestones:',
    ...MILESTONES.map(({ id, name }) => `  ${id}: ${name}`),
    `stores: ${flowList(STORES)}`,
    'stock: fifo',
    '',
  ].join('\n');
}

/** What is on the shelf when the vehicle arrives, in whole units: every other consumable. */
export function openingStock(): ReadonlyMap<string, number> {
  return new Map(CONSUMABLES.filter((_, n) => n % 2 === 0).map(({ id }) => [id, 2]));
}

/** `consumables.yaml`. */
export function consumablesYaml(): string {
  const opening = openingStock();
  const lines = CONSUMABLES.map(({ id, name, unit, hazards, price }) => {
    const units = opening.get(id);
    const stock = units === undefined ? '' : `, opening: { amount: ${units} ${unit}, value: ${pounds(units * price)} }`;
    return `${id}: { name: ${scalar(name)}, unit: ${unit}, hazards: ${flowList(hazards)}${stock} }`;
  });
  return `${lines.join('\n')}\n`;
}

/** `parts/<subsystem>.yaml`: each position's part, then its candidate. */
export function partsYaml(positions: readonly BenchPosition[], subsystem: string): string {
  const here = positions.filter(({ main }) => main.subsystem === subsystem);
  const parts = here.flatMap(({ main, candidate }) => (candidate === null ? [main] : [main, candidate]));
  return `${parts.map(partYaml).join('\n')}\n`;
}

/** One in so many has something of it that is for nobody else, as journals have: a build then proves that no page says it. */
const PRIVATE_OF = 25;

function partYaml(part: BenchPart, n: number): string {
  return `- ${flowMapping({
    id: part.id,
    name: part.name,
    origin: part.origin,
    for: part.for,
    count: part.count > 1 ? String(part.count) : null,
    found: part.found === 'fitted' ? null : part.found,
    at: part.at,
    marks: part.marks,
    finish: part.finish,
    condition: part.condition === null ? null : String(part.condition),
    private: n % PRIVATE_OF === 0 ? `${part.name} came of a widow at Ley End, who asked that it is not told` : null,
  })}`;
}
