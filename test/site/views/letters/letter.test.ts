import { expect, test } from 'vitest';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { PAGES } from '../../../../src/site/addresses.ts';
import { letterOf } from '../../../../src/site/views/letters/letter.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { did, evening, part, soundRecord } from '../../../builders/journal.ts';
import { JOURNAL, journalWith } from '../../../ledger/small-journal.ts';

function askedFor(month: string): readonly string[] {
  const parts = [
    part('shafts'),
    part('shafts-bought', { for: 'shafts', found: 'considered' }),
    part('drum'),
    part('drum-spare', { for: 'drum', store: 'loft' }),
  ];
  const evenings = [
    evening('2030-10-10', { parts: [did('shafts', 'removed', { to: 'loft' }), did('drum', 'removed', { to: 'loft' })] }),
    evening('2030-11-10', { parts: [did('shafts-bought', 'acquired', { from: 'a sale', to: 'loft' })] }),
  ];
  const site = { ...soundRecord({ parts, evenings }), pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') };
  return letterOf(sheetOf(site, PAGES.home), month).wanted;
}

test('a letter says that there is another of what was here by then, and not of what was only thought of', () => {
  expect(askedFor('2030-10')).toEqual(['brakes: drum (there is another) and shafts.']);
  expect(askedFor('2030-11')).toEqual(['brakes: shafts (there is another) and drum (there is another).']);
});

test('what stayed with a former keeper is no other part for a place', () => {
  const asked = (goes: string) => {
    const { record, problems } = journalWith(
      { journal: `${JOURNAL}keeper: rh\n` },
      ['2031-03-01', 'parts: [{ part: drum, did: removed, to: shelf }]'],
      ['2031-03-31', `handed-over: [{ to: jm, how: sold${goes} }]`],
    );
    expect(problems).toEqual([]);
    const site = { ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') };
    return letterOf(sheetOf(site, PAGES.home), '2031-03').wanted;
  };
  expect(asked(', goes: [drum-spare]')).toEqual(['Brakes: Drum (there is another).']);
  expect(asked('')).toEqual(['Brakes: Drum.']);
});

test('an evening that nobody wrote words of is not left bare: the letter tells what was done', () => {
  const evenings = [evening('2030-10-10', { parts: [did('drum', ['removed', 'cleaned'])] })];
  const site = {
    ...soundRecord({ parts: [part('drum')], evenings }),
    pictures: NO_PICTURES,
    warnings: [],
    noteHtml: () => Promise.resolve(''),
  };
  expect(letterOf(sheetOf(site, PAGES.home), '2030-10').evenings.map(({ words }) => words)).toEqual(['Removed and cleaned: drum.']);
});
