import { describe, expect, test } from 'vitest';
import { pictureFragment, readPicturePlace } from '../../src/journal/values/picture-place.ts';

describe('a place in a picture, as the spatial dimension of W3C Media Fragments URI 1.0 (section 4.2.2) has it, in per cent', () => {
  test.each([
    ['12,40', { x: 12, y: 40, width: null, height: null }],
    ['12, 40, 18, 22', { x: 12, y: 40, width: 18, height: 22 }],
    ['0,0,100,100', { x: 0, y: 0, width: 100, height: 100 }],
    ['12.5,40.25', { x: 12.5, y: 40.25, width: null, height: null }],
    // The standard's own example of per cents, section 4.2.2.
    ['xywh=percent:25,25,50,50', { x: 25, y: 25, width: 50, height: 50 }],
  ])('%s', (text, value) => expect(readPicturePlace(text)).toEqual({ ok: true, value }));

  test.each(['', '12', '12,40,18', '-1,4', '12,40,0,5', '90,10,20,5', '10,90,5,20', 'a,b', '120,3'])('%s is none', (text) => {
    expect(readPicturePlace(text)).toMatchObject({ ok: false, code: 'A915' });
  });

  // The grammar of the standard takes whole numbers only.
  test.each([
    ['12.5,40.25,18,22', 'xywh=percent:13,40,18,22'],
    ['12,40', 'xywh=percent:12,40,1,1'],
  ])('%s as a fragment', (text, fragment) => {
    const place = readPicturePlace(text);
    expect(place.ok && pictureFragment(place.value)).toBe(fragment);
  });
});
