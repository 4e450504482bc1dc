import { describe, expect, test } from 'vitest';
import { weakestOf } from '#shared/calculations/design/vent';
import { e09WallStrength as rule } from '#shared/rules/enclosure/e09-wall-strength';
import { checkEnclosure, servedRoom } from '../../../support/enclosure-sums.ts';

const asked = (pressures_Pa: readonly (number | null)[]) => {
  const plan = servedRoom();
  const room = plan.levels['level-0']?.enclosures.e1;
  if (!room) throw new Error('The layout has its room.');
  room.outline.forEach((corner, i) => {
    corner.wall.allowablePressure_Pa = pressures_Pa[i] ?? null;
  });
  return checkEnclosure(rule, plan, { weakest: weakestOf({ kind: 'enclosure', level: 'level-0', id: 'e1' }, room, plan) });
};

describe('E9', () => {
  test('every wall known is kept and names the weakest', () => {
    expect(asked([500, 240, 300, 500])).toMatchObject({ verdict: 'ok', measured: 0, limit: 0, text: 'The weakest is Wall 2 of Room with 240 Pa.' });
  });
  test('one unknown wall is a stop at that wall', () => {
    expect(asked([500, 240, null, 500])).toMatchObject({
      verdict: 'stop',
      measured: 1,
      margin: -1,
      text: 'It is not known what pressure Wall 3 of Room bears. Enter it, or no relief vent can be sized.',
      place: { at: [{ x: 3, y: 4 }] },
    });
  });
  test('several are counted, marked and all named in the cure', () => {
    const finding = asked([null, null, null, 500]);
    expect(finding).toMatchObject({ verdict: 'stop', measured: 3, text: expect.stringContaining('Wall 1 of Room and 2 other walls bear') });
    expect(finding.place?.at).toHaveLength(3);
    expect(finding.cure?.text).toContain('Wall 1 of Room, Wall 2 of Room, Wall 3 of Room');
  });
});
