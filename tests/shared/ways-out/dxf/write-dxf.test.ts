/// <reference path="../../../support/dxf-library.d.ts" />
import { Helper } from 'dxf';
import DxfParser from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import type { Plan } from '#shared/model/plan';
import { type PlanContent, planContents } from '#shared/sheets/plan-content';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { readDxf } from '#shared/underlay/dxf/read-dxf';
import type { DxfDrawing } from '#shared/ways-out/dxf/drawing';
import { planDrawing } from '#shared/ways-out/dxf/plan-drawing';
import { writeDxf } from '#shared/ways-out/dxf/write-dxf';
import { building } from '../../../support/building.ts';
import { planBuilder } from '../../../support/plan-builder.ts';
import { Dice, MAKERS, smallStart } from '../../../support/random-commands.ts';
import { decode, layerNamed, quiet } from '../../../support/underlay.ts';
import { wholePlan } from '../../../support/whole-plan.ts';

/** Every group of a file as code and value, independent of any reader. */
function pairsOf(text: string): (readonly [code: number, value: string])[] {
  const rows = text.split('\r\n');
  const pairs: (readonly [number, string])[] = [];
  for (let i = 0; i + 1 < rows.length; i += 2) pairs.push([Number(rows[i]), rows[i + 1] ?? '']);
  return pairs;
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const unitOf = (plan: Plan): number => (plan.settings.lengths === 'feet' ? 0.0254 : 1);
const each = (plan: Plan): { content: PlanContent; drawing: DxfDrawing; text: string }[] => {
  const derived = derivePlan(plan);
  return planContents(derived).map((content) => {
    const drawing = planDrawing(derived, content);
    return { content, drawing, text: writeDxf(drawing) };
  });
};

/** A row of numbers that is the same for both ways round of a piece. */
const pieceKey = (a: readonly [number, number], b: readonly [number, number]): string =>
  [a, b].map(([x, y]) => `${(Math.round(x * 1e6) / 1e6 + 0).toFixed(6)} ${(Math.round(y * 1e6) / 1e6 + 0).toFixed(6)}`).sort().join(' ');
const isLong = ([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): boolean => Math.hypot(bx - ax, by - ay) > 1e-9;

/** Every wanted piece lies within a millionth of a metre of a piece that was read. */
function expectPieces(wanted: (readonly [readonly [number, number], readonly [number, number]])[], read: ArrayLike<number>, unit_m: number): void {
  const found: [number, number, number, number][] = [];
  for (let i = 0; i + 3 < read.length; i += 4) found.push([0, 1, 2, 3].map((k) => (read[i + k] ?? 0) * unit_m) as [number, number, number, number]);
  const isNear = (p: readonly [number, number], x: number, y: number): boolean => Math.hypot(p[0] - x, p[1] - y) <= 1e-6;
  const lost = wanted.filter(([a, b]) => isLong(a, b) && !found.some(([ax, ay, bx, by]) => (isNear(a, ax, ay) && isNear(b, bx, by)) || (isNear(b, ax, ay) && isNear(a, bx, by))));
  expect(lost.map(([a, b]) => pieceKey(a, b))).toEqual([]);
}

const ringPieces = (ring: readonly { readonly x: number; readonly y: number }[]) =>
  ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    return [[a.x, a.y], [b.x, b.y]] as const;
  });

function expectReadBack(plan: Plan): void {
  const unit_m = unitOf(plan);
  for (const { content, text } of each(plan)) {
    const read = readDxf(bytesOf(text), decode, quiet);
    expect(read.warnings).toEqual([]);
    expect(read.metresPerUnit).toBeCloseTo(unit_m, 12);
    const rings = content.rooms.flatMap(({ enclosure }) => [enclosure.outline, ...enclosure.holes]);
    if (rings.length > 0) expectPieces(rings.flatMap(ringPieces), layerNamed(read, 'Walls').segments, unit_m);
    const pipeLayers = read.layers.filter(({ name }) => name.startsWith('Pipe ') && name !== 'Pipe supports');
    expectPieces(content.networks.flatMap(({ pipes }) => pipes.map(({ from, to }) => [[from.x, from.y], [to.x, to.y]] as const)), pipeLayers.flatMap(({ segments }) => [...segments]), unit_m);
    expectStructure(text);
  }
}

