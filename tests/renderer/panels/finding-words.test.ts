import type { Finding } from '#shared/rules/finding';
import { describe, expect, test } from 'vitest';
import { OPEN_VERDICTS, countByVerdict, figuresOf, filterFindings, rulesOf } from '../../../src-renderer/panels/findings/finding-words.ts';

const finding = (part: Partial<Finding>): Finding => ({
  rule: 'N1',
  title: 'Wall clearance',
  verdict: 'stop',
  subject: { kind: 'nozzle', network: 'n', id: 'x' },
  name: 'N1',
  text: 'Too near.',
  measure: 'length',
  basis: { formula: 'f', source: 's' },
  ...part,
});

describe('figures of a finding', () => {
  test('a fault by a hair never reads like the limit', () => {
    const { measured, limit, margin } = figuresOf(finding({ measured: 0.0254 * 9.97, limit: 0.254, margin: 0.0254 * -0.03 }), 'feet');
    expect(measured).not.toBe(limit);
    expect(margin).toMatch(/^missed by /);
  });

  test('what is missing stays out', () => {
    expect(figuresOf(finding({}), 'metric')).toEqual({ measured: null, limit: null, margin: null });
  });

  test('a kept limit has something to spare', () => {
    expect(figuresOf(finding({ measured: 0.3, limit: 0.254, margin: 0.046 }), 'metric').margin).toMatch(/ to spare$/);
  });
});

describe('the list of findings', () => {
  const findings = [
    finding({}),
    finding({ rule: 'P10', title: 'Pipe volume', verdict: 'ok' }),
    finding({ rule: 'P2', title: 'Path length', verdict: 'not-checked', place: { level: 'up', at: [{ x: 0, y: 0 }] } }),
  ];

  test('shows what asks for something first', () => {
    expect(filterFindings(findings, { verdicts: OPEN_VERDICTS, rule: null, level: null })).toHaveLength(2);
  });

  test('filters by rule and level; a finding without a place belongs to every level', () => {
    expect(filterFindings(findings, { verdicts: OPEN_VERDICTS, rule: 'P2', level: null })).toHaveLength(1);
    expect(filterFindings(findings, { verdicts: OPEN_VERDICTS, rule: null, level: 'down' }).map(({ rule }) => rule)).toEqual(['N1']);
  });

  test('lists rules in catalogue order and counts verdicts', () => {
    expect(rulesOf(findings).map(({ id }) => id)).toEqual(['N1', 'P2', 'P10']);
    expect(countByVerdict(findings)).toEqual({ stop: 1, warn: 0, 'not-checked': 1, note: 0, ok: 1 });
  });
});
