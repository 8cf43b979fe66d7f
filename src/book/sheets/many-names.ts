/** Many names after a few words: a sentence where they are few, else a table by subsystem, in the order in which those are declared. */
import { capital, listedNames, sentence } from '../../site/views/page/words.ts';
import type { BookSetting } from '../setting.ts';
import { words } from '../typst-text.ts';

export interface NamedThing {
  readonly name: string;
  readonly subsystem: string;
}

/** So many names still read as a sentence. */
const IN_A_SENTENCE = 12;

/** @param lead words without a stop; `mark` is what follows them before the names */
export function manyNames({ sheet, record }: BookSetting, lead: string, mark: ':' | '.', things: readonly NamedThing[]): string {
  const told = [...new Map(things.map((one) => [one.name, one])).values()];
  const head = mark === '.' ? `#strong[${words(`${lead}.`)}]` : words(`${lead}:`);
  if (told.length <= IN_A_SENTENCE) {
    const names = listedNames(told.map(({ name }) => name));
    return `#remark[${head} ${words(sentence(mark === '.' ? capital(names) : names))}]`;
  }
  const groups = Map.groupBy(told, ({ subsystem }) => subsystem);
  const order = [...new Set([...record.journal.subsystems.keys(), ...groups.keys()])].filter((id) => groups.has(id));
  const cells = order.map((id) => {
    const names = (groups.get(id) ?? []).map(({ name }) => name);
    return `[${words(sheet.subsystemName(id))}], [${words(sentence(listedNames(names)))}]`;
  });
  return `#block(sticky: true)[${head}]\n#record-table(columns: (42mm, 1fr), head: ([], []), ${cells.join(', ')})`;
}
