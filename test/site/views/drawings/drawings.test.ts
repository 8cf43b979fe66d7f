import { describe, expect, test } from 'vitest';
import { placeStateOf } from '../../../../src/journal/registers/place-state.ts';
import { registerRowAt } from '../../../../src/journal/registers/register.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { drawnMarkup, whereDrawn } from '../../../../src/site/views/drawings/drawn.ts';
import { placesByState, undrawnPlaces } from '../../../../src/site/views/drawings/in-words.ts';
import { stripsOf } from '../../../../src/site/views/drawings/strips.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { compileFiles, note } from '../../../journal/base.ts';

const PARTS = `- { id: drum, name: Brake drum, origin: original }
- { id: drum-repro, name: Brake drum reproduction, origin: reproduction, for: drum, at: shelf B2 }
- { id: hose, name: Hose, origin: original }
- { id: lamp, name: Lamp, origin: original, found: missing }
- { id: seat, name: Seat, origin: original }
`;
const NOTES = {
  'sessions/2031-03-12-drum.md': note('parts: [{ part: drum, did: removed, to: shelf B2 }, { part: hose, did: removed, to: shelf B2 }]'),
  'sessions/2031-03-20-repro.md': '---\ndate: 2031-03-20\ntitle: Back\nparts: [{ part: drum-repro, did: fitted }]\n---\n',
};

/** A drawing as an outside program might save it, and as somebody with bad intent might. */
const HOSTILE = `<?xml version="1.0"?>
<!DOCTYPE svg [<!ENTITY x "y">]>
<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" onload="alert(1)">
<title>Side</title>
<script>alert(2)</script><style>*{fill:url(https://evil.example/x)}</style>
<foreignObject><iframe src="https://evil.example"></iframe></foreignObject>
<image href="https://evil.example/x.png"/><use href="https://evil.example/x.svg#a"/>
<a href="javascript:alert(3)"><path id="lost" d="M0 0h9"/></a>
<g id="layer1" transform="translate(5 5)">
  <path id="drum" onclick="alert(4)" style="fill:#fff;stroke:#000;stroke-width:2;background:url(https://evil.example)" d="M0 0h20v20z"/>
  <g data-part="hose"><rect x="30" y="0" width="9" height="9" fill="url(https://evil.example/p)"/><path d="M1 1h4" fill="none"/></g>
  <circle id="lamp" cx="60" cy="5" r="4"/>
</g>
<path id="drm" d="M9 9h1"/><path data-part="nothing-at-all" d="M9 9h1"/><path id="path1234-5" d="M9 9h2"/>
</svg>`;

const compiled = compileFiles({ parts: PARTS, more: { ...NOTES, 'drawings/side.svg': HOSTILE } });
const record: SiteRecord = {
  ...(compiled.record as NonNullable<typeof compiled.record>),
  pictures: NO_PICTURES,
  warnings: [],
  noteHtml: async () => '',
};
const sheet = sheetOf(record, 'drawings.html');
const [side] = record.journal.drawings;
const markup = (at: string | null) => (side ? drawnMarkup(sheet, side, { at, prefix: 'd' }) : '');

describe('a drawing from outside', () => {
  test('keeps what draws, and nothing that could run, load or lead anywhere', () => {
    expect(markup(null)).not.toMatch(/evil|alert|script|style|onload|onclick|javascript|foreignObject|image|<use|iframe|ENTITY/);
    expect(markup(null)).toContain('d="M0 0h20v20z"');
    expect(markup(null)).toContain('stroke-width="2"');
    expect(side).toMatchObject({ name: 'side', title: 'Side', box: [0, 0, 200, 100], positions: ['drum', 'hose', 'lamp'] });
  });

  test('shapes named for nothing are told where a place was meant, with the one that was meant; names that programs give are not', () => {
    const told = compiled.diagnostics.filter(({ code }) => code === 'A914');
    expect(told.map(({ message, hint, place }) => [message.split('`')[1], hint, place.line])).toEqual([
      ['drm', 'Did you mean `drum`?', 14],
      ['nothing-at-all', expect.stringContaining('Known'), 14],
    ]);
  });

  test.each([
    ['no drawing at all', 'drawings/a.svg', '<p>hello</p>'],
    ['one that says no size', 'drawings/a.svg', '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0"/></svg>'],
  ])('%s is an error with its file', (_, file, text) => {
    const { diagnostics } = compileFiles({ more: { [file]: text } });
    expect(diagnostics.map(({ code, place }) => [code, place.file])).toContainEqual(['A913', file]);
  });
});

