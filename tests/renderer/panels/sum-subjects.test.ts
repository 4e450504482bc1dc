import { describe, expect, test } from 'vitest';
import type { Calculation, CalculationTopic } from '#shared/calculations/lines/calculation';
import { evaluate } from '#shared/evaluate';
import type { Ref } from '#shared/model/plan';
import { calculationsAbout, joinedTo, subjectOf, subjectsOf } from '../../../src-renderer/panels/sums/sum-subjects.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const built = planBuilder().room(6, 4, 2.7).network().cylinder(0.14, 2, Math.PI).run([place3(0.14, 2, 2), place3(0.14, 2, 2.5), place3(3, 2, 2.5)]).nozzle(3, 2, 2.5);
const { enclosure } = built;
const other = built.room(3, 3, 2.5, { x: 10, y: 0 }).enclosure;
const { derived } = evaluate(built.plan);
const network: Ref = { kind: 'network', id: built.networkId };

const calculation = (topic: CalculationTopic, subject: Ref): Calculation => ({ topic, title: topic, subject, subjectName: '', lines: [], missing: [], cautions: [], isStale: false });

describe('whose sums are shown', () => {
  test('those of the room or unit that a selected thing belongs to', () => {
    expect(subjectOf(enclosure)).toEqual(enclosure);
    expect(subjectOf({ kind: 'wall', level: 'level-0', enclosure: enclosure.id, id: 'corner-1' })).toEqual(enclosure);
    expect(subjectOf(built.lastNozzle)).toEqual(network);
    expect(subjectOf({ kind: 'note', level: 'level-0', id: 'note-1' })).toBeUndefined();
  });

  test('every room and unit can be chosen, rooms first', () => {
    expect(subjectsOf(derived).map(({ ref }) => ref.kind)).toEqual(['enclosure', 'enclosure', 'network']);
  });

  test('a room comes with the units that blow into it and a unit with its rooms; an unserved room stands alone', () => {
    expect(joinedTo(derived, enclosure)).toEqual([enclosure, network]);
    expect(joinedTo(derived, { kind: 'network', id: built.networkId })).toEqual([network, enclosure]);
    expect(joinedTo(derived, other)).toEqual([other]);
  });

  test('they stand in the order of a design, whatever order they come in', () => {
    const all = [calculation('wiring', network), calculation('hold', enclosure), calculation('discharge', network), calculation('agent', other), calculation('agent', enclosure), calculation('discharge', enclosure)];
    expect(calculationsAbout(all, [enclosure, { kind: 'network', id: built.networkId }]).map(({ topic, subject }) => `${topic} ${subject.kind}`)).toEqual([
      'agent enclosure',
      'discharge enclosure',
      'discharge network',
      'hold enclosure',
      'wiring network',
    ]);
  });
});
