import { expect, test } from 'vitest';
import { pipeZoneOf } from '#shared/derived/pipe-zone';
import type { AssemblyPart } from '#shared/model/plan';

const part = (kind: AssemblyPart['kind']): AssemblyPart => ({ id: kind, kind, name: '', length_m: 0.1, setPressure_Pa: null, arrowDownstream: true });

test('pipe is of the low-pressure side behind a regulator only; an assembly that nobody entered leaves it at high pressure', () => {
  expect(pipeZoneOf({ assembly: [part('hose'), part('check-valve'), part('regulator')] })).toBe('low');
  expect(pipeZoneOf({ assembly: [part('hose'), part('check-valve')] })).toBe('high');
  expect(pipeZoneOf({ assembly: [] })).toBe('high');
});
