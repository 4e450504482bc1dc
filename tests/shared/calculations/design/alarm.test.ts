import { describe, expect, test } from 'vitest';
import { type Sounder, alarmOf } from '#shared/calculations/design/alarm';
import { derivePlan } from '#shared/derived/derive-plan';
import { momentsOf } from '#shared/geometry/moments';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { newDevice } from '#shared/model/new-device';
import { type LayoutSpec, layout } from '../../../support/layout.ts';

const EAR_m = 1.524;

const sounder = (x: number, y: number, change: Partial<Sounder> = {}): Sounder => {
  const made = newDevice('sounder', `s${x}-${y}`, 'Sounder', { x, y });
  if (made.kind !== 'sounder') throw new Error('A sounder was asked for.');
  return { ...made, height_m: EAR_m, facing_rad: null, sound_dBA: 90, light_cd: 15, ...change };
};

function alarm(sounders: readonly Sounder[], needed_dBA = 80, spec: LayoutSpec = {}, ambient_dBA = 65) {
  const [space] = derivePlan(layout(spec)).spaces;
  if (!space) throw new Error('The layout has its room.');
  return alarmOf(space, sounders, ambient_dBA, needed_dBA);
}

describe('the alarm of a room', () => {
  // By hand: the far corner of 6 × 4 m from (0, 0) is 7.2111 m off: 90 − 20·lg(7.2111/3) = 82.382 dB.
  test('by hand: one sounder at the height of the ear, heard in the far corner', () => {
    const { faintest, unheard } = alarm([sounder(0, 0)]);
    expect(faintest?.level_dBA).toBeCloseTo(82.3824, 3);
    expect(faintest?.at).toMatchObject({ x: 6, y: 4 });
    expect(unheard).toEqual([]);
  });

  // By hand: 1.5 m higher the way is √(52 + 2.25) = 7.3655 m: 82.199 dB.
  test('by hand: its height counts', () => {
    expect(alarm([sounder(0, 0, { height_m: EAR_m + 1.5 })]).faintest?.level_dBA).toBeCloseTo(90 - 20 * Math.log10(Math.sqrt(54.25) / 3), 6);
  });

  // By hand: two in one place are 3.0103 dB louder.
  test('two in one place are 3 dB louder', () => {
    expect(alarm([sounder(0, 0), sounder(0, 0)]).faintest?.level_dBA).toBeCloseTo(82.3824 + 3.0103, 3);
  });

  // By hand: nobody's ear is nearer than 1 m: 90 + 20·lg 3 = 99.542 dB, with 65 dB of noise 99.5438 dB.
  test('by hand: loudest at the sounder, with the noise', () => {
    expect(alarm([sounder(3, 2)]).loudest?.level_dBA).toBeCloseTo(10 * Math.log10(10 ** 9.95424250943932 + 10 ** 6.5), 6);
  });

  test('a wall in between shuts the sound out, and the rest is shown', () => {
    const partition = { kind: 'partition' as const, footprint: rectangle(0.1, 4, planPoint(3, 0)), bottom_m: 0, top_m: 2.7 };
    const { faintest, unheard } = alarm([sounder(1, 1)], 80, { obstructions: [partition] });
    expect(faintest?.level_dBA).toBe(-Infinity);
    expect(Math.abs(momentsOf(unheard).area_m2 - 2.9 * 4)).toBeLessThan(0.6);
  });

  // By hand: 90 dB at 3 m are 84 dB at 5.986 m; of the room of 6 × 4 m from (0, 0) the part beyond is unheard.
  test('by hand: floor that needs more than it gets', () => {
    const radius_m = 3 * 10 ** (6 / 20);
    let beyond_m2 = 0;
    for (let x = 0.005; x < 6; x += 0.01) for (let y = 0.005; y < 4; y += 0.01) if (Math.hypot(x, y) > radius_m) beyond_m2 += 1e-4;
    expect(Math.abs(momentsOf(alarm([sounder(0, 0)], 84).unheard).area_m2 - beyond_m2)).toBeLessThan(0.8);
  });

  test('what is not known is left out', () => {
    expect(alarm([sounder(0, 0, { sound_dBA: null }), sounder(0, 0, { height_m: null }), sounder(0, 0, { isHeard: false })])).toMatchObject({ faintest: undefined, loudest: undefined });
    expect(alarm([sounder(0, 0, { light_cd: null })]).unlit).toHaveLength(1);
    expect(alarm([sounder(3, 0)]).unlit).toEqual([]);
  });
});
