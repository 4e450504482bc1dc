import { describe, expect, test } from 'vitest';
import { addDimension } from '#shared/commands/add-dimension';
import { addNote } from '#shared/commands/add-note';
import { addRevision } from '#shared/commands/add-revision';
import { applyChange } from '#shared/commands/apply-change';
import { editDimension } from '#shared/commands/edit-dimension';
import { editInfo } from '#shared/commands/edit-info';
import { editLimit } from '#shared/commands/edit-limit';
import { editNote } from '#shared/commands/edit-note';
import { editSettings } from '#shared/commands/edit-settings';
import { saveProfileInPlan } from '#shared/commands/save-profile-in-plan';
import { setProfile } from '#shared/commands/set-profile';
import { type Plan, newPlan } from '#shared/model/plan';
import { settingsSchema } from '#shared/model/schema';
import { blankProfile } from '#shared/profile/unit-profile';
import { planPoint } from '#shared/geometry/point';
import { planBuilder } from '../../support/plan-builder.ts';
import { done, doneAll, levelIn, networkIn, only, refusal } from '../../support/try-command.ts';

const dimensionIn = (plan: Plan) => only(levelIn(plan).dimensions);
const noteIn = (plan: Plan) => only(levelIn(plan).notes);

describe('dimensions and notes', () => {
  test('are drawn and changed', () => {
    const { next, created } = done(newPlan(), addDimension('level-0', planPoint(0, 0), planPoint(3, 0), -0.4));
    expect(dimensionIn(next)).toMatchObject({ a: { x: 0, y: 0 }, b: { x: 3, y: 0 }, offset_m: -0.4 });
    const [dimension] = created;
    if (dimension?.kind !== 'dimension') throw new Error('No dimension was made.');
    expect(dimensionIn(done(next, editDimension(dimension, { offset_m: 1, b: { x: 4, y: 0 } })).next)).toMatchObject({ offset_m: 1, b: { x: 4, y: 0 } });
    expect(refusal(next, editDimension(dimension, { b: { x: 0, y: 0 } }))).toContain('two places apart');
    expect(refusal(next, editDimension({ ...dimension, id: 'gone' }, {}))).toContain('dimension is no longer');

    const noted = done(newPlan(), addNote('level-0', planPoint(1, 2), 'Check on site'));
    expect(noteIn(noted.next)).toMatchObject({ at: { x: 1, y: 2 }, text: 'Check on site' });
    const [note] = noted.created;
    if (note?.kind !== 'note') throw new Error('No note was made.');
    expect(noteIn(done(noted.next, editNote(note, { text: 'Seen', at: { x: 0, y: 0 } })).next)).toMatchObject({ text: 'Seen', at: { x: 0, y: 0 } });
    expect(refusal(noted.next, editNote(note, { text: ' ' }))).toContain('needs a text');
    expect(refusal(noted.next, editNote({ ...note, id: 'gone' }, {}))).toContain('note is no longer');
  });
  test('are refused between equal places, without text, and on a level that has gone', () => {
    expect(refusal(newPlan(), addDimension('level-0', planPoint(1, 1), planPoint(1, 1.0005), 1))).toContain('two places apart');
    expect(refusal(newPlan(), addDimension('level-0', planPoint(1, 1), planPoint(2, 1), Number.NaN))).toContain('too far off');
    expect(refusal(newPlan(), addNote('level-0', planPoint(1, 1), ''))).toContain('needs a text');
    expect(refusal(newPlan(), addNote('level-0', planPoint(1, 1), 'x'.repeat(20_001)))).toContain('20000');
    expect(refusal(newPlan(), addNote('gone', planPoint(1, 1), 'x'))).toContain('level is no longer');
  });
});

