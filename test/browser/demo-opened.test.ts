/** Every kind of page of the demo site opened: on the web, from a disk, without script, on paper, on a phone. */

import { fromDisk } from './of-the-site/from-disk.ts';
import { onAPhone } from './of-the-site/on-a-phone.ts';
import { onPaper } from './of-the-site/on-paper.ts';
import { onTheWeb } from './of-the-site/on-the-web.ts';
import { withoutScript } from './of-the-site/without-script.ts';
import { onTheDemo } from './on-the-demo.ts';

onTheDemo(onTheWeb, fromDisk, withoutScript, onPaper, onAPhone);
