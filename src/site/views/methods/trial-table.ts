import type { MethodTrial } from '../../../journal/registers/methods.ts';
import { html } from '../page/html.ts';
import { consumableLinks, partLinks, sessionDay, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { RESULT_WORDS } from '../page/words.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';

/** What need not be said of each trial, as what stands over them says it of all. */
interface SaidOver {
  readonly date?: boolean;
  readonly material?: boolean;
}

/** Trials of methods: what was done, with what, on what, and whether it worked, in words. */
export function trialTable(sheet: Sheet, trials: readonly MethodTrial[], label: string, saidOver: SaidOver = {}): SetTable {
  const day: Column<MethodTrial> = {
    head: 'Date',
    set: 'date',
    bare: true,
    cell: ({ session, date }) => sessionDay(sheet, session, date),
  };
  return setTable<MethodTrial>({
    label,
    set: 'trials',
    columns: [
      ...(saidOver.date ? [] : [day]),
      { head: 'How', names: true, set: 'how', cell: ({ method: { how, note } }) => html`${how}${sub(note)}` },
      {
        head: 'On',
        cell: ({ method: { on, material } }) => html`${partLinks(sheet, on)}${!saidOver.material && sub(material)}`,
      },
      { head: 'With', cell: ({ method }) => consumableLinks(sheet, method.with) },
      { head: 'Result', set: 'result', cell: ({ method: { result } }) => (result === null ? 'not said' : RESULT_WORDS[result]) },
    ],
    groups: rows(trials),
  });
}
