import { describe, expect, it } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import { registerAt } from '../../../../src/journal/registers/register.ts';
import { picturePlan } from '../../../../src/photos/plan.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { frontPictures } from '../../../../src/site/views/home/front-pictures.ts';
import { moneyAhead } from '../../../../src/site/views/home/money-ahead.ts';
import { standingOf } from '../../../../src/site/views/home/standing.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { platesBySubsystem, platesOf } from '../../../../src/site/views/pictures/plates.ts';
import { decide, did, evening, part, soundRecord } from '../../../builders/journal.ts';
import { compileFiles, JOURNAL } from '../../../journal/base.ts';
import { renditionOf } from '../pictures/rendition.ts';

const PARTS = `- { id: drum, name: Drum, origin: original }
- { id: hose, name: Hose, origin: original }
- { id: hose-new, name: New hose, origin: new, for: hose, at: shelf A1 }
- { id: door, name: Door, origin: earlier-replacement }
- { id: roof, name: Roof, origin: original }
- { id: studs, name: Studs, origin: original, count: 5 }
`;
const VAN = 'drum, hose, door, roof';
const FIRST = `pictures:
  - { file: van.jpg, shows: [${VAN}, studs], view: as-found, caption: Van }
  - { file: roof.jpg, shows: [roof], view: as-found, caption: Roof }
opens:
  - { id: late, kind: task, what: Late, on: drum }
  - { id: cap, kind: temporary, what: Cap, before: stripped, on: drum }
  - { id: lens, kind: waiting, what: Lens, before: stripped, from: a firm }
  - { id: due, kind: buy, what: Due, before: stripped, price: 12.50, on: drum }
  - { id: after, kind: task, what: After, before: first-start, on: drum, hours: 2h }
  - { id: ask, kind: question, what: Ask, before: stripped, on: drum }
hours: [{ by: jm, on: drum, time: 1h }]`;
const SECOND = `parts: [{ part: hose, did: removed, to: shelf A1 }, { part: hose-new, did: fitted }, { part: studs, did: removed, count: 2, to: shelf A1 }]
pictures:
  - { file: now.jpg, shows: [drum, hose-new, door, roof], view: as-left, caption: Van }
  - { file: later.jpg, shows: [drum, hose-new, door, roof], view: as-left, caption: Later }
  - { file: canvas.jpg, shows: [roof], view: as-left, caption: Roof }`;
const note = (date: string, fields: string) => `---\ndate: ${date}\ntitle: Evening\n${fields}\n---\nNothing.\n`;

const FILES = ['1/van', '1/roof', '2/now', '2/later', '2/canvas'].map((name) => `sessions/2031-03-1${name}.jpg`);

function sheetWith(journal: string, renditions = FILES) {
  const { record, diagnostics } = compileFiles({
    journal,
    parts: PARTS,
    more: { 'sessions/2031-03-11/index.md': note('2031-03-11', FIRST), 'sessions/2031-03-12/index.md': note('2031-03-12', SECOND) },
    assets: FILES,
  });
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  const pictures = picturePlan({ renditions: renditions.map(renditionOf), papers: [], inOrder: [] });
  return sheetOf(
    { ...(record as NonNullable<typeof record>), pictures, warnings: [], noteHtml: async () => '' } as SiteRecord,
    'index.html',
  );
}
const CHOSEN = `${JOURNAL}front: sessions/2031-03-12/now.jpg\n`;
const nameOf = (file: string | undefined) => file?.slice(file.lastIndexOf('/') + 1);

describe('the front page', () => {
  it('counts what the works put there by places for a single part, and by pieces of lots', () => {
    const { single, lots } = standingOf(sheetWith(JOURNAL).record);
    expect([single, lots]).toEqual([
      { all: 4, original: 2 },
      { all: 5, original: 3 },
    ]);
  });

  it('counts a place once that holds what was not decided for more reasons than one', () => {
    const other = (id: string, origin: 'new' | 'donor') => part(id, { for: 'studs', origin, count: 2, store: 'loft' });
    const parts = [part('studs', { count: 4 }), other('studs-new', 'new'), other('studs-donor', 'donor')];
    const decisions = [decide('studs', 'keep')];
    const out = [did('studs', 'removed', { to: 'loft' }), did('studs-new', 'fitted'), did('studs-donor', 'fitted')];
    const record = soundRecord({ parts, evenings: [evening('2030-10-10', { decisions }), evening('2030-10-11', { parts: out })] });
    expect(registerAt(record, null).map(({ mismatches }) => mismatches.length)).toEqual([2]);
    expect(standingOf(record).mismatches).toBe(1);
  });

  it('names three jobs: what is due before the next milestone, then the oldest; nothing that waits for others, no temporary measure', () => {
    expect(standingOf(sheetWith(JOURNAL).record).jobs.map(({ id }) => id)).toEqual(['due', 'ask', 'late']);
  });

  it('says what it has cost and will have cost at least, and how many open items are in no sum', () => {
    // An hour at £28.00; £12.50 to buy; two hours ahead at what an hour has cost.
    expect(moneyAhead(sheetWith(JOURNAL))).toEqual({ soFar: '£28.00', willHave: '£96.50', unsaid: 'Four open items have no figure yet.' });
  });

  it('speaks of no money where the journal has none', () => {
    const sheet = sheetWith(JOURNAL);
    expect(moneyAhead({ ...sheet, figures: { ...sheet.figures, hasMoney: false } })).toBeNull();
  });

  it('stands the arrival beside the chosen picture, which then stands nowhere else', () => {
    const { chosen, whole } = frontPictures(sheetWith(CHOSEN), 5);
    expect([chosen, nameOf(whole?.found.picture.file), nameOf(whole?.left.picture.file)]).toEqual([null, 'van.jpg', 'now.jpg']);
  });

  it('else the first as found of the whole beside the last as left of the whole; two views of a roof are not the whole', () => {
    const pair = ({ whole }: ReturnType<typeof frontPictures>) =>
      whole && [whole.found, whole.left].map(({ picture }) => nameOf(picture.file));
    expect(pair(frontPictures(sheetWith(JOURNAL), 5))).toEqual(['van.jpg', 'later.jpg']);
    expect(
      pair(
        frontPictures(
          sheetWith(
            CHOSEN,
            FILES.filter((file) => !/now|later/.test(file)),
          ),
          5,
        ),
      ),
    ).toBeNull();
  });
});

describe('plates before and after', () => {
  it('are each pair once, with the positions that both show, and only of what can be shown', () => {
    const of = (renditions?: string[]) =>
      platesOf(sheetWith(JOURNAL, renditions).record).map(({ found, left, positions }) =>
        [nameOf(found.picture.file), nameOf(left.picture.file), positions.join('+')].join(' '),
      );
    expect(of()).toEqual(['van.jpg later.jpg drum+hose+door+roof', 'roof.jpg canvas.jpg roof']);
    expect(of(FILES.filter((file) => !file.includes('canvas')))).toEqual(['van.jpg later.jpg drum+hose+door+roof']);
  });

  it('stand under the subsystem of the first position they show', () => {
    expect([...platesBySubsystem(sheetWith(JOURNAL).record)].map(([id, list]) => [id, list.length])).toEqual([['brakes', 2]]);
  });
});

it('who put in the hours is counted where the copy names them, and not where all are as one', () => {
  const { record } = sheetWith(JOURNAL);
  expect(standingOf(record)).toMatchObject({ people: 1, minutes: 60 });
  expect(standingOf(copyOf(record, 'public'))).toMatchObject({ people: null, minutes: 60 });
  expect(standingOf(record)).toMatchObject({ sessions: 2, worked: 1 });
});
