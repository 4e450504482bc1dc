import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { emptySiteRecord, type Plan } from '#shared/model/plan';
import type { FieldEntry, FieldFormAbout, FieldRecord } from '#shared/site/field-entries';
import { fieldDigest, formIdentityOf, identityText, matchOf, readIdentity } from '#shared/site/form-identity';
import { fieldNameOf, isIdentityField, readFieldName } from '#shared/site/field-names';
import { readEntries } from '#shared/site/read-entries';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';

const { plan: built } = await buildDemo('F1');
const derived = derivePlan(built);
const dimensions = fieldDimensionsOf(derived);
const own = formIdentityOf(derived, dimensions);
const dimensionOf = (name: string) => {
  const found = dimensions.find((dimension) => dimension.name === name);
  if (!found) throw new Error(`There is no dimension ${name}.`);
  return found;
};
const aboutForm = (changed: Partial<FieldFormAbout> = {}): FieldFormAbout => ({ source: 'pdf', ...own, remarks: [], ...changed });
const entry = (id: string, measured: string, cells: FieldEntry['cells'] = {}): FieldEntry => ({ id, where: 'page 1', cells: { measured, ...cells } });
const record = (rows: readonly FieldEntry[], about = aboutForm()): FieldRecord => ({ rows, about });
const answerTo = (name: string, measured: string, cells: FieldEntry['cells'] = {}, about = aboutForm(), plan: Plan = built) => {
  const { id } = dimensionOf(name);
  const found = readEntries(record([entry(id, measured, cells)], about), derivePlan(plan)).rows.find((row) => row.id === id);
  if (!found) throw new Error('There is no answer.');
  return found;
};

// N1 a is planned 8'-0" (2438.4 mm), N1 d 8" (203.2 mm): exact by 1 in = 25.4 mm.
describe('what was measured', () => {
  test.each([
    [`8' 0 1/2"`, 2.4511],
    ['8-0 1/2', 2.4511],
    ['2451 mm', 2.451],
    ['2.451 m', 2.451],
    ['8.0417', 2.4511],
    ['96.5"', 2.4511],
  ])('%s is understood', (written, value_m) => {
    const { kind, value_m: read_m, words } = answerTo('N1 a', written);
    expect(kind).toBe('taken');
    expect(read_m).toBeCloseTo(value_m, 4);
    expect(words).toBe(`N1 a is 8'-0 1/2", planned 8'-0".`);
  });

  test('a number alone is in the unit that the planned value is printed in', () => {
    expect(answerTo('N1 d', '8.5').value_m).toBeCloseTo(0.2159, 9);
    expect(answerTo('N1 d', '8 1/2').value_m).toBeCloseTo(0.2159, 9);
    const metric = { ...built, settings: { ...built.settings, lengths: 'metric' as const } };
    expect(answerTo('N1 d', '216', {}, aboutForm(), metric).value_m).toBeCloseTo(0.216, 9);
    expect(answerTo('N1 a', '2.45', {}, aboutForm(), metric).value_m).toBeCloseTo(2.45, 9);
    expect(answerTo('N1 a', '2,45', {}, aboutForm(), metric).value_m).toBeCloseTo(2.45, 9);
  });

  test('what is written beside it comes along in one line', () => {
    expect(answerTo('N1 a', `8'`, { by: ' A.\n B. ', when: '2026-03-05 10:00', instrument: 'laser', reason: 'beam\u0007 moved' })).toMatchObject({ by: 'A. B.', at: '2026-03-05 10:00', instrument: 'laser', reason: 'beam moved', kept_m: null });
  });

  test('nothing, and nonsense', () => {
    expect(answerTo('N1 a', '  ')).toMatchObject({ kind: 'empty', value_m: null, words: 'Nothing is written for N1 a.' });
    expect(answerTo('N1 a', '', { by: 'A' }).words).toBe('Nothing was measured for N1 a, though something is written beside it.');
    expect(answerTo('N1 a', 'about eight')).toMatchObject({ kind: 'not-understood', written: 'about eight', value_m: null });
    expect(answerTo('N1 a', 'about eight').words).toContain('a number alone is feet.');
    expect(answerTo('N1 d', 'about eight').words).toContain('a number alone is inches.');
    expect(answerTo('N1 a', '8 1/2')).toMatchObject({ kind: 'not-understood' });
    expect(answerTo('N1 a', '8Â½').words).toContain('another encoding');
  });

  test.each([
    ['2438', 'millimetres written as feet'],
    ['96', 'inches written as feet'],
    ['2.438', 'metres written as feet'],
    ['8"', 'feet written as inches'],
    ['2438"', 'millimetres written as inches'],
    ['243.8', 'centimetres written as feet'],
    ['96 mm', 'inches written as millimetres'],
    ['80', 'decimal point'],
  ])('%s looks like another unit', (written, words) => {
    const answer = answerTo('N1 a', written);
    expect(answer.kind).toBe('implausible');
    expect(answer.value_m).not.toBeNull();
    expect(answer.words).toContain(words);
  });

  test('a fifth off is the limit', () => {
    expect(answerTo('N1 a', '2926 mm').kind).toBe('taken');
    expect(answerTo('N1 a', '2927 mm')).toMatchObject({ kind: 'implausible', value_m: 2.927 });
    expect(answerTo('N1 a', `-7'`).words).toContain('less than nothing');
    expect(answerTo('N1 a', `-8'`).words).toContain('a minus sign');
    // Of a short one 100 mm are the limit: 3 in off are a fault of the work, 4 in may be a slip.
    expect(answerTo('N1 d', '11"').kind).toBe('taken');
    expect(answerTo('N1 d', '12"').kind).toBe('implausible');
  });
});

