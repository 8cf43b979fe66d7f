/** What is known of the thing that is named where one stands. */
import { type Hover, MarkupKind } from 'vscode-languageserver';
import type { Decision, Part } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { decisionsInForce } from '../../journal/registers/decisions-in-force.ts';
import { marksOf } from '../../journal/registers/observations.ts';
import { originAt } from '../../journal/registers/origins.ts';
import { originInWords } from '../../journal/replay/words.ts';
import { typedName } from '../things.ts';
import type { State } from '../workspace.ts';
import { mentionAt, rangeOf, type Spot } from './ranges.ts';

/** Its name, how it stands, and of a part what has been decided on its position; null where nothing is named. */
export function hoverAt(state: State, spot: Spot): Hover | null {
  const mention = mentionAt(state, spot);
  const thing = mention && state.thing(mention.sort, mention.name);
  if (!mention || !thing) return null;
  const part = thing.sort === 'part' ? state.record?.journal.parts.get(thing.id) : undefined;
  const title = thing.name === thing.id ? `**${escaped(thing.id)}**` : `**${escaped(thing.name)}**, \`${typedName(thing)}\``;
  const lines = [
    title,
    part && state.record ? originInWords(originAt(state.record, part.id, state.record.day)) : '',
    escaped(thing.now),
    part && state.record ? escaped(marksOf(state.record, part.id).join('; ')) : '',
    ...(part && state.record ? decidedOn(state.record, part) : []),
  ];
  return {
    contents: { kind: MarkupKind.Markdown, value: lines.filter((line) => line !== '').join('\n\n') },
    range: rangeOf(mention.place),
  };
}

/** The decisions in force on the position that a part belongs to, newest first, as a reader says them. */
function decidedOn({ journal, history, day }: JournalRecord, { position }: Part): string[] {
  const places = journal.positions.get(position)?.count ?? 1;
  return decisionsInForce(history.decisions.get(position) ?? [], places, day).map(({ decision, count }) => {
    const some = places > count ? ` (${count} of ${places})` : '';
    return escaped(`Decided ${decision.date}: ${verdictOf(decision)}${some}${decision.because === null ? '' : `. ${decision.because}`}`);
  });
}

function verdictOf({ verdict, part, with: other }: Decision): string {
  return other === null ? `${verdict} ${part}` : `${verdict} ${part} with ${other}`;
}

/** What a user wrote is text, not Markdown. */
function escaped(text: string): string {
  return text.replaceAll(/[\\`*_{}[\]<>#|]/g, '\\$&');
}
