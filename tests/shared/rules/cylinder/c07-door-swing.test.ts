import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Opening } from '#shared/model/plan';
import { c07DoorSwing as rule } from '#shared/rules/cylinder/c07-door-swing';
import { type Placing, anyPlacing, checkOne, layout, placed } from '../../../support/layout.ts';

const DIAMETER_m = 0.3;
const ROOM = rectangle(6, 4);
const HERE: Placing = { angle_rad: 0, dx: 0, dy: 0, isMirrored: false };

/** A door 1 m wide in the south wall, x 1 to 2; its corner is in the south-west. */
const DOOR: Opening = { crossing: null, undercut_m: null, ventPath: [], id: 'd', name: 'Door', kind: 'door', wall: 'c0', along_m: 1.5, width_m: 1, bottom_m: 0, height_m: 2, swing: 'in', hinge: 'start', freeArea_m2: null, leadsTo: 'corridor', closes: true };

function plan(at: readonly [number, number], door: Partial<Opening> | null = {}, placing = HERE, diameter_m: number | null = DIAMETER_m) {
  const put = (x: number, y: number) => { const p = placed(planPoint(x, y), placing); return { x: p.x, y: p.y }; };
  const made = layout({
    room: ROOM.map(({ x, y }) => put(x, y)),
    limits: { cylinderDiameter_m: diameter_m },
    enclosure: door ? { openings: { d: { ...DOOR, ...door } } } : {},
  });
  const cylinder = made.networks.net?.cylinders.cy1;
  if (cylinder) cylinder.at = put(...at);
  return made;
}
const found = (...args: Parameters<typeof plan>) => checkOne(rule, plan(...args));
/** On the diagonal of the sweep from its hinge at (1, 0), its outside `clear` beyond the arc. */
const beyondArc = (clear: number): [number, number] => [1 + (1 + DIAMETER_m / 2 + clear) * Math.SQRT1_2, (1 + DIAMETER_m / 2 + clear) * Math.SQRT1_2];

describe('C7', () => {
  test.each([
    ['touching the arc', 0, 'ok'],
    ['just outside the arc', 0.001, 'ok'],
    ['just inside the arc', -0.001, 'stop'],
  ])('%s', (_, clear, verdict) => {
    expect(found(beyondArc(clear))).toMatchObject({ verdict, name: 'C1', measured: expect.closeTo(clear, 9), limit: 0 });
  });

  test('the arc decides, not the square around it', () => {
    expect(found([1.95, 0.95]).verdict).toBe('ok');
    expect(found([1.95, 0.95], { hinge: 'end' }).verdict).toBe('stop');
  });

  test('beside the open leaf', () => {
    expect(found([1 - DIAMETER_m / 2 - 0.001, 0.6]).verdict).toBe('ok');
    expect(found([1 - DIAMETER_m / 2 + 0.001, 0.6]).verdict).toBe('stop');
  });

  test('a door that swings out or slides leaves the room free, but not its doorway', () => {
    for (const swing of ['out', 'none'] as const) {
      expect(found([1.5, 0.5], { swing }).verdict).toBe('ok');
      expect(found([1.5, 0.1], { swing }).verdict).toBe('stop');
    }
  });

  test('says how far, of which door, and shows the arc', () => {
    const finding = found([1.5, 0.5]);
    expect(finding.text).toMatch(/^Stands .* inside the swing or the doorway of Door of Room\. Move it/);
    expect(finding.place?.areas?.[0]?.[0]?.length).toBeGreaterThan(20);
    expect(finding.cure?.kind).toBe('advice');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(found(beyondArc(1e-4), {}, placing).verdict).toBe('ok');
        expect(found(beyondArc(-1e-4), {}, placing).verdict).toBe('stop');
      }),
    );
  });

  test('missing data is not checked: no diameter, no door drawn, no room around it', () => {
    expect(found([4, 3], {}, HERE, null).text).toContain('Diameter');
    expect(found([4, 3], null).text).toBe('Not checked: no door of its room is drawn.');
    expect(found([9, 9]).text).toContain('stands in no drawn room');
  });

  test('a door that swings out onto a cylinder in no drawn room is a fault all the same', () => {
    expect(found([1.5, -0.5], { swing: 'out' }).verdict).toBe('stop');
  });
});
