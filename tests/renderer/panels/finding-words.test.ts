import type { Finding } from '#shared/rules/finding';
import { describe, expect, test } from 'vitest';
import { OPEN_VERDICTS, asksForProfile, figuresOf, filterFindings } from '../../../src-renderer/panels/findings/finding-words.ts';

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

describe('figures of every kind', () => {
  test.each([
    ['time', 60.01, 60, 'stop', { measured: '60.01 s', limit: '60.00 s', margin: 'missed by 0.0100 s' }],
    ['pressureDifference', 250.4, 250, 'stop', { measured: '250.4 Pa', limit: '250.0 Pa', margin: 'missed by 0.4 Pa' }],
    ['force', 900, 1000, 'ok', { measured: '900 N', limit: '1000 N', margin: '100 N to spare' }],
    ['orificeArea', 3e-5, 2e-5, 'stop', { measured: '30.0 mm²', limit: '20.0 mm²', margin: 'missed by 10.0 mm²' }],
    ['ratio', 0.07, 0.05, 'warn', { measured: '7.0 %', limit: '5.0 %', margin: 'missed by 2.0 %' }],
    ['factor', 0.9, 0.8, 'ok', { measured: '0.9', limit: '0.8' }],
  ] as const)('%s', (measure, measured, limit, verdict, printed) => {
    const margin = verdict === 'ok' ? Math.abs(measured - limit) : -Math.abs(measured - limit);
    expect(figuresOf(finding({ measure, measured, limit, margin, verdict }), 'metric')).toMatchObject(printed);
  });

  test('what is kept within float noise is not called missed', () => {
    expect(figuresOf(finding({ measure: 'mass', measured: 40, limit: 40, margin: -1e-9, verdict: 'ok' }), 'metric').margin).toBe('0.0 kg to spare');
  });
});

describe('the way to the unit profile', () => {
  test('is offered where the profile lacks something, not wherever data is missing', () => {
    expect(asksForProfile(finding({ verdict: 'not-checked', text: 'Not checked: “Agent mass” is blank in the unit profile “A”.' }))).toBe(true);
    expect(asksForProfile(finding({ verdict: 'not-checked', text: 'Not checked: the leakage of the enclosure is not known.' }))).toBe(false);
    expect(asksForProfile(finding({ verdict: 'warn', subject: { kind: 'profile', id: 'p' } }))).toBe(true);
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
});
