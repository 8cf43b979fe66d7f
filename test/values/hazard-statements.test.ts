import { describe, expect, test } from 'vitest';
import { HAZARD_STATEMENTS, statementCode, statementWords } from '../../src/journal/values/hazard-statements.ts';

/** Numbers of one run of codes: `H220-H232`. */
const run = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, n) => `H${from + n}`);

// Codes of the UN GHS, tenth revised edition, annex 3, tables A3.1.1 to A3.1.3, as listed in the summary of the US
// National Library of Medicine; H200 to H203 stay, as labels under the CLP Regulation carry them.
const ANNEX_3 = [
  ...run(200, 211),
  ...run(220, 232),
  ...run(240, 242),
  ...run(250, 252),
  ...run(260, 261),
  ...run(270, 272),
  ...run(280, 284),
  'H290',
  ...run(300, 305),
  ...run(310, 320),
  ...run(330, 336),
  ...run(340, 341),
  ...run(350, 351),
  ...run(360, 362),
  ...run(370, 373),
  ...run(400, 402),
  ...run(410, 413),
  'H420',
];

describe('hazard statements', () => {
  test('every code of annex 3 of the GHS has its words', () => {
    expect(ANNEX_3.filter((code) => statementWords(code) === null)).toEqual([]);
    const plain = [...HAZARD_STATEMENTS.keys()].filter((code) => /^H\d{3}$/.test(code));
    expect(plain.sort()).toEqual([...ANNEX_3].sort());
  });

  test.each([
    // CLP Regulation (EC) 1272/2008, annexes III and VI, as read in copies.
    ['H350i', 'May cause cancer by inhalation'],
    ['H360FD', 'May damage fertility. May damage the unborn child'],
    ['H360Fd', 'May damage fertility. Suspected of damaging the unborn child'],
    ['H302+H332', 'Harmful if swallowed or if inhaled'],
    ['H300+H310+H330', 'Fatal if swallowed, in contact with skin or if inhaled'],
    ['H310', 'Fatal in contact with skin'],
    ['H260', 'In contact with water releases flammable gases which may ignite spontaneously'],
    ['EUH066', 'Repeated exposure may cause skin dryness or cracking'],
    ['EUH441', 'Strongly accumulates in the environment and living organisms including in humans'],
  ])('%s: %s', (code, words) => {
    expect(statementWords(code)?.words).toBe(words);
  });

  test('the GHS and the CLP Regulation are each in their own spelling', () => {
    expect(statementWords('H229')).toEqual({
      words: 'Pressurized container: may burst if heated',
      clp: 'Pressurised container: May burst if heated',
    });
    expect(statementWords('H225')?.clp).toBeNull();
  });

  test('a combination is read with spaces and in any order, and has the words of its parts where it is not listed', () => {
    expect(statementCode('H332 + H302')).toBe('H302+H332');
    expect(statementWords('H315+H317')?.words).toBe('Causes skin irritation. May cause an allergic skin reaction');
    expect([statementWords('H999'), statementWords('H315+H999'), statementWords('H360fD')]).toEqual([null, null, null]);
  });
});
