import { didYouMean } from '../../journal/diagnostics/nearest.ts';
import { repaired } from '../../journal/diagnostics/repair.ts';
import { mentionsIn } from '../../journal/mentions/mentions.ts';
import { RENAMED_SORTS, type Refused, type RenamedSort, renaming } from '../../journal/mentions/renaming.ts';
import { counted } from '../../site/views/page/words.ts';
import { changeFiles, type TextChange, textOf } from '../change-files.ts';
import { CONTENT, type Command, DRY, type Option } from '../command.ts';
import type { Effects } from '../effects.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { journalFolder, type OpenedJournal, openJournal, shownFrom } from '../the-journal.ts';

const EITHER: Option = { type: 'string', value: 'SORT', help: 'what is meant where a name could be of SORT and of another sort' };

/** Another name for a thing, wherever it is named: in catalogues, notes, the links of the prose, and drawings. */
export const rename: Command = {
  name: 'rename',
  summary: 'gives a thing another name, in every file that names it; all of them or none',
  takes: ['SORT', 'OLD', 'NEW'],
  options: { content: CONTENT, 'dry-run': DRY, either: EITHER },
  more: `SORT is ${RENAMED_SORTS.join(', ')}. Comments and all other letters stay as they are. Where a note may mean two things by the name, nothing is renamed until --either says which.`,
  run: async (values, [named = '', old = '', name = ''], effects) => {
    const sort = sortNamed(named);
    const opened = await openJournal(journalFolder(values, effects), effects);
    const { files } = opened.sources;
    const paths = files.map(({ path }) => path);
    const either = typeof values.either === 'string' ? sortNamed(values.either) : null;
    const result = renaming(mentionsIn(opened.sources), paths, sort, bagNumber(sort, old), bagNumber(sort, name), either);
    if ('problem' in result) throw new Refusal(EXIT.notUnderstood, refusalText(result, opened, effects));
    const { edits, moved } = result;
    const changes = files.flatMap(({ path, bytes }): TextChange[] => {
      const own = edits.filter(({ place }) => place.file === path);
      const to = moved?.from === path ? moved.to : path;
      return own.length === 0 && to === path ? [] : [{ path, to, becomes: repaired(textOf(bytes), own) }];
    });
    const dry = values['dry-run'] === true;
    changeFiles(opened, changes, effects, dry);
    const where = `${counted(edits.length, 'mention')} in ${counted(changes.length, 'file')}`;
    effects.err(`${where} ${dry ? 'would be changed' : 'changed'}.\n`);
    return EXIT.done;
  },
};

/** What stands in the way, with each line that it is about. */
function refusalText({ problem, hint, places = [] }: Refused, { folder, sources }: OpenedJournal, { cwd }: Effects): string {
  if (places.length === 0) return [problem, hint].filter(Boolean).join(' ');
  const linesOf = new Map(sources.files.map(({ path, bytes }) => [path, textOf(bytes).split(/\r\n|[\r\n]/)]));
  const shown = shownFrom(cwd, folder);
  const lines = places.map(({ file, line }) => `  ${shown(file)}:${line}  ${linesOf.get(file)?.[line - 1]?.trim() ?? ''}`);
  return [problem, ...lines, 'Nothing was changed.', hint].filter(Boolean).join('\n');
}

function sortNamed(named: string): RenamedSort {
  const sort = RENAMED_SORTS.find((each) => each === named);
  if (sort) return sort;
  const hint = didYouMean(named, RENAMED_SORTS) ?? '';
  throw new Refusal(EXIT.notUnderstood, `\`${named}\` is none of ${RENAMED_SORTS.join(', ')}. ${hint}`.trim());
}

/** `bag 14` and `014` are bag 14. */
function bagNumber(sort: RenamedSort, name: string): string {
  return sort === 'bag' ? name.replace(/^bag\s+/i, '').replace(/^0+(?=\d)/, '') : name;
}
