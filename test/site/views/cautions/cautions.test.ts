import { expect, it } from 'vitest';
import { HAZARDS } from '../../../../src/journal/model.ts';
import { CAUTIONS, COMPETENT_FIRST } from '../../../../src/site/views/cautions/cautions.ts';

it('every hazard of the format has its usual caution, and each says where it is from', () => {
  expect(Object.keys(CAUTIONS).sort()).toEqual([...HAZARDS].sort());
  for (const { text, sources } of Object.values(CAUTIONS)) {
    expect(text).toMatch(/\.$/);
    expect(sources.length).toBeGreaterThan(0);
    for (const { name, standing, address } of sources) {
      expect(standing === 'read' ? name : 'authority').toMatch(/EPA|OSHA|HSE|NIOSH|textbook|Fire|authority/);
      expect(address ?? 'https://').toMatch(/^https:\/\//);
    }
  }
  expect(CAUTIONS['lead-paint'].text).toMatch(/burning off.*hot-air.*[Cc]hildren.*P3/s);
  expect(CAUTIONS.battery.text).toMatch(/acid.*short circuit/s);
  for (const hazard of ['asbestos', 'brake-fluid'] as const) expect(CAUTIONS[hazard].text).toMatch(/competent person before the road/);
  expect(COMPETENT_FIRST).toMatch(/law.*licensed or competent person/);
});
