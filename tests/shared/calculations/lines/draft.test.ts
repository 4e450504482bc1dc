import { expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { Draft, ownBasis, partOf, withoutCaution } from '#shared/calculations/lines/draft';

const about = { kind: 'network', id: 'n' } as const;

test('sums that are known give lines, the others a sentence with their reason', () => {
  const draft = new Draft('vent', 'Relief vent', about, 'Network');
  draft.with('area', worked(2), (area) => draft.main('Area', { ...ownBasis('A = 1 + 1', 'arithmetic'), caution: 'Mind it.' }, '1 + 1', String(area)));
  draft.with('flow', notWorked('the peak flow is blank.'), () => draft.given('Flow', 'never', 'plan'));
  draft.with('pressure', notWorked('the peak flow is blank.'), () => draft.given('Pressure', 'never', 'plan'));
  draft.lacks('wall', 'it is not entered');
  draft.caution('Mind it.');
  const { lines, missing, cautions, isStale } = draft.done();
  expect(lines).toEqual([{ label: 'Area', formula: 'A = 1 + 1', numbers: '1 + 1', result: '2', source: 'arithmetic', isMain: true }]);
  expect(missing).toEqual(['Not worked out (flow, pressure): the peak flow is blank.', 'Not worked out (wall): it is not entered.']);
  expect(cautions).toEqual(['Mind it.']);
  expect(isStale).toBe(false);
});

test('a basis with several formulas gives one of them with its source', () => {
  const basis = { formula: 'a = 1; b = 2', source: 'somewhere', caution: 'Careful.' };
  expect(partOf(basis, 1)).toEqual({ formula: 'b = 2', source: 'somewhere', caution: 'Careful.' });
  expect(partOf(basis, 5).formula).toBe('a = 1; b = 2');
  expect(withoutCaution(basis)).toEqual({ formula: 'a = 1; b = 2', source: 'somewhere' });
});
