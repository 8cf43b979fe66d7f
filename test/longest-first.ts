/** The order of the files of tests: the longest first, so that no processor waits for one at the end. */
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** What takes longest, longest first, each ten seconds of a processor or more; a checkout that never ran them cannot know. */
export const LONGEST = [
  'test/browser/long.test.ts',
  'test/browser/demo-opened.test.ts',
  'test/browser/demo-used.test.ts',
  'test/browser/demo-accessible-too.test.ts',
  'test/browser/demo-accessible.test.ts',
  'test/browser/demo-markup.test.ts',
  'test/browser/pictures.test.ts',
  'test/write/page/nothing-lost.test.ts',
  'test/write/page/in-hand.test.ts',
  'test/site/rebuilds.test.ts',
  'test/photos/cache.test.ts',
  'test/photos/hostile-papers.test.ts',
  'test/exports/office.test.ts',
  'test/cli/build.test.ts',
  'test/site/fields-are-read.test.ts',
  'test/cli/dev.test.ts',
  'test/editor/language-server.test.ts',
];

/** The place in the list; behind all of it for what is not there. */
function placeOf({ moduleId }: TestSpecification): number {
  const place = LONGEST.findIndex((path) => moduleId.endsWith(`/${path}`));
  return place === -1 ? LONGEST.length : place;
}

/** Files of one project stay together. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const projects = [...new Set(sorted.map(({ project }) => project))];
    return projects.flatMap((one) => sorted.filter(({ project }) => project === one).sort((a, b) => placeOf(a) - placeOf(b)));
  }
}