describe('what stands in each place', () => {
  const shapeOf = (id: string, at: string | null) =>
    new RegExp(`<a href="parts/${id}.html" class="([^"]*)"><title>([^<]*)</title>.*?fill="([^"]*)"`).exec(markup(at))?.slice(1);

  test('is told by the hatch, by the line and in words, as it was on the day asked for', () => {
    expect(shapeOf('drum', '2031-03-10')).toEqual(['place original asks', 'Brake drum: original, undecided', 'url(#d-original)']);
    expect(shapeOf('drum', '2031-03-12')).toEqual([
      expect.stringMatching(/^place off/),
      expect.stringContaining('Brake drum: off for now'),
      'none',
    ]);
    expect(shapeOf('drum', null)).toEqual([
      expect.stringMatching(/^place stand-in/),
      expect.stringContaining('stand-in: reproduction'),
      'url(#d-reproduction)',
    ]);
    expect(shapeOf('lamp', null)).toEqual(['place missing', 'Lamp: missing', 'none']);
    expect(markup(null)).toContain('id="d-reproduction"');
  });

  test('in words is the same, and places that no drawing shows are listed', () => {
    const states = placesByState(record, new Set(side?.positions), null);
    expect(states.map(({ words, places }) => [words, places.map(({ position }) => position)])).toEqual([
      ['reproduction', ['drum']],
      ['off the vehicle for now', ['hose']],
      ['missing, gone, left off or elsewhere', ['lamp']],
    ]);
    expect(undrawnPlaces(record)).toEqual(['seat']);
  });

  test('a lot of which some are original is neither', () => {
    const lot = compileFiles({
      parts:
        '- { id: stud, name: Studs, origin: original, count: 5 }\n- { id: stud-new, name: New, origin: new, for: stud, count: 2, at: shelf B2 }\n',
      more: { 'sessions/2031-03-12-s.md': note('parts: [{ part: stud, did: removed, count: 2 }, { part: stud-new, did: fitted }]') },
    });
    const row = registerRowAt(lot.record as NonNullable<typeof lot.record>, 'stud', null);
    expect(placeStateOf(row)).toMatchObject({ kind: 'partly', words: expect.stringContaining('3 of 5 original') });
  });
});

test('on the page of a place its shape is drawn once more on top, moved as what it lies in is', () => {
  const where = side && whereDrawn(sheet, side, 'drum');
  expect(where).toMatch(/<g class="marked"><g transform="translate\(5 5\)"><path[^>]*d="M0 0h20v20z"[^>]*><\/path><\/g><\/g><\/svg>$/);
  expect(side && whereDrawn(sheet, side, 'seat')).toBeNull();
});

test('what is no place has a line by which it is seen, also where it was drawn as a plain shape', () => {
  const svg =
    '<svg viewBox="0 0 600 300"><path d="M0 0h600v300z"/><g stroke="#000"><path d="M1 1h2"/></g><path id="drum" d="M9 9h9v9z"/></svg>';
  const { record } = compileFiles({ parts: PARTS, more: { 'drawings/bare.svg': svg } });
  const [bare] = record?.journal.drawings ?? [];
  for (const markup of [bare && whereDrawn(sheet, bare, 'drum'), bare && drawnMarkup(sheet, bare, { at: null, prefix: 'd' })]) {
    const [head = ''] = /^<svg[^>]*>/.exec(markup ?? '') ?? [];
    expect(head).toContain('stroke="currentColor" stroke-width="1"');
    expect(markup).toContain('<path d="M0 0h600v300z"></path>');
  }
});

test('without a drawing each subsystem is a strip, a cell for each place', () => {
  const [strip] = stripsOf(sheet, null, 's');
  expect(strip).toMatchObject({ places: 4 });
  expect(strip?.markup.match(/<a /g)).toHaveLength(4);
  expect(strip?.markup).toContain('<title>Lamp: missing</title>');
});
