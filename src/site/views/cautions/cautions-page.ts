/** Who and what touches each hazard, and the hazard statements of what is used here. */
import { type Consumable, type ConsumableId, HAZARDS, type Hazard, type Part, type PartId, type Session } from '../../../journal/model.ts';
import { hazardsOfConsumable, hazardsOfPart, hazardsOfSession } from '../../../journal/registers/hazards.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import { hazardStatements } from '../page/facts.ts';
import { byKey } from '../page/record-index.ts';
import type { Sheet } from '../page/sheet.ts';
import { stillDangerousOf } from './still-dangerous.ts';

export interface CautionsPage {
  readonly sessions: ReadonlyMap<string, readonly Session[]>;
  /** Parts that carry it now. */
  readonly parts: ReadonlyMap<string, readonly Part[]>;
  /** Of those of which some was made safe, what is left: `2 of 4: bag 14`. */
  readonly still: ReadonlyMap<PartId, string>;
  readonly consumables: ReadonlyMap<string, readonly Consumable[]>;
  /** By code of the statement. */
  readonly statements: ReadonlyMap<string, readonly Consumable[]>;
  readonly touched: readonly Hazard[];
  readonly others: readonly Hazard[];
}

const CAUTIONS_PAGE = shown('cautions', (sheet): CautionsPage => {
  const { record } = sheet;
  const { journal, day } = record;
  const sessions = byKey(journal.sessions, (session) => hazardsOfSession(record, session));
  const parts = byKey(journal.parts.values(), ({ id }) => hazardsOfPart(record, id, day));
  const consumables = byKey(journal.consumables.values(), hazardsOfConsumable);
  const touched = HAZARDS.filter((hazard) => [sessions, parts, consumables].some((touching) => touching.has(hazard)));
  return {
    sessions,
    parts,
    still: stillDangerousOf(
      sheet,
      [...parts.values()].flatMap((list) => list.map(({ id }) => id)),
    ),
    consumables,
    statements: byKey(journal.consumables.values(), ({ statements }) => statements),
    touched,
    others: HAZARDS.filter((hazard) => !touched.includes(hazard)),
  };
});

export const CAUTION_QUESTIONS: readonly AnyQuestion[] = [CAUTIONS_PAGE];

export const cautionsPage = (sheet: Sheet): CautionsPage => sheet.ask(CAUTIONS_PAGE);

/** Those of some consumables that have hazard statements, each once, with the codes. */
export function statementsOf(
  sheet: Sheet,
  consumables: Iterable<ConsumableId>,
): readonly { readonly id: ConsumableId; readonly codes: readonly string[] }[] {
  return [...new Set(consumables)].flatMap((id) => {
    const codes = hazardStatements(sheet, id);
    return codes.length === 0 ? [] : [{ id, codes }];
  });
}
