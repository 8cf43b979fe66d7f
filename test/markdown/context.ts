import type { NoteContext } from '../../src/markdown/note-context.ts';
import { renderNote } from '../../src/markdown/render.ts';

/** A journal of which a note can name nothing. */
export const EMPTY: NoteContext = { folder: 'sessions/2031-03-12-brakes', targets: new Map(), pictures: new Map(), files: new Map() };

/** The HTML of a note that knows a drum, a bag, a paper and two pictures. */
export function htmlOf(body: string): string {
  const picture = (name: string, caption: string | null) => ({
    alt: `alt of ${name}`,
    caption,
    width: 2048,
    height: 1536,
    src: `../pictures/${name}-1280.jpg`,
    sources: [{ type: 'image/webp', srcset: `../pictures/${name}-480.webp 480w` }],
    widths: '(min-width: 60rem) 46rem, 100vw',
    full: `../pictures/${name}-2048.webp`,
    colour: '#7a6a58',
    taken: name === 'drum' ? '20:15' : '',
    points: [],
    ofBag: false,
  });
  return renderNote(body, {
    ...EMPTY,
    targets: new Map([
      ['part:drum', { href: '../parts/drum.html#drum', label: 'Front drum' }],
      ['bag:14', { href: '../bags.html#bag-14', label: 'bag 14' }],
    ]),
    pictures: new Map([
      ['sessions/2031-03-12-brakes/drum.jpg', picture('drum', 'As it came off.')],
      ['sessions/2031-03-12-brakes/shoe one.jpg', picture('shoe', null)],
    ]),
    files: new Map([['sessions/2031-03-12-brakes/receipt.pdf', '../papers/receipt-0f.pdf']]),
  }).html;
}
