import { didYouMean } from '../../journal/diagnostics/nearest.ts';
import { type Mention, mentionsIn } from '../../journal/mentions/mentions.ts';
import { nameTaken } from '../../journal/mentions/renaming.ts';
import type { Part } from '../../journal/model.ts';
import { textOf } from '../change-files.ts';
import { CONTENT, type Command } from '../command.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { asText } from '../new-note/as-text.ts';
import { journalFolder, type OpenedJournal, openJournal, shownFrom } from '../the-journal.ts';

/** What to write for a part that proves to be two. Which of them each line means only the restorer knows, so nothing is written. */
export const split: Command = {
  name: 'split',
  summary: 'says what to write where a part proves to be two; it writes nothing',
  takes: ['PART', 'NEW'],
  options: { content: CONTENT },
  more: 'NEW is the id of the second one. For a part that becomes another altogether, `asfound rename part`.',
  run: async (values, [id = '', other = ''], effects) => {
    const opened = await openJournal(journalFolder(values, effects), effects);
    const parts = opened.record?.journal.parts ?? new Map<string, Part>();
    const part = parts.get(id);
    if (!part) throw new Refusal(EXIT.notUnderstood, `there is no part \`${id}\`. ${didYouMean(id, parts.keys()) ?? ''}`.trim());
    const mentions = mentionsIn(opened.sources);
    const refused = nameTaken(mentions, 'part', other);
    if (refused) throw new Refusal(EXIT.notUnderstood, [refused.problem, refused.hint].filter(Boolean).join(' '));
    const named = mentions.all.filter((one) => one.sort === 'part' && one.name === id && !one.brings);
    const shown = shownFrom(effects.cwd, opened.folder);
    const steps = [catalogueStep(part, other, shown), ...mentionsStep(named, part, other, opened, shown), opinionStep(part, other)];
    effects.out(steps.map((step, n) => `${n + 1}. ${step}\n`).join('\n'));
    return EXIT.done;
  },
};

type Shown = (file: string) => string;

function catalogueStep({ id, name, origin, position, makesPosition, inside, count, place }: Part, other: string, shown: Shown): string {
  const where = !makesPosition ? `, for: ${position}` : inside === null ? '' : `, in: ${inside}`;
  const entry = `- { id: ${other}, name: ${asText(`${name.split(',')[0]}, the other`)}${origin === null ? '' : `, origin: ${origin}`}${where} }`;
  const lot = count > 1 ? `\n   ${id} has \`count: ${count}\`; where some of these are the new ones, give each its own \`count\`.` : '';
  const within = `\n   If it is a piece of ${id} that comes off by itself, \`in: ${makesPosition ? id : position}\` makes it go where that goes.`;
  return `Below ${shown(place.file)}:${place.line}, in the catalogue:\n   ${entry}${lot}${within}`;
}

/** Every line that names the part, with what stands there. */
function mentionsStep(named: readonly Mention[], { id }: Part, other: string, { sources }: OpenedJournal, shown: Shown): string[] {
  if (named.length === 0) return [];
  const lines = new Map(sources.files.map(({ path, bytes }) => [path, textOf(bytes).split(/\r\n|[\r\n]/)]));
  const seen = new Set<string>();
  const list = named.flatMap(({ place }) => {
    const at = `${shown(place.file)}:${place.line}`;
    if (seen.has(at)) return [];
    seen.add(at);
    return [`\n   ${at}  ${lines.get(place.file)?.[place.line - 1]?.trim() ?? ''}`];
  });
  return [`Where one of these means the new one, write ${other}; where it means both, \`part: [${id}, ${other}]\`:${list.join('')}`];
}

function opinionStep({ id, origin }: Part, other: string): string {
  const believed = origin ?? 'unknown';
  return [
    'In the note of the evening on which it came out:',
    `parts: [{ part: [${id}, ${other}], did: inspected, note: "Two, not one: …" }]`,
    `attributed: [{ part: ${other}, origin: ${believed}, because: … }]`,
  ].join('\n   ');
}
