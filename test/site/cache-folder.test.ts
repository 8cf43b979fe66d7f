import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cacheFolder } from '../../src/site/cache-folder.ts';
import { PROGRAM } from '../../src/site/tool-digest.ts';

describe('the cache', () => {
  it('lies where the environment says, else beside the installed packages: in no journal and no site', () => {
    expect(cacheFolder({ ASFOUND_CACHE: '/somewhere/else' })).toBe('/somewhere/else');
    expect(cacheFolder({ ASFOUND_CACHE: '' })).toBe(join(PROGRAM, 'node_modules/.cache/asfound'));
    expect(cacheFolder({})).toBe(join(PROGRAM, 'node_modules/.cache/asfound'));
  });
});