/** What the format asks of every file, read from the bare groups. */
function expectStructure(text: string): void {
  expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
  const pairs = pairsOf(text);
  const handles: string[] = [];
  let type = '';
  let table = '';
  const layers = new Set<string>();
  const blocks = new Set<string>();
  const usedLayers = new Set<string>();
  const usedBlocks = new Set<string>();
  const owners = new Set<string>();
  for (const [code, value] of pairs) {
    if (code === 0) type = value;
    else if (code === 2 && type === 'TABLE') table = value;
    else if (code === 2 && type === 'LAYER') layers.add(value);
    else if (code === 2 && type === 'BLOCK_RECORD') blocks.add(value);
    else if (code === 2 && (type === 'INSERT' || type === 'DIMENSION' || type === 'BLOCK')) usedBlocks.add(value);
    else if (code === 8 && type !== 'SECTION') usedLayers.add(value);
    if (code === (type === 'DIMSTYLE' && table === 'DIMSTYLE' ? 105 : 5) && type !== 'SECTION') handles.push(value);
    if (code === 330 && value !== '0') owners.add(value);
  }
  expect(new Set(handles).size).toBe(handles.length);
  const seed = pairs[pairs.findIndex(([code, value]) => code === 9 && value === '$HANDSEED') + 1]?.[1] ?? '0';
  expect(Math.max(...handles.map((handle) => Number.parseInt(handle, 16)))).toBeLessThan(Number.parseInt(seed, 16));
  expect([...usedLayers].filter((name) => !layers.has(name))).toEqual([]);
  expect([...usedBlocks].filter((name) => !blocks.has(name))).toEqual([]);
  expect([...owners].filter((handle) => !handles.includes(handle))).toEqual([]);
}

describe('our own reader finds the same geometry', () => {
  test('in feet and metric', () => {
    const { plan } = wholePlan();
    for (const lengths of ['feet', 'metric'] as const) {
      plan.settings.lengths = lengths;
      expectReadBack(plan);
    }
  });

  test('of the floor plan beneath, on a layer of its own, turned, scaled and shifted as it lies', () => {
    const { plan } = wholePlan();
    const [level] = Object.values(plan.levels);
    if (!level) throw new Error('No level.');
    level.underlays = {
      u1: { id: 'u1', asset: 'a', kind: 'dxf', page: 1, name: 'Floor', at: { x: 1.25, y: -2.5 }, rotation_rad: 0.3, metresPerUnit: 0.001, calibration: 'file-units', visible: true, locked: true, opacity: 1, hiddenLayers: ['Furniture'], knownLengths: [] },
    };
    const layerOf = (name: string, segments: number[], fills: number[][]) => ({ name, visible: true, colour: '#000000', segments: Float64Array.from(segments), fills: fills.map((fill) => Float64Array.from(fill)), closed: [], texts: [] });
    const drawing = {
      kind: 'dxf', metresPerUnit: 0.001, unitsText: '', unitsDoubt: null, extents: { minX: 0, minY: 0, maxX: 9000, maxY: 9000 }, images: [], pageCount: 1, warnings: [],
      layers: [layerOf('Shell', [0, 0, 8123.456, 0, 8123.456, 0, 8123.456, 5000.5], [[100, 100, 200, 100, 200, 300]]), layerOf('Furniture', [0, 0, 1, 1], [])],
    } satisfies UnderlayDrawing;
    // By hand: scaled, turned by 0.3 rad about the file's origin, shifted.
    const placed = (x: number, y: number): [number, number] => [(x * Math.cos(0.3) - y * Math.sin(0.3)) / 1000 + 1.25, (x * Math.sin(0.3) + y * Math.cos(0.3)) / 1000 - 2.5];
    const wanted = [[0, 0, 8123.456, 0], [8123.456, 0, 8123.456, 5000.5], [100, 100, 200, 100], [200, 100, 200, 300], [200, 300, 100, 100]].map(([ax = 0, ay = 0, bx = 0, by = 0]) => [placed(ax, ay), placed(bx, by)] as const);
    for (const lengths of ['feet', 'metric'] as const) {
      plan.settings.lengths = lengths;
      const derived = derivePlan(structuredClone(plan));
      for (const content of planContents(derived)) {
        const text = writeDxf(planDrawing(derived, content, new Map([['u1', drawing]])));
        const read = readDxf(bytesOf(text), decode, quiet);
        const { segments } = layerNamed(read, 'Floor plan beneath');
        expectPieces(wanted, segments, unitOf(plan));
        expect(segments.length / 4).toBe(wanted.length);
        expectStructure(text);
        expect(new DxfParser().parseSync(text)?.entities.filter(({ layer }) => layer === 'Floor plan beneath')).toHaveLength(3);
        expect(writeDxf(planDrawing(derived, content))).toContain('An imported floor plan of this level is not in this drawing');
      }
    }
  });

  test('in a building of many rooms', () => {
    expectReadBack(building(0.02));
  }, 60_000);

  test('in plans that chance made', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(1_000_000), { minLength: 40, maxLength: 120 }), (numbers) => {
        const dice = new Dice(numbers);
        let plan = smallStart();
        for (let i = 0; i < 20; i += 1) {
          const outcome = dice.of(MAKERS)(plan, dice)(plan);
          if (outcome.ok) plan = outcome.next;
        }
        expectReadBack(plan);
      }),
      { numRuns: 15 },
    );
  }, 60_000);

  test('cylinders are true circles at their axes, nozzles stand at their orifices', () => {
    const { plan } = wholePlan();
    for (const { content, drawing, text } of each(plan)) {
      const parsed = new DxfParser().parseSync(text);
      const inserts = (parsed?.entities ?? []).filter(({ type }) => type === 'INSERT') as unknown as { name: string; layer: string; position: { x: number; y: number; z: number } }[];
      const placesOn = (layer: string): string[] => inserts.filter((insert) => insert.layer === layer).map(({ position: { x, y, z } }) => [x, y, z].map((v) => (v * unitOf(plan)).toFixed(6)).join(' ')).sort();
      const nozzles = content.networks.flatMap((network) => network.nozzles.flatMap(({ at }) => (at ? [[at.x, at.y, at.z].map((v) => v.toFixed(6)).join(' ')] : [])));
      expect(placesOn('Nozzles')).toEqual(nozzles.sort());
      const cylinders = content.networks.flatMap(({ network, hasCylinders }) => (hasCylinders ? Object.values(network.network.cylinders) : []));
      expect(placesOn('Cylinders')).toEqual(cylinders.map(({ at }) => `${at.x.toFixed(6)} ${at.y.toFixed(6)} 0.000000`).sort());
      expect(drawing.blocks.find(({ name }) => name === 'Cylinder')?.entities[0]).toMatchObject({ kind: 'circle', at: [0, 0, 0] });
    }
  });
});

