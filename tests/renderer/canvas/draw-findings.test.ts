import { describe, expect, test } from 'vitest';
import type { Finding, Verdict, } from '#shared/rules/finding';
import { findingMarks, markAt, markPlace, marksAt, measuredText } from '../../../src-renderer/canvas/draw-findings.ts';

const finding = (rule: string, verdict: Verdict, change: Partial<Finding> = {}): Finding => ({
  rule,
  title: rule,
  verdict,
  subject: { kind: 'nozzle', network: 'net', id: 'z1' },
  name: 'N1',
  text: '',
  measure: 'length',
  basis: { formula: '', source: 'common practice' },
  place: { level: 'level-0', at: [{ x: 2, y: 1 }] },
  ...change,
});
const ALL: ReadonlySet<Verdict> = new Set(['stop', 'warn', 'not-checked', 'note', 'ok']);
const view = { camera: { at: { x: 0, y: 0 }, scale_px_m: 100 }, width: 800, height: 600 };

describe('marks', () => {
  test('findings at one place share a mark of the gravest verdict', () => {
    const marks = findingMarks([finding('N2', 'warn'), finding('N1', 'stop'), finding('N3', 'note')], 'level-0', ALL);
    expect(marks).toHaveLength(1);
    expect(marks[0]?.verdict).toBe('stop');
    expect(marks[0]?.findings.map(({ rule }) => rule)).toEqual(['N1', 'N2', 'N3']);
  });

  test('kept findings, other levels and findings without a place have none', () => {
    const all = [finding('N1', 'ok'), finding('N2', 'stop', { place: { level: 'level-9', at: [{ x: 0, y: 0 }] } }), finding('N3', 'stop', { place: undefined })];
    expect(findingMarks(all, 'level-0', ALL)).toEqual([]);
  });

  test('only wanted verdicts are marked', () => {
    expect(findingMarks([finding('N1', 'not-checked')], 'level-0', new Set(['stop']))).toEqual([]);
  });

  test('marks that would cover each other are one, with the gravest verdict and all findings', () => {
    const far = finding('N2', 'stop', { place: { level: 'level-0', at: [{ x: 2.3, y: 1 }] } });
    const marks = findingMarks([finding('N1', 'warn'), far], 'level-0', ALL);
    expect(marksAt(marks, 200)).toHaveLength(2);
    const [one, ...others] = marksAt(marks, 20);
    expect(others).toEqual([]);
    expect(one?.verdict).toBe('stop');
    expect(one?.findings.map(({ rule }) => rule)).toEqual(['N2', 'N1']);
  });

  test('a mark is found under the pointer, beside the thing it is about', () => {
    const marks = findingMarks([finding('N1', 'stop')], 'level-0', ALL);
    const mark = marks[0];
    if (!mark) throw new Error('there is a mark');
    const at = markPlace(view, mark);
    expect(markAt(view, marks, { x: at.x + 4, y: at.y })).toBe(mark);
    expect(markAt(view, marks, { x: 600, y: 200 })).toBeUndefined();
  });
});

test('a measured length is told apart from its limit whenever they differ', () => {
  const text = measuredText(finding('N1', 'stop', { measured: 0.2539, limit: 0.254 }), 'feet');
  const [, measured, limit] = /^(.*) \(limit (.*)\)$/.exec(text) ?? [];
  expect(measured).toMatch(/\d/);
  expect(measured).not.toBe(limit);
  expect(measuredText(finding('N5', 'stop', { measure: 'angle', measured: 1, limit: 2 }), 'feet')).toBe('');
});
