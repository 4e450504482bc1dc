import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { planContents } from '#shared/sheets/plan-content';
import type { Mark } from '#shared/sheets/sheet';
import { base64Text } from '#shared/ways-out/svg/base64-text';
import { planViewDrawing } from '#shared/ways-out/svg/plan-view-svg';
import { writeSvg } from '#shared/ways-out/svg/write-svg';
import { piecesOf, readSvgText } from '../../../support/underlay.ts';
import { sure, wholePlan } from '../../../support/whole-plan.ts';

const stroke = { width_mm: 0.5, colour: '#000000' };
const sheet = (...marks: Mark[]): string => writeSvg({ title: 'A & B', width_mm: 100, height_mm: 50, marks });

describe('marks as SVG', () => {
  test('true size in mm, words escaped, texts stay texts in named letters', () => {
    const text = sheet({ kind: 'text', x: 10, y: 20, text: '1/4" <&> ü', height_mm: 2.5, font: 'bold', colour: '#123456', align: 'right', rotation_rad: Math.PI / 2, halo: true, layer: 'notes' });
    expect(text).toContain('width="100mm" height="50mm" viewBox="0 0 100 50"');
    expect(text).toContain('DejaVu Sans');
    expect(text).toContain('text-anchor="end"');
    expect(text).toContain('rotate(-90 10 20)');
    expect(text).toContain('1/4&quot; &lt;&amp;&gt; ü</text>');
    expect(text).toContain('<title>Names and notes: texts</title>');
    expect(() => readSvgText(text)).not.toThrow();
  });

  test('our own reader finds lines, arcs and areas where they were', () => {
    const text = sheet(
      { kind: 'line', places: [1, 2, 11, 2, 11, 12], stroke },
      { kind: 'segments', places: [20, 5, 30, 5, 20, 8, 30, 8], stroke, layer: 'building' },
      { kind: 'arc', x: 50, y: 25, radius_mm: 10, from_rad: 0, to_rad: Math.PI / 2, stroke, layer: 'pipe' },
    );
    const pieces = piecesOf(readSvgText(text));
    // Files lie with y up and in pixels of 96 to the inch or in mm: sizes are compared, not places.
    const [ax = 0, ay = 0, bx = 0, by = 0] = pieces[0] ?? [];
    const unit = 10 / Math.hypot(bx - ax, by - ay);
    const long = pieces.map(([px = 0, py = 0, qx = 0, qy = 0]) => Math.hypot(qx - px, qy - py) * unit);
    expect(long.slice(0, 4).map((length) => length.toFixed(3))).toEqual(['10.000', '10.000', '10.000', '10.000']);
    expect(long.slice(4).reduce((sum, length) => sum + length, 0)).toBeCloseTo((Math.PI / 2) * 10, 1);
  });

  test('lines of each layer come before the texts of any', () => {
    const text = sheet({ kind: 'text', x: 0, y: 9, text: 'below', height_mm: 2, font: 'plain', colour: '#000000', align: 'left', layer: 'building' }, { kind: 'circle', x: 5, y: 5, radius_mm: 2, stroke, layer: 'notes' });
    expect(text.indexOf('<circle')).toBeLessThan(text.indexOf('>below<'));
  });

  test('bytes as base64, RFC 4648 test vectors', () => {
    const vectors = { '': '', f: 'Zg==', fo: 'Zm8=', foo: 'Zm9v', foob: 'Zm9vYg==', fooba: 'Zm9vYmE=', foobar: 'Zm9vYmFy' };
    for (const [words, letters] of Object.entries(vectors)) expect(base64Text(new TextEncoder().encode(words))).toBe(letters);
  });
});

describe('a plan view by itself', () => {
  test('is on its paper to scale, says what it is a copy of, and that a profile is invented', () => {
    const evaluation = evaluate(wholePlan().plan);
    const [content] = planContents(evaluation.derived);
    const drawing = sure(planViewDrawing(evaluation, sure(content), new Map(), 50));
    const text = writeSvg(drawing);
    expect(() => readSvgText(text)).not.toThrow();
    expect(text).toContain('SAMPLE PROFILE: NOT FOR CONSTRUCTION');
    expect(text).toContain('1:50');
    for (const title of ['Rooms and things in them', 'Pipe and fittings', 'Nozzles', 'Dimensions', 'Names and notes: texts']) expect(text).toContain(`<title>${title}</title>`);
    const room = sure(sure(content).rooms[0]).bounds;
    expect(drawing.width_mm).toBeGreaterThan(((room.maxX - room.minX) * 1000) / 50);
    expect(planViewDrawing(evaluation, { ...sure(content), rooms: [], networks: [], solids: [], level: { ...sure(content).level, dimensions: {}, notes: {} } }, new Map())).toBeUndefined();
  });
});
