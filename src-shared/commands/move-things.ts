import type { Plan, Ref } from '../model/plan.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { command, refuse } from './command.ts';
import { adjoiningOf, deviceOf, enclosureOf, networkOf, nodeIn, obstructionOf, openingOf, nozzleOf } from './lookup.ts';
import { type Mapping, mapThings, nodesOfRefs, wholeRefs } from './map-things.ts';
import { setHeight } from './nozzle-drops.ts';
import { shiftNodes } from './pipe-columns.ts';
import { refuseShortPipes } from './pipe-joins.ts';
import { alongWithin_m, wallLines } from './rings.ts';
import { soundCoordinate_m } from './sound-value.ts';

/**
 * Shifts everything named. Pipes, nodes and nozzles take along what stands upright over or under them, and the runs
 * to them stretch; an opening slides along its wall as far as that reaches; corners and walls take their ends along.
 * @param dx east [m]  @param dy north [m]
 * @param rise_m up [m], for obstructions, devices whose height is known, adjoining spaces and network parts; 0 unless given
 * Refuses a locked floor plan, and where an outline would cross itself or a pipe would have no length.
 */
export const moveThings = command((plan: Plan, refs: readonly Ref[], _dx: number, _dy: number, _rise_m?: number) => `Move ${thingsInSentence(plan, refs)}`, (draft, refs: readonly Ref[], dx: number, dy: number, rise_m?: number) => {
  const dz = rise_m ?? 0;
  if (![dx, dy, dz].every(Number.isFinite)) refuse('This distance is not a number.');
  const mapping: Mapping = { point: ({ x, y }) => ({ x: x + dx, y: y + dy }), direction: (angle_rad) => angle_rad, isMirrored: false, isShift: true };
  mapThings(draft, refs, mapping, (parts) => {
    for (const [id, nodes] of nodesOfRefs(draft, parts)) shiftNodes(networkOf(draft, id), nodes, dx, dy);
    if (dz === 0) return;
    const nozzles = parts.flatMap((ref) => (ref.kind === 'nozzle' ? [ref] : []));
    const lifted = nodesOfRefs(draft, parts.filter(({ kind }) => kind !== 'nozzle'));
    for (const ref of nozzles) {
      const network = networkOf(draft, ref.network);
      const nozzle = nozzleOf(draft, ref);
      if (!lifted.get(ref.network)?.has(nozzle.node)) setHeight(draft, network, nozzle, nodeIn(network, nozzle.node).at.z + dz);
    }
    for (const [id, nodes] of lifted) {
      const network = networkOf(draft, id);
      for (const node of nodes) {
        const { at } = nodeIn(network, node);
        at.z = soundCoordinate_m(at.z + dz);
      }
      refuseShortPipes(network, nodes);
    }
  });
  for (const ref of wholeRefs(refs)) {
    if (ref.kind === 'opening') {
      const opening = openingOf(draft, ref);
      const line = wallLines(enclosureOf(draft, ref.level, ref.enclosure)).get(opening.wall) ?? refuse('This wall is no longer in the plan.');
      const length_m = Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y);
      const along_m = ((line.b.x - line.a.x) * dx + (line.b.y - line.a.y) * dy) / length_m;
      opening.along_m = alongWithin_m(opening, line, opening.along_m + along_m);
    } else if (ref.kind === 'obstruction' && dz !== 0) {
      const thing = obstructionOf(draft, ref);
      thing.bottom_m = soundCoordinate_m(thing.bottom_m + dz);
      thing.top_m = soundCoordinate_m(thing.top_m + dz);
    } else if (ref.kind === 'device' && dz !== 0) {
      const device = deviceOf(draft, ref);
      if (device.height_m !== null) device.height_m = soundCoordinate_m(device.height_m + dz);
    } else if (ref.kind === 'adjoining' && dz !== 0) {
      const space = adjoiningOf(draft, ref);
      space.floor_m = soundCoordinate_m(space.floor_m + dz);
    }
  }
});
