import { didYouMean } from '../../journal/diagnostics/nearest.ts';
import { repaired } from '../../journal/diagnostics/repair.ts';
import { mentionsIn } from '../../journal/mentions/mentions.ts';
import { RENAMED_SORTS, type RenamedSort, renaming } from '../../journal/mentions/renaming.ts';
import { counted } from '../../site/views/page/words.ts';
import { changeFiles, type TextChange, textOf } from '../change-files.ts';
import { CONTENT, type Command, DRY } from '../command.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { journalFolder, openJournal } from '../the-journal.ts';

/** Another name for a thing, wherever it is named: in catalogues, notes, the links of the prose, and drawings. */
export const rename: Command = {
  name: 'rename',
  summary: 'gives a thing another name, in every file that names it; all of them or none',
  takes: ['SORT', 'OLD', 'NEW'],
  options: { content: CONTENT, 'dry-run': DRY },
  more: `SORT is ${RENAMED_SORTS.join(', ')}. Comments and all other letters stay as they are.`,
  run: async (values, [named = '', old = '', name = ''], effects) => {
    const sort = sortNamed(named);
    const opened = await openJournal(journalFolder(values, effects), effects);
    const { files } = opened.sources;
    const paths = files.map(({ path }) => path);
    const result = renaming(mentionsIn(opened.sources), paths, sort, bagNumber(sort, old), bagNumber(sort, name));
    if ('problem' in result) throw new Refusal(EXIT.notUnderstood, [result.problem, result.hint].filter(Boolean).join(' '));
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
