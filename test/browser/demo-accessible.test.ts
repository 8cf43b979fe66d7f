/** One half of the kinds of pages of the demo site, each opened once: that it loads whole, and by axe-core. */
import { kindsOfPages } from './of-the-site/accessibility.ts';
import { onTheDemo } from './on-the-demo.ts';

onTheDemo(kindsOfPages(0));