describe('project data and settings', () => {
  test('are changed, revisions added in turn', () => {
    const next = doneAll(newPlan(), editInfo({ project: 'Hut', edition: '2025' }), addRevision({ mark: ' A ', date: '2025-01-01', text: 'First issue' }), addRevision({ mark: 'B', date: '2025-02-01', text: '' }), editSettings({ lengths: 'metric', grid_m: 0.05 }));
    expect(next.info).toMatchObject({ project: 'Hut', edition: '2025', revisions: [{ mark: 'A' }, { mark: 'B' }] });
    expect(next.settings).toMatchObject({ lengths: 'metric', grid_m: 0.05 });
  });
  test('are refused when too long, doubled or out of range', () => {
    const revision = { mark: 'A', date: '', text: '' };
    expect(refusal(newPlan(), editInfo({ project: 'x'.repeat(201) }))).toContain('Project is longer than 200');
    expect(refusal(newPlan(), addRevision({ ...revision, mark: '' }))).toContain('needs a mark');
    expect(refusal(newPlan(), addRevision({ ...revision, date: 'x'.repeat(300) }))).toContain('Date is longer');
    expect(refusal(done(newPlan(), addRevision(revision)).next, addRevision(revision))).toContain('there already');
    expect(refusal(newPlan(), editSettings({ grid_m: 0 }))).toContain('Grid must be at least 0.001');
    const full = done(newPlan(), editInfo({ revisions: Array.from({ length: 200 }, (_, i) => ({ ...revision, mark: String(i) })) })).next;
    expect(refusal(full, addRevision(revision))).toContain('200');
  });
  test('a change shares nothing with what was given', () => {
    const given = { lengths: 'feet' as const, grid_m: undefined };
    const settings = { lengths: 'metric' as const, grid_m: 1 } as { lengths: 'feet' | 'metric'; grid_m: number };
    applyChange(settings, settingsSchema.partial(), given);
    expect(settings).toEqual({ lengths: 'feet', grid_m: 1 });
  });
});

describe('unit profiles', () => {
  test('are kept in the plan, chosen for a network, and filled figure by figure', () => {
    const built = planBuilder().network();
    const next = doneAll(
      built.plan,
      saveProfileInPlan(blankProfile('own-80', 'Our 80 L unit')),
      setProfile(built.networkId, 'own-80'),
      editLimit('own-80', 'nozzleToWall_m', { value: 0.3, source: 'manual, page 12' }),
      editLimit('own-80', 'pathLength_m', { value: 20, source: '' }),
      editLimit('own-80', 'pathLength_m', null),
    );
    expect(networkIn(next).profile).toBe('own-80');
    expect(next.profiles['own-80']?.limits).toEqual({ nozzleToWall_m: { value: 0.3, source: 'manual, page 12' } });
    expect(done(next, editLimit('own-80', 'nozzleToWall_m', { value: 0.3, source: 'manual, page 12' })).patches).toEqual([]);
    expect(done(next, saveProfileInPlan({ ...blankProfile('own-80', 'Renamed'), pipeSizes: ['1'] })).next.profiles['own-80']).toMatchObject({ name: 'Renamed', pipeSizes: ['1'], limits: {} });
  });
  test('are refused without name, with bad figures, or when not in the plan', () => {
    const built = planBuilder().network();
    expect(refusal(built.plan, saveProfileInPlan(blankProfile('x', ' ')))).toContain('needs a name');
    expect(refusal(built.plan, saveProfileInPlan(blankProfile('a/b', 'Unit')))).toContain('id has signs');
    expect(refusal(built.plan, saveProfileInPlan(blankProfile('constructor', 'Unit')))).toContain('id has signs');
    expect(refusal(built.plan, saveProfileInPlan({ ...blankProfile('x', 'Unit'), limits: { pathLength_m: { value: -1, source: '' } } }))).toContain('must be at least 0');
    expect(refusal(built.plan, setProfile(built.networkId, 'gone'))).toContain('not in the plan');
    expect(refusal(built.plan, setProfile('gone', 'sample-80'))).toContain('network is no longer');
    expect(refusal(built.plan, editLimit('gone', 'pathLength_m', null))).toContain('no longer');
    expect(refusal(built.plan, editLimit('sample-80', 'pathLength_m', { value: Number.NaN, source: '' }))).toContain('Longest path must be a number');
    expect(refusal(built.plan, editLimit('sample-80', 'pathLength_m', { value: 1, source: 'x'.repeat(401) }))).toContain('400');
    expect(refusal(built.plan, editLimit('sample-80', 'colour' as 'pathLength_m', null))).toContain('no such figure');
  });
});