describe('rows', () => {
  test('every dimension has one answer, in the order of the plan; strangers come last', () => {
    const { rows } = readEntries(record([entry('nobody/first', '3 m'), entry('__proto__', '1'), entry('', '2'), entry(dimensionOf('N1 a').id, `8'`)]), derived);
    expect(rows.map(({ id }) => id)).toEqual([...dimensions.map(({ id }) => id), 'nobody/first', '__proto__', '']);
    expect(rows.filter(({ kind }) => kind === 'missing')).toHaveLength(dimensions.length - 1);
    expect(rows.slice(-3).map(({ kind }) => kind)).toEqual(['unknown', 'unknown', 'unknown']);
    expect(rows.at(-1)?.words).toBe('The row does not say which dimension it is.');
  });

  test('the printed name serves for the id', () => {
    expect(readEntries(record([entry('n1  A', `8'`)]), derived).rows.find(({ name }) => name === 'N1 a')?.kind).toBe('taken');
  });

  test('twice the same is once, twice different is asked', () => {
    const { id } = dimensionOf('N1 a');
    const both = (one: string, other: string) => readEntries(record([entry(id, one), { ...entry(id, other), where: 'page 3' }]), derived).rows.find((row) => row.id === id);
    expect(both(`8'`, `8'`)).toMatchObject({ kind: 'taken', where: 'page 1 and page 3' });
    expect(both(`8'`, '')?.kind).toBe('taken');
    expect(both(`8'`, `8' 1"`)).toMatchObject({ kind: 'twice', value_m: null, written: `8' and 8' 1"` });
  });

  test('what the plan has already is unchanged until something about it is different', () => {
    const { id } = dimensionOf('N1 a');
    const kept = { value_m: 2.4511, by: 'A', at: 'today', instrument: 'tape', reason: '', approvedBy: '', photos: [] };
    const plan = { ...built, siteRecord: { ...emptySiteRecord(), measurements: { [id]: kept } } };
    const same = { by: 'A', when: 'today', instrument: 'tape' };
    expect(answerTo('N1 a', `8'-0 1/2"`, same, aboutForm(), plan)).toMatchObject({ kind: 'unchanged', value_m: 2.4511, kept_m: 2.4511 });
    expect(answerTo('N1 a', `8'-0 1/2"`, { ...same, by: 'B' }, aboutForm(), plan).kind).toBe('taken');
    expect(answerTo('N1 a', `8'-1"`, same, aboutForm(), plan)).toMatchObject({ kind: 'taken', words: `N1 a becomes 8'-1"; it was 8'-0 1/2".` });
    expect(answerTo('N1 a', '', {}, aboutForm(), plan).kind).toBe('empty');
  });
});

