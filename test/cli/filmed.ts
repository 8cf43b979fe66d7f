import { film } from '../photos/sample-film.ts';
import { JOURNAL } from './journal.ts';

/** A journal with a clip beside one of its notes, in which two moments are marked: text a file, or bytes. */
export const FILMED: Readonly<Record<string, string | Uint8Array>> = {
  ...JOURNAL,
  'van/sessions/2031-03-03-film/index.md': `---
date: 2031-03-03
title: Filmed
film:
  - { clip: reel 07.mp4, title: Strip, shows: { "0:12": drum, "1:00": pipe } }
---
`,
  'van/sessions/2031-03-03-film/reel 07.mp4': film(),
};
