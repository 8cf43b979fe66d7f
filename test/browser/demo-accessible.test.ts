/** The demo site by axe-core: one half of its kinds of pages. */
import { accessibleKinds } from './of-the-site/accessibility.ts';
import { onTheDemo } from './on-the-demo.ts';

onTheDemo(accessibleKinds(0));
