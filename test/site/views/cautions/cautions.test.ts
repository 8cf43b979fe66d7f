import { expect, it } from 'vitest';
import { HAZARDS } from '../../../../src/journal/model.ts';
import { CAUTIONS, COMPETENT_FIRST } from '../../../../src/site/views/cautions/cautions.ts';

it('every hazard of the format has its usual caution, and each says where it is from', () => {
  expect(Object.keys(CAUTIONS).sort()).toEqual([...HAZARDS].sort());
  for (const { text, source } of Object.values(CAUTIONS)) {
    expect(text).toMatch(/\.$/);
    expect(source).toMatch(/EPA|HSE|NIOSH|textbook|[Pp]ractice/);
  }
  expect(COMPETENT_FIRST).toMatch(/law.*licensed or competent person/);
});
