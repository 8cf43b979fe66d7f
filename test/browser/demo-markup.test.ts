/** Every page of the demo site as text: links, figures, bills, HTML. */

import { bills } from './of-the-site/bills.ts';
import { figures } from './of-the-site/figures.ts';
import { links } from './of-the-site/links.ts';
import { validity } from './of-the-site/validity.ts';
import { onTheDemo } from './on-the-demo.ts';

onTheDemo(links, figures, bills, validity);
