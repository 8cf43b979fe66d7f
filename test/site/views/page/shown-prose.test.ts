import { describe, expect, test } from 'vitest';
import { openingWords } from '../../../../src/site/views/home/opening-words.ts';
import { shownProse } from '../../../../src/site/views/page/shown-prose.ts';

/** Each hides the word that must not come out. */
const HIDING: readonly string[] = [
  'Seen. <!-- if a > b then hidden -->',
  '<!-- a > b\n\nhidden\n-->\n\nSeen.',
  '<!--\n> hidden',
  'Seen.\n\n[//]: # (hidden)',
  'Seen.\n\n[comment]: <> "hidden\nhidden"',
  'Seen. <b title="a > hidden">bold</b>',
  "<div data-x='>' data-y='hidden'>Seen.</div>",
  'Seen. <script>hidden()</script>',
  '<script>\nif (a > b) hidden()\n</script>\n\nSeen.',
  'Seen. <?php echo "hidden"; ?>',
  'Seen. <!DOCTYPE hidden>',
  'Seen. <![CDATA[ hidden ]]>',
  '- a list\n  <!-- > hidden -->\n\nSeen.',
  '| a | b |\n| - | - |\n| Seen <!-- > hidden --> | c |',
  '> quoted <!--\n> a > hidden -->\n\nSeen.',
];

describe('what a note keeps to itself is not shown', () => {
  test.each(HIDING)('%j', (body) => {
    expect(shownProse(body)).not.toContain('hidden');
    expect(openingWords(body, 500)).not.toContain('hidden');
  });
});

test.each([
  ['The bore is <b>pitted</b> beyond honing.', 'The bore is  pitted  beyond honing.'],
  ['<div>\n<p>In a box.</p>\n</div>', 'In a box.'],
  ['Less than < five, and `<!-- code -->` stays.', 'Less than < five, and `<!-- code -->` stays.'],
  ['Plain [words](part:drum).', 'Plain [words](part:drum).'],
])('what its page shows stays: %j', (body, shown) => {
  expect(shownProse(body).trim()).toBe(shown);
});
