import { describe, expect, test } from 'vitest';
import type { Release } from '#shared/model/plan';
import { l07ActuatorWatched } from '#shared/rules/release/l07-actuator-watched';
import { l08PanelListing } from '#shared/rules/release/l08-panel-listing';
import { check, checkOne, layout } from '../../../support/layout.ts';
import { withRelease } from '../../../support/releasing-circuit.ts';

describe('L7', () => {
  test.each<[boolean | null, string]>([
    [true, 'ok'],
    [false, 'stop'],
    [null, 'not-checked'],
  ])('taking the actuator off shows: %s', (isActuatorWatched, verdict) => {
    expect(checkOne(l07ActuatorWatched, withRelease({ isActuatorWatched })).verdict).toBe(verdict);
  });
});

describe('L8', () => {
  const listed = (panel: Partial<Release['panel']>) => checkOne(l08PanelListing, withRelease({ panel: { isListed: true, isCompatible: true, listing: 'Listing of the test', ...panel } }));

  test.each<[string, Partial<Release['panel']>, string]>([
    ['listed, and with the solenoid', {}, 'ok'],
    ['not listed', { isListed: false }, 'stop'],
    ['not with the solenoid', { isCompatible: false }, 'stop'],
    ['nobody has looked', { isListed: null }, 'not-checked'],
    ['nobody has looked whether with the solenoid', { isCompatible: null }, 'not-checked'],
    ['no listing written down', { listing: ' ' }, 'not-checked'],
    ['a fault is hidden by nothing', { isListed: null, isCompatible: false, listing: '' }, 'stop'],
  ])('%s', (_, panel, verdict) => {
    expect(listed(panel).verdict).toBe(verdict);
  });

  test('says both, and prints the listing', () => {
    expect(listed({})).toMatchObject({ text: 'The panel is listed for releasing. It is listed together with this solenoid.', inputs: [{ value: 'yes' }, { value: 'yes' }, { label: 'Listing', value: 'Listing of the test' }] });
  });
});

test('without a circuit neither is asked', () => {
  expect([l07ActuatorWatched, l08PanelListing].flatMap((rule) => check(rule, layout({})))).toEqual([]);
});
