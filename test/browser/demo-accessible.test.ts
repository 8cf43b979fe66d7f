/** The demo site by axe-core. */
import { accessibility } from './of-the-site/accessibility.ts';
import { onTheDemo } from './on-the-demo.ts';

onTheDemo(accessibility);
