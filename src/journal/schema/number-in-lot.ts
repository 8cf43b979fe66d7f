import { bad, ok, type Reading } from '../values/reading.ts';
import { having } from './facts.ts';
import { read } from './fields.ts';

/** The number of one of a lot whose parts are told apart. */
export const numberInLot = having(
  read((written): Reading<number> => {
    if (/^[1-9]\d{0,5}$/.test(written)) return ok(Number(written));
    return bad('A310', `\`${written}\` is not the number of one of a lot.`, numberHint(written));
  }),
  { form: 'a whole number from 1', writtenAs: 'number' },
);

/** So many are written out where somebody wrote the first and the last. */
const MOST_WRITTEN_OUT = 20;

function numberHint(written: string): string {
  if (/^\d+(?:\s*,\s*\d+)+$/.test(written)) return `Several stand in brackets: \`[${written}]\`.`;
  const [, first = 0, last = 0] = (/^([1-9]\d{0,3}) ?(?:-|–|\.\.|to) ?([1-9]\d{0,3})$/.exec(written) ?? []).map(Number);
  if (last > first && last - first < MOST_WRITTEN_OUT)
    return `Write each of them: \`[${Array.from({ length: last - first + 1 }, (_, n) => first + n).join(', ')}]\`.`;
  const numeral = ROMAN.indexOf(written.toUpperCase()) + 1;
  return numeral > 0 ? `Write \`${numeral}\`, whatever is cut into it.` : 'Write its number, from 1, in the order of `numbered`.';
}

const ROMAN = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII', 'VIII', 'IX', 'X', 'XI', 'XII'];
