import { deleteThings } from '#shared/commands/delete-things';
import { moveThings } from '#shared/commands/move-things';
import { type Ref, newPlan } from '#shared/model/plan';
import { kindWord, thingName, thingsInSentence } from '#shared/model/thing-name';
import { describe, expect, test } from 'vitest';

const plan = newPlan('metric');
plan.networks['network-1'] = { manifold: null, installation: { bonding: 'unknown', marking: '', finish: '' },
  id: 'network-1',
  name: 'Network 1',
  level: 'level-0',
  profile: 'sample-80',
  source: null,
  cylinders: {},
  assembly: [],
  nodes: { 'node-1': { part: null, id: 'node-1', at: { x: 1, y: 1, z: 2 } } },
  pipes: {},
  nozzles: { 'nozzle-1': { id: 'nozzle-1', name: 'N2', node: 'node-1', holes_rad: [0], rotation_rad: 0, tilt_rad: 0, orificeArea_m2: null, serves: null } },
  supports: {},
  release: null,
};
const level = plan.levels['level-0'];
if (level) {
  level.notes['note-1'] = { id: 'note-1', at: { x: 0, y: 0 }, text: 'Mind the step' };
  level.obstructions['beam-1'] = { front_rad: null, voltage_V: null, hasLooseItems: null, hasDrives: null, id: 'beam-1', name: 'Beam 1', kind: 'beam', footprint: [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }], bottom_m: 2, top_m: 3, isPermeable: false };
}
const nozzle: Ref = { kind: 'nozzle', network: 'network-1', id: 'nozzle-1' };
const beam: Ref = { kind: 'obstruction', level: 'level-0', id: 'beam-1' };
const note: Ref = { kind: 'note', level: 'level-0', id: 'note-1' };

describe('what a thing is called', () => {
  test('its kind and its name, the kind once', () => {
    expect(thingName(plan, nozzle)).toBe('Nozzle N2');
    expect(thingName(plan, beam)).toBe('Beam 1');
    expect(thingName(plan, note)).toBe('Note');
  });

  test('a thing that has gone answers its kind', () => {
    expect(thingName(plan, { ...nozzle, id: 'gone' })).toBe(kindWord(nozzle));
  });

  test('inside a sentence, and several at once', () => {
    expect(thingsInSentence(plan, [nozzle])).toBe('nozzle N2');
    expect(thingsInSentence(plan, [nozzle, beam])).toBe('2 things');
    expect(thingsInSentence(plan, [])).toBe('nothing');
  });

  test('undo names what was moved and deleted', () => {
    expect(moveThings([nozzle], 1, 0)(plan)).toMatchObject({ ok: true, label: 'Move nozzle N2' });
    expect(deleteThings([beam, note])(plan)).toMatchObject({ ok: true, label: 'Delete 2 things' });
  });
});
