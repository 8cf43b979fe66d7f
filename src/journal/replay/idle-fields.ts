import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { ActionWord, PartEntry } from '../model.ts';

/** A field that says something of an action: of which ones, and whether the entry has it. */
interface Saying {
  readonly field: string;
  readonly of: readonly ActionWord[];
  says(entry: PartEntry): boolean;
}

const SAYINGS: readonly Saying[] = [
  { field: 'how', of: ['gone'], says: ({ how }) => how !== null && how !== 'loan' && how !== 'made-safe' },
  { field: 'how', of: ['sent-out'], says: ({ how }) => how === 'loan' },
  { field: 'into', of: ['fitted', 'gone'], says: ({ into }) => into.length > 0 },
  { field: 'pattern', of: ['made'], says: ({ pattern }) => pattern !== null },
  { field: 'as-was', of: ['fitted'], says: ({ asWas }) => asWas !== null },
  { field: 'work', of: ['sent-out'], says: ({ work }) => work !== null },
  { field: 'due', of: ['sent-out'], says: ({ due }) => due !== null },
  { field: 'quoted', of: ['sent-out'], says: ({ quoted }) => quoted !== null },
];

/** A field that says something of an action that the entry does not have: the action was meant and not recorded. */
export function idleField(entry: PartEntry): Diagnostic | null {
  const idle = SAYINGS.find(({ of, says }) => says(entry) && !of.some((word) => entry.did.includes(word)));
  if (!idle) return null;
  const words = idle.of.map((word) => `\`${word}\``).join(' or ');
  const message = `\`${idle.field}\` says something of ${words}, and \`${entry.part}\` was not ${words.replaceAll('`', '').replaceAll('-', ' ')} in this entry.`;
  return diagnostic('A522', entry.place, message, { hint: `Add the action to \`did\`, or leave \`${idle.field}\` out.` });
}
