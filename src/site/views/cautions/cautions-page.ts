/** Who and what touches each hazard, and the hazard statements of what is used here. */
import { type Consumable, type ConsumableId, HAZARDS, type Hazard, type Part, type Session } from '../../../journal/model.ts';
import { hazardsOfConsumable, hazardsOfPart, hazardsOfSession } from '../../../journal/registers/hazards.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import { hazardStatements } from '../page/facts.ts';
import { byKey } from '../page/record-index.ts';
import type { Sheet } from '../page/sheet.ts';

export interface CautionsPage {
  readonly sessions: ReadonlyMap<string, readonly Session[]>;
  /** Parts that carry it now. */
  readonly parts: ReadonlyMap<string, readonly Part[]>;
  readonly consumables: ReadonlyMap<string, readonly Consumable[]>;
  /** By code of the statement. */
  readonly statements: ReadonlyMap<string, readonly Consumable[]>;
  readonly touched: readonly Hazard[];
  readonly others: readonly Hazard[];
}

const CAUTIONS_PAGE = shown('cautions', ({ record }): CautionsPage => {
  const { journal, day } = record;
  const sessions = byKey(journal.sessions, (session) => hazardsOfSession(record, session));
  const parts = byKey(journal.parts.values(), ({ id }) => hazardsOfPart(record, id, day));
  const consumables = byKey(journal.consumables.values(), hazardsOfConsumable);
  const touched = HAZARDS.filter((hazard) => [sessions, parts, consumables].some((touching) => touching.has(hazard)));
  return {
    sessions,
    parts,
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