describe('independent readers', () => {
  test('dxf-parser and dxf find the same things on the same layers', () => {
    const plans = [wholePlan().plan, smallStart()];
    for (const plan of plans) {
      for (const { drawing, text } of each(plan)) {
        const parsed = new DxfParser().parseSync(text);
        if (!parsed) throw new Error('dxf-parser read nothing');
        expect(parsed.header.$INSUNITS).toBe(plan.settings.lengths === 'feet' ? 1 : 6);
        expect(parsed.header.$MEASUREMENT).toBe(plan.settings.lengths === 'feet' ? 0 : 1);
        expect(Object.keys(parsed.tables.layer.layers)).toEqual(['0', ...drawing.layers.map(({ name }) => name)]);
        const named = Object.keys(parsed.blocks).filter((name) => !name.startsWith('*'));
        expect(named).toEqual(drawing.blocks.map(({ name }) => name));
        const TYPES = { line: 'LINE', polyline: 'LWPOLYLINE', circle: 'CIRCLE', arc: 'ARC', fill: 'SOLID', text: 'TEXT', insert: 'INSERT', dimension: 'DIMENSION' } as const;
        const count = (types: readonly string[]) => Object.fromEntries([...new Set(types)].sort().map((type) => [type, types.filter((each) => each === type).length]));
        const wanted = count(drawing.entities.map(({ kind }) => TYPES[kind]));
        expect(count(parsed.entities.map(({ type }) => type).filter((type) => type !== 'ATTRIB' && type !== 'SEQEND'))).toEqual(wanted);
        expect(new Helper(text).toPolylines().polylines.length).toBeGreaterThan(0);
        const dimensions = parsed.entities.filter(({ type }) => type === 'DIMENSION') as unknown as { block: string; actualMeasurement: number; layer: string }[];
        const lengths = drawing.entities.flatMap((entity) => (entity.kind === 'dimension' ? [Math.hypot(entity.b[0] - entity.a[0], entity.b[1] - entity.a[1]) / unitOf(plan)] : []));
        expect(dimensions.map(({ actualMeasurement }) => actualMeasurement.toFixed(6))).toEqual(lengths.map((length) => length.toFixed(6)));
        expect(dimensions.every(({ block }) => parsed.blocks[block] !== undefined)).toBe(true);
      }
    }
  });
});

describe('texts', () => {
  test('whatever the user typed stays one line and itself', () => {
    const typed = ['Rack %%d 50%', 'Küche № 5 / ^I caret', 'back\\slash \\U+0041 {brace}', 'two\nlines', '热室 🔥', '  0\r\nEOF'];
    for (const name of typed) {
      const built = planBuilder('metric').room(6, 4, 2.7).obstruction('rack', rectangle(1, 1, { x: 1, y: 1 }), 0, 2, { name });
      const [only] = each(built.plan);
      const read = readDxf(bytesOf(only?.text ?? ''), decode, quiet);
      const words = name.replace(/[\r\n\t]+/g, ' ').trim();
      expect(layerNamed(read, 'Names of things').texts.some(({ text }) => text.trim().startsWith(words))).toBe(true);
      expectStructure(only?.text ?? '');
    }
  });

  test('an invented profile is said on the drawing, and the same plan gives the same file', () => {
    const { plan } = wholePlan();
    const [first] = each(plan);
    const [again] = each(structuredClone(plan));
    expect(first?.text).toContain('SAMPLE PROFILE: NOT FOR CONSTRUCTION');
    expect(again?.text).toBe(first?.text);
  });

  test('a level with nothing on it is still a whole file', () => {
    const [only] = each(planBuilder('metric').plan);
    expectStructure(only?.text ?? '');
  });
});
