/** The other half of the kinds of pages of the demo site, and pictures that are laid over each other by axe-core. */
import { accessiblePictures, kindsOfPages } from './of-the-site/accessibility.ts';
import { onTheDemo } from './on-the-demo.ts';

onTheDemo(kindsOfPages(1), accessiblePictures);
