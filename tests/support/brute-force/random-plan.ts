import { rectangle } from '#shared/geometry/outline';
import type { Plan } from '#shared/model/plan';
import { place3, planBuilder } from '../plan-builder.ts';

/** A stream of numbers from 0 to 1 that is the same for the same seed. Source: mulberry32, public domain. */
function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/**
 * A building that somebody might draw, with as many mistakes as chance makes: one or two rooms, square or L-shaped,
 * with beams, columns, racks, ducts and partitions, and networks that run squarely to their nozzles.
 */
export function randomPlan(seed: number): Plan {
  const next = numbers(seed);
  const between = (least: number, most: number): number => least + (most - least) * next();
  const chance = (share: number): boolean => next() < share;
  const pick = <T>(...from: readonly T[]): T => from[Math.floor(next() * from.length)] as T;
  const built = planBuilder();
  const roomCount = chance(0.3) ? 2 : 1;
  for (let i = 0; i < roomCount; i += 1) {
    const x = i * 14;
    const [width, depth, height] = [between(3.5, 11), between(3, 9), between(2.2, chance(0.1) ? 4.2 : 3.2)];
    const corner = { x: x + width * between(0.45, 0.8), y: depth * between(0.45, 0.8) };
    const ring = chance(0.35)
      ? [{ x, y: 0 }, { x: x + width, y: 0 }, { x: x + width, y: corner.y }, { x: corner.x, y: corner.y }, { x: corner.x, y: depth }, { x, y: depth }]
      : rectangle(width, depth, { x, y: 0 });
    built.outline(ring, chance(0.05) ? null : height);
    if (chance(0.25)) built.ceilingZone(rectangle(width * 0.3, depth * 0.3, { x: x + width * 0.1, y: depth * 0.1 }), height - between(0.1, 0.5));
    if (chance(0.7)) built.opening(0, width / 2, 0.9, { swing: pick('in', 'out'), hinge: pick('start', 'end') });
    for (let beam = Math.floor(next() * 3); beam > 0; beam -= 1) {
      const at = x + between(0.1, 0.9) * width;
      built.obstruction('beam', rectangle(0.3, depth, { x: at, y: 0 }), height - between(0.15, 0.6), height, { name: `Beam ${beam} of ${i}` });
    }
    for (let thing = Math.floor(next() * 4); thing > 0; thing -= 1) {
      const place = { x: x + between(0.05, 0.8) * width, y: between(0.05, 0.8) * depth };
      const footprint = rectangle(between(0.2, 1.5), between(0.2, 1.5), place);
      const kind = pick('rack', 'column', 'duct', 'cabinet');
      const [bottom, top] = kind === 'duct' ? [height - between(0.3, 0.8), height - 0.05] : [0, kind === 'column' ? height : between(1, height)];
      built.obstruction(kind, footprint, bottom, top, { name: `${kind} ${thing} of ${i}` });
    }
    built.network({ name: `Pipe ${i}` });
    const cylinderX = x + between(0.1, 0.9) * width;
    for (let cylinder = pick(1, 1, 2, 3); cylinder > 0; cylinder -= 1) built.cylinder(cylinderX + 0.35 * cylinder, 0.2, -Math.PI / 2);
    const main = height - between(0.1, 0.6);
    const start = place3(cylinderX, 0.2, 1.8);
    const mainY = between(0.3, 0.9) * depth;
    const nozzleCount = pick(1, 1, 2, 2, 3, 4);
    let from = place3(cylinderX, mainY, main);
    built.run([start, place3(cylinderX, 0.2, main), from], '1');
    for (let n = 0; n < nozzleCount; n += 1) {
      const at = { x: x + between(0.02, 0.98) * width, y: between(0.02, 0.98) * depth };
      const z = height - between(-0.05, 0.45);
      const on = place3(at.x, mainY, main);
      built.run([from, on], '1').run([on, place3(at.x, at.y, main), place3(at.x, at.y, z)]);
      from = on;
      const axis = pick(0, Math.PI / 2, Math.PI / 4, between(0, Math.PI));
      built.nozzle(at.x, at.y, z, chance(0.2) ? [axis] : [axis, axis + Math.PI], { rotation_rad: chance(0.3) ? between(0, 6) : 0, tilt_rad: chance(0.1) ? between(0, 0.1) : 0 });
    }
    if (chance(0.15)) for (let far = 0; far < 3; far += 1) built.run([from, place3(from.x, from.y + 9 * (far % 2 ? -1 : 1), from.z + 0.2 * (far + 1))]);
    if (chance(0.5)) {
      built.device('manual-release', x + width / 2 + 0.8, 0.05, { height_m: between(1, 1.5) });
      if (chance(0.7)) built.device('door-button', x + width / 2 + 0.8 + between(0.1, 1.2), 0.05, { height_m: 1.1 });
    }
  }
  return built.plan;
}
