/** The demo site by axe-core: the other half of its kinds of pages, and pictures that are laid over each other. */
import { accessibleKinds, accessiblePictures } from './of-the-site/accessibility.ts';
import { onTheDemo } from './on-the-demo.ts';

onTheDemo(accessibleKinds(1), accessiblePictures);
