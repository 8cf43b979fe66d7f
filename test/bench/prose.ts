import type { NoteDraft } from './note-draft.ts';
import type { Random } from './random.ts';
import { BULLETS, CLOSINGS, OPENINGS } from './trade-sentences.ts';

/**
 * The Markdown under the front matter: a few paragraphs, often a list, now and then a table, links to
 * what the note touched and sometimes to an earlier session.
 *
 * @param earlier the session that last touched a part of tonight
 */
export function prose(random: Random, note: NoteDraft, earlier: string | null): string {
  const said = note.sentences;
  const half = Math.ceil(said.length / 2);
  const blocks = [
    [random.pick(OPENINGS), ...said.slice(0, half)].join(' '),
    said.slice(half).join(' '),
    random.chance(0.3) ? bullets(random) : '',
    note.table.length > 0 && random.chance(0.35) ? table(note.table) : '',
    earlier !== null && random.chance(0.3) ? `See also [the earlier evening](session:${earlier}).` : '',
    random.chance(0.5) ? random.pick(CLOSINGS) : '',
  ];
  return `\n${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function bullets(random: Random): string {
  const chosen = random.shuffle(BULLETS).slice(0, random.between(2, 3));
  return chosen.map((text) => `- ${text}`).join('\n');
}

function table(rows: readonly string[]): string {
  return ['| what | as | reading |', '|---|---|---:|', ...rows].join('\n');
}
