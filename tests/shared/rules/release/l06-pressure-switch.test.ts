import { describe, expect, test } from 'vitest';
import { l06PressureSwitch as rule } from '#shared/rules/release/l06-pressure-switch';
import { absoluteOf_Pa, bar_Pa, celsius_K } from '#shared/units/convert';
import { type LayoutSpec, check, checkOne, layout } from '../../../support/layout.ts';
import { coldRoom, withRelease } from '../../../support/releasing-circuit.ts';

// The sample unit: filled to 300 bar gauge at 15 °C, its switch turns over at 250 bar gauge.
const setTo = (gauge_bar: number, more: LayoutSpec = {}, isClosedWhenCharged = false) =>
  checkOne(rule, withRelease({ pressureSwitch: { setPoint_Pa: absoluteOf_Pa(bar_Pa(gauge_bar)), isClosedWhenCharged } }, { enclosure: coldRoom(celsius_K(18)), ...more }));
/** The manual's set point, in a room of that least temperature. */
const manual = (gauge_bar: number, least_C?: number): LayoutSpec => ({
  limits: { lowPressureSwitch_Pa: absoluteOf_Pa(bar_Pa(gauge_bar)) },
  enclosure: least_C === undefined ? {} : coldRoom(celsius_K(least_C)),
});

describe('L6', () => {
  test.each([
    ['as the manual says', 250, 'ok'],
    ['1 bar above it', 251, 'ok'],
    ['1 bar below it', 249, 'ok'],
    ['more than 1 bar above it', 251.01, 'stop'],
    ['more than 1 bar below it', 248.99, 'stop'],
  ])('a set point %s', (_, gauge_bar, verdict) => {
    expect(setTo(gauge_bar)).toMatchObject({ verdict, measured: expect.closeTo(bar_Pa(gauge_bar), 3), limit: bar_Pa(250) });
  });

  test('prints gauge pressures, and the state of the contact to be compared', () => {
    expect(setTo(250).text).toBe('Is set to 250.0 bar gauge; the unit’s is 250.0 bar gauge. Its contact is drawn open for the charged cylinder: compare it with the switch.');
    expect(setTo(250, {}, true).text).toContain('closed for the charged cylinder');
    expect(setTo(200).text).toBe('Is set to 200.0 bar gauge; the unit’s is 250.0 bar gauge. Correct it.');
    expect(setTo(250).basis.caution).toContain('Contacts are drawn for the charged cylinder.');
  });

  // CoolProp 8.0.0: nitrogen of 301.01325 bar at 15 °C comes to 276.812 bar at 0 °C and 292.959 bar at 10 °C, at the
  // same density: 275.798 and 291.946 bar gauge.
  test.each([
    ['just below what a full cylinder reads in the cold', 275.79, 0, 'ok'],
    ['just above it', 275.81, 0, 'stop'],
    ['just below what it reads in a warmer room', 291.94, 10, 'ok'],
    ['just above that', 291.96, 10, 'stop'],
    ['above the fill pressure', 301, 15, 'stop'],
  ])('a set point %s', (_, gauge_bar, least_C, verdict) => {
    expect(setTo(gauge_bar, manual(gauge_bar, least_C)).verdict).toBe(verdict);
  });

  test('a switch that a cold day turns over is said to', () => {
    const finding = setTo(280, manual(280, 0));
    expect(finding.text).toMatch(/^Is set to 280\.0 bar gauge, but a full cylinder at 0\.0 °C reads 275\.8 bar gauge: it would signal a loss though nothing is lost\. Set it lower\.$/);
  });

  test('while nobody knows how cold it gets, what would fail somewhere is not checked', () => {
    expect(setTo(275, manual(275))).toMatchObject({ verdict: 'not-checked' });
    expect(setTo(200, manual(200)).verdict).toBe('ok');
    expect(setTo(305, manual(305)).verdict).toBe('stop');
  });

  test('the coldest of the rooms counts, and a cylinder out of any room is not known', () => {
    expect(setTo(275, { ...manual(275, 10), cylinders: 3 }).verdict).toBe('ok');
    expect(setTo(275, { ...manual(275, 10), cylinders: 30 }).verdict).toBe('not-checked');
  });

  test('missing data is not checked, and hides no fault', () => {
    expect(checkOne(rule, withRelease({ pressureSwitch: null })).verdict).toBe('not-checked');
    expect(setTo(250, { limits: { lowPressureSwitch_Pa: null } }).verdict).toBe('not-checked');
    expect(setTo(250, { limits: { fillPressure_Pa: null } }).verdict).toBe('not-checked');
    expect(setTo(200, { limits: { fillPressure_Pa: null } }).verdict).toBe('stop');
    expect(setTo(305, { limits: { lowPressureSwitch_Pa: null } }).verdict).toBe('stop');
  });

  test('without a circuit there is nothing to ask', () => {
    expect(check(rule, layout({}))).toEqual([]);
  });
});