describe('whose form it is', () => {
  test('the identity is read as it is printed', () => {
    expect(readIdentity(identityText(own))).toEqual(own);
    expect(readIdentity(`  ${identityText({ ...own, revision: 'B | 2', project: '' })}`)).toMatchObject({ digest: own.digest });
    expect(readIdentity('Form of something else')).toBeUndefined();
  });

  test('a project name that lost letters on the way is still its own while the drawing is', () => {
    const named = formIdentityOf({ plan: { ...built, info: { ...built.info, project: 'H\u00fctte \u0141\u00f3d\u017a' } } }, dimensions);
    for (const project of ['H?tte ??d?', 'H\u00c3\u00bctte \u00c5\u0081\u00c3\u00b3d\u00c5\u00ba']) expect(matchOf({ ...named, project }, named)).toBe('same');
    expect(matchOf({ ...named, project: 'Another hut' }, named)).toBe('other-plan');
    expect(matchOf({ ...named, project: 'H?tte ??d?', digest: '0123456789abcdef' }, named)).toBe('other-plan');
  });

  test('what comes back from the site does not make another plan of it', () => {
    expect(fieldDigest({ ...built, ...{ siteRecord: emptySiteRecord() } })).toBe(own.digest);
    const [level] = Object.values(built.levels);
    expect(fieldDigest({ ...built, levels: { ...built.levels, ...(level ? { [level.id]: { ...level, enclosures: {} } } : {}) } })).not.toBe(own.digest);
  });

  test('of another plan nothing is taken', () => {
    const about = aboutForm({ project: 'Another job', digest: '0123456789abcdef' });
    expect(answerTo('N1 a', `8'`, { planned: '2438.4' }, about)).toMatchObject({ kind: 'other-plan' });
    const reading = readEntries(record([entry('H1', '', { done: 'yes' })], about), derived);
    expect(reading.match).toBe('other-plan');
    expect(reading.remarks.join(' ')).toContain('“Another job”');
    expect(reading.checks[0]?.kind).toBe('other-plan');
  });

  test('of another state of the plan only what is planned as before is taken', () => {
    const about = aboutForm({ digest: '0123456789abcdef', revision: 'A' });
    expect(readEntries(record([], about), derived).match).toBe('other-revision');
    expect(answerTo('N1 a', `8' 1"`, { planned: '2438.4' }, about).kind).toBe('taken');
    expect(answerTo('N1 a', `8' 1"`, { planned: '2540.0' }, about)).toMatchObject({ kind: 'other-revision', value_m: 2.4638 });
    expect(answerTo('N1 a', `8' 1"`, {}, about).kind).toBe('other-revision');
  });

  test('rows of another form in the same table are told apart', () => {
    const form = identityText({ ...own, project: 'Another job', digest: '0123456789abcdef' });
    expect(answerTo('N1 a', `8'`, { form }).kind).toBe('other-plan');
  });

  test('a form that does not say, and one with lost sheets', () => {
    const reading = readEntries(record([entry(dimensionOf('N1 a').id, `8'`)], aboutForm({ digest: null, project: null, revision: null, count: null })), derived);
    expect(reading.match).toBe('not-told');
    expect(reading.remarks).toEqual([expect.stringContaining('does not say which plan'), `${dimensions.length - 1} dimensions of this plan are not in the file. Sheets may be missing.`]);
    expect(reading.rows.find(({ name }) => name === 'N1 a')?.kind).toBe('taken');
  });
});

