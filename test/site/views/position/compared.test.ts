import { describe, expect, it } from 'vitest';
import type { Session } from '../../../../src/journal/model.ts';
import type { InSessionPicture } from '../../../../src/site/views/position/chronicle.ts';
import { comparedViews } from '../../../../src/site/views/position/compared.ts';

const picture = (file: string, view: string | null, ...shows: string[]): InSessionPicture => ({
  picture: { file, view, shows, named: [], points: [], caption: null, alt: null, inProse: false, unmentioned: false, place: null },
  session: {} as Session,
});

const pairs = (...pictures: InSessionPicture[]): string[] =>
  comparedViews(pictures, (part) => part.replace(/-new$/, '')).map(({ found, left }) => `${found.picture.file} ${left.picture.file}`);

describe('as found beside as left', () => {
  it('stand the pictures that show the same parts, whichever of two parts stood there', () => {
    expect(pairs(picture('a', 'as-found', 'drum'), picture('b', 'as-left', 'drum-new'))).toEqual(['a b']);
  });

  it('stand only pictures that say they are as found and as left', () => {
    expect(pairs(picture('a', 'as-found', 'drum'), picture('b', 'during', 'drum'), picture('c', null, 'drum'))).toEqual([]);
    expect(pairs(picture('a', 'as-left', 'drum'), picture('b', 'as-left', 'drum'))).toEqual([]);
  });

  it('does not stand the whole vehicle beside one drum', () => {
    expect(pairs(picture('van', 'as-found', 'drum', 'door', 'roof'), picture('b', 'as-left', 'drum'))).toEqual([]);
  });

  it('stands what shares most, once; else the earliest as found and the latest as left', () => {
    const founds = [picture('both', 'as-found', 'drum', 'shoes'), picture('drum', 'as-found', 'drum')];
    expect(pairs(...founds, picture('left', 'as-left', 'drum'))).toEqual(['drum left']);
    expect(pairs(...founds, picture('left', 'as-left', 'drum'), picture('later', 'as-left', 'drum', 'shoes'))).toEqual([
      'both later',
      'drum left',
    ]);
    const twice = [picture('1', 'as-found', 'drum'), picture('2', 'as-found', 'drum')];
    expect(pairs(...twice, picture('3', 'as-left', 'drum'), picture('4', 'as-left', 'drum'))).toEqual(['1 4', '2 3']);
    expect(pairs(...twice, picture('3', 'as-left', 'drum'))).toEqual(['1 3']);
  });
});
