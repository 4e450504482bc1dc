import { describe, expect, test } from 'vitest';
import type { Enclosure, Wall } from '#shared/model/plan';
import { e14WallsToSlab as rule } from '#shared/rules/enclosure/e14-walls-to-slab';
import { checkOne } from '../../../support/layout.ts';
import { builtRoom } from '../../../support/served-room.ts';

const open: Enclosure['ceilingVoid'] = { depth_m: 0.5, isProtected: false, exclusion: null };
function asked(reaches: readonly Wall['reaches'][], room: Partial<Enclosure> = {}) {
  const { plan } = builtRoom(room);
  const [enclosure] = Object.values(plan.levels['level-0']?.enclosures ?? {});
  for (const [i, { wall }] of (enclosure?.outline ?? []).entries()) wall.reaches = reaches[i % reaches.length] ?? 'unknown';
  return checkOne(rule, plan);
}

describe('E14', () => {
  test.each<[string, readonly Wall['reaches'][], Partial<Enclosure>, string]>([
    ['without a void the ceiling is the slab', ['unknown'], {}, 'ok'],
    ['nor does a wall end below it', ['ceiling'], { ceiling: { make: 'hard', clipped_m: null } }, 'ok'],
    ['under a void, all up to the slab', ['slab'], { ceilingVoid: open }, 'ok'],
    ['under a void, one up to the ceiling', ['slab', 'slab', 'slab', 'ceiling'], { ceilingVoid: open }, 'warn'],
    ['under a protected void, one up to the ceiling', ['slab', 'slab', 'slab', 'ceiling'], { ceilingVoid: { ...open, isProtected: true } }, 'warn'],
    ['under a void, one not looked at', ['slab', 'slab', 'slab', 'unknown'], { ceilingVoid: open }, 'not-checked'],
    ['under tiles whose void is not entered', ['unknown'], { ceiling: { make: 'tiles', clipped_m: null } }, 'not-checked'],
    ['under tiles, up to the slab', ['slab'], { ceiling: { make: 'tiles', clipped_m: null } }, 'ok'],
    ['under tiles, up to the ceiling', ['ceiling'], { ceiling: { make: 'tiles', clipped_m: null } }, 'warn'],
  ])('%s', (_, reaches, room, verdict) => expect(asked(reaches, room).verdict).toBe(verdict));
  test('names the walls and shows them', () => {
    expect(asked(['ceiling', 'slab', 'ceiling', 'unknown'], { ceilingVoid: open })).toMatchObject({
      text: 'Wall 1 and wall 3 end at the ceiling: gas leaves over it through the void.',
      measured: 2,
      margin: -2,
      place: { at: [{ x: 3, y: 0 }, { x: 3, y: 4 }] },
      inputs: [{ value: '1' }, { value: '2' }, { value: '1' }],
    });
  });
});