describe('hold points', () => {
  const checkOf = (cells: FieldEntry['cells'], plan: Plan = built) => readEntries(record([{ id: 'H5', where: 'page 2', cells }]), derivePlan(plan)).checks[4];
  const ticked = { ...built, siteRecord: { ...emptySiteRecord(), checks: { H5: { done: true, by: 'A', witness: 'B', at: 'today' } } } };

  test('a tick with its names', () => {
    expect(checkOf({ done: 'yes', by: 'A', witness: 'B', when: 'today' })).toMatchObject({ kind: 'taken', id: 'H5', done: true, by: 'A', witness: 'B', at: 'today' });
    expect(checkOf({ measured: 'x' })).toMatchObject({ kind: 'taken', done: true });
    expect(checkOf({ done: '' })?.kind).toBe('empty');
    expect(checkOf({ done: 'perhaps' })?.kind).toBe('not-understood');
    expect(readEntries(record([]), derived).checks.map(({ kind }) => kind)).toEqual(Array(12).fill('missing'));
  });

  test('a form from before the tick does not take it back', () => {
    expect(checkOf({ done: 'yes', by: 'A', witness: 'B', when: 'today' }, ticked)?.kind).toBe('unchanged');
    expect(checkOf({ done: '' }, ticked)).toMatchObject({ kind: 'empty', words: expect.stringContaining('stays ticked') });
    expect(checkOf({ done: '', by: 'C' }, ticked)?.kind).toBe('unchanged');
  });
});

describe('anything at all', () => {
  const text = fc.oneof(fc.string({ unit: 'binary', maxLength: 300 }), fc.constantFrom(`8'`, '2438', '1e9', '--', '８', '½', 'NaN', '-0', '0', '∞', '1/0'));
  const cells = fc.record({ measured: text, by: text, when: text, instrument: text, reason: text, planned: text, done: text, witness: text, form: text }, { requiredKeys: [] });
  const id = fc.oneof(text, fc.constantFrom(...dimensions.map((dimension) => dimension.id)), fc.constantFrom('H1', 'h12', 'constructor', 'N1 a'));

  test('is answered row by row, and what is taken is a length', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ id, where: text, cells }), { maxLength: 12 }), (rows) => {
        const reading = readEntries(record(rows as FieldEntry[]), derived);
        expect(reading.rows.slice(0, dimensions.length).map((row) => row.id)).toEqual(dimensions.map((dimension) => dimension.id));
        expect(reading.checks).toHaveLength(12);
        for (const row of reading.rows) {
          expect(row.words.length).toBeGreaterThan(0);
          expect(row.by.length).toBeLessThanOrEqual(200);
          if (row.kind === 'taken') expect(Number.isFinite(row.value_m)).toBe(true);
          if (row.kind === 'empty' || row.kind === 'missing' || row.kind === 'twice' || row.kind === 'unknown' || row.kind === 'not-understood') expect(row.value_m).toBeNull();
        }
      }),
      { numRuns: 60 },
    );
  });

  test('field names are read back, ids with dots as well', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9._/-]{0,60}$/), (name) => {
        expect(fieldNameOf(name, 'measured')).not.toContain('.');
        expect(readFieldName(fieldNameOf(name, 'measured'))).toEqual({ id: name, cell: 'measured' });
      }),
    );
    expect(readFieldName('net-1/n~2/first#by!3')).toEqual({ id: 'net-1/n.2/first', cell: 'by' });
    expect(readFieldName('form#identity')).toBeUndefined();
    expect([isIdentityField('form#identity'), isIdentityField('form#identity!2'), isIdentityField('form#else')]).toEqual([true, true, false]);
  });
});
