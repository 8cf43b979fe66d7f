/** The demo site as a reader uses it: by the contents, by keys, by search, through pictures, lives and past days. */

import { anyDay } from './of-the-site/any-day.ts';
import { asAt } from './of-the-site/as-at.ts';
import { gettingAbout } from './of-the-site/getting-about.ts';
import { keyboard } from './of-the-site/keyboard.ts';
import { lives } from './of-the-site/lives.ts';
import { narrowing } from './of-the-site/narrowing.ts';
import { pictures } from './of-the-site/pictures.ts';
import { search } from './of-the-site/search.ts';
import { states } from './of-the-site/states.ts';
import { onTheDemo } from './on-the-demo.ts';

onTheDemo(gettingAbout, narrowing, keyboard, search, pictures, asAt, anyDay, states, lives);
