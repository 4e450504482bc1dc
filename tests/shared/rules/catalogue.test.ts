import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { newPlan } from '#shared/model/plan';
import { CATALOGUE_IDS, catalogueOf, partOf } from '#shared/rules/catalogue';
import { RULES } from '#shared/rules/index';
import { at3, layout } from '../../support/layout.ts';

/** Every check of the whole job. */
const EVERY_ID = [
  'N1 N2 N3 N4 N5 N6 N7 N8 N9 N10 N11 N12 N13 N14 N15 N16 N17 N18 N19 N20 N21 N22 N23 N24',
  'P1 P2 P3 P4 P5 P6 P7 P8 P9 P10 P11 P12 P13 P14 P15 P16 P17 P18 P19 P20 P21 P22 P23 P24 P25 P26 P27 P28 P29 P30 P31 P32 P33 P34',
  'C1 C2 C3 C4 C5 C6 C7 C8 C9 C10 C11 C12 C13',
  'E1 E2 E3 E4 E5 E6 E7 E8 E9 E10 E11 E12 E13 E14 E15 E16',
  'S1 S2 S3 S4 S5 S6 S7 S8 S9 S10',
  'L1 L2 L3 L4 L5 L6 L7 L8 L9 L10',
  'D1 D2 D3 D4 D5 D6 D7 D8 D9',
].flatMap((part) => part.split(' '));

/** Checks that are still to come; to be empty. */
const EXPECTED: readonly string[] = [];

describe('the catalogue', () => {
  test('has every check of the job, each under its id', () => {
    expect(CATALOGUE_IDS).toEqual(EVERY_ID);
  });
  test('is asked in full: no check is missing, none is twice', () => {
    const ids = RULES.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(EVERY_ID.filter((id) => !ids.includes(id) && !EXPECTED.includes(id))).toEqual([]);
    expect(ids.filter((id) => !EVERY_ID.includes(id))).toEqual([]);
  });
  test('every check has a title, a way of measuring and a source', () => {
    for (const { id, title, basis } of RULES) {
      expect([id, title.trim(), basis.formula.trim(), basis.source.trim()]).not.toContain('');
      expect(title).toMatch(/^[A-Z0-9]/);
    }
    expect(new Set(RULES.map(({ title }) => title)).size).toBe(RULES.length);
  });
  test('says of every check how often it was asked, in catalogue order', () => {
    const { findings } = evaluate(layout({ nozzles: [{ at: at3(2, 2, 2.4) }] }));
    const rows = catalogueOf(RULES, findings);
    expect(rows.map(({ id }) => id)).toEqual(EVERY_ID.filter((id) => RULES.some((rule) => rule.id === id)));
    const asked = rows.reduce((sum, { counts }) => sum + Object.values(counts).reduce((all, count) => all + count, 0), 0);
    expect(asked).toBe(findings.length);
    expect(rows.find(({ id }) => id === 'N1')).toMatchObject({ part: 'N', isAskedOfNothing: false, counts: { ok: 1 } });
  });
  test('says of a check that nothing is drawn for it', () => {
    expect(catalogueOf(RULES, evaluate(newPlan()).findings).filter(({ isAskedOfNothing }) => isAskedOfNothing).length).toBeGreaterThan(40);
    expect(partOf('P12')).toBe('P');
  });
});
