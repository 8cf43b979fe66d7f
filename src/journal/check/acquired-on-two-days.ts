import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { JournalRecord } from '../record.ts';

/** A part that the catalogue dates came on that day; what had gone and came back may do so on any. */
export function acquiredOnTwoDays({ journal, history }: Pick<JournalRecord, 'journal' | 'history'>): Diagnostic[] {
  return history.deeds.flatMap(({ did, part: id, date, from, entry }) => {
    const part = journal.parts.get(id);
    const dated = part?.acquired ?? null;
    if (!part || dated === null || dated === date || (did !== 'acquired' && did !== 'made')) return [];
    if (from.at === 'gone' || from.at === 'missing') return [];
    const message = `\`${id}\` was ${did} on ${date} here, and the catalogue says that it came on ${dated}.`;
    const hint = `Correct one of them; or leave \`acquired\` out of the catalogue: this note says when it came.`;
    return [
      diagnostic('A514', entry.place, message, { hint, related: [{ place: part.place, message: `\`acquired: ${dated}\` is said here.` }] }),
    ];
  });
}
