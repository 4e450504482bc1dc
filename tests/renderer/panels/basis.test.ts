import { describe, expect, test } from 'vitest';
import { editBasis } from '#shared/commands/edit-basis';
import type { Calculation } from '#shared/calculations/lines/calculation';
import { basisSchema, usualBasis } from '#shared/model/basis-of-design';
import { newPlan } from '#shared/model/plan';
import { changedResults } from '../../../src-renderer/panels/basis/basis-changes.ts';
import { BASIS_GROUPS } from '../../../src-renderer/panels/basis/basis-choices.ts';
import { fieldText } from '../../../src-renderer/panels/basis/basis-field.tsx';

const fields = BASIS_GROUPS.flatMap((group) => group.fields);

describe('the basis of design', () => {
  test('every choice of the plan stands on the form once, and says what it decides', () => {
    expect(fields.map(({ key }) => key).sort()).toEqual(Object.keys(usualBasis()).sort());
    for (const { help, label } of fields) expect(help.length * label.length).toBeGreaterThan(0);
  });

  test('every word that can be chosen has its words', () => {
    for (const field of fields) {
      if (field.kind !== 'words') continue;
      expect(Object.keys(field.words).sort(), field.key).toEqual([...(basisSchema.shape[field.key].options as readonly string[])].sort());
    }
  });

  test('what the form takes, the plan takes too', () => {
    for (const field of fields) {
      if (field.kind !== 'number') continue;
      for (const value of [field.least, field.most]) expect(editBasis({ [field.key]: value })(newPlan()).ok, `${field.key} ${value}`).toBe(true);
    }
  });

  test('the usual choices are told in words and units', () => {
    const told = Object.fromEntries(fields.map((field) => [field.key, fieldText(field, usualBasis(), { system: 'metric' })]));
    expect(told).toMatchObject({ oxygenBase_pct: '20.95', holdEnd_pct: '85.0 %', pipeRoughness_m: '0.0457', greatestDelay_s: 'not known', ventCountsLeakage: 'do not count', holdTime_s: '600.0 s' });
  });
});

describe('what a choice changes', () => {
  const calculation = (results: Record<string, string>, isStale = false): Calculation => ({
    topic: 'agent',
    title: 'Agent quantity',
    subject: { kind: 'enclosure', level: 'level-0', id: 'enclosure-1' },
    subjectName: 'Hut',
    lines: Object.entries(results).map(([label, result]) => ({ label, formula: '', numbers: '', result, source: '', isMain: label !== 'step' })),
    missing: [],
    cautions: [],
    isStale,
  });

  test('is told of main results that were known before and are known now', () => {
    const before = [calculation({ mass: '24 kg', oxygen: '12 %', step: '1' })];
    expect(changedResults(before, [calculation({ mass: '25 kg', oxygen: '12 %', step: '2', fresh: '3' })])).toEqual([{ key: 'agent/Hut/mass', label: 'mass', of: 'Hut', before: '24 kg', now: '25 kg' }]);
    expect(changedResults(before, [calculation({ mass: '25 kg' }, true)])).toEqual([]);
    expect(changedResults(before, before)).toEqual([]);
    const [change] = changedResults([calculation({ 'Oxygen, hottest, O2_sea': '12 %' })], [calculation({ 'Oxygen, hottest, O2_sea': '13 %' })]);
    expect(change?.label).toBe('Oxygen, hottest');
  });
});
