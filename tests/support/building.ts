import { freeze } from 'immer';
import { rectangle } from '#shared/geometry/outline';
import type { PlanPoint, PlanPoint3 } from '#shared/geometry/point';
import type { Enclosure, Plan } from '#shared/model/plan';
import { type PlanBuilder, place3, planBuilder } from './plan-builder.ts';
import { KNOWN_ROOM, REGULATOR, RELEASE, finishRoom } from './whole-plan.ts';

/** Room, wall between two rooms and height of the main [m]. */
const WIDTH_m = 8;
const DEPTH_m = 6;
const WALL_m = 0.2;
const MAIN_m = 2.6;
const NOZZLE_m = 2.4;
const CEILING_m = 3;
const PAIRS_A_LEVEL = 50;
const PAIRS_A_ROW = 10;

/** Tees of a pair of rooms along the main [m from its west wall], and the pieces of pipe before each. */
const TEES: readonly (readonly [along_m: number, pieces: number])[] = [[1.8, 5], [2.2, 1], [5.8, 9], [6.2, 1], [10, 9], [10.4, 1], [14, 8], [14.4, 1]];

const EXCLUDED = { reason: 'Nothing in it can burn', by: 'A. Person', date: '2026-01-05' } as const;

/** What is above or below every tenth room. */
function voidsOf(room: number): Partial<Enclosure> {
  if (room % 10 === 3) return { underFloor: { depth_m: 0.4, isProtected: false, exclusion: { ...EXCLUDED } } };
  if (room % 10 === 8) return { ceilingVoid: { depth_m: 0.5, isProtected: false, exclusion: { ...EXCLUDED } } };
  return {};
}

/** A room with walls of which all is known, a door, ten things that stand or hang in it, and what warns the people in it. */
function furnish(built: PlanBuilder, at: PlanPoint, room: number): void {
  built.room(WIDTH_m, DEPTH_m, CEILING_m, at, { ...structuredClone(KNOWN_ROOM), ...voidsOf(room), name: `Room ${room + 1}` });
  finishRoom(built, 0.05).opening(0, 6.5, 0.9, { closes: true, leadsTo: 'corridor' });
  const thing = (kind: 'beam' | 'duct' | 'rack' | 'tray' | 'light', x: number, y: number, width_m: number, depth_m: number, bottom_m: number, top_m: number): void => {
    built.obstruction(kind, rectangle(width_m, depth_m, { x: at.x + x, y: at.y + y }), bottom_m, top_m);
  };
  thing('beam', 4, 0, 0.2, DEPTH_m, 2.8, CEILING_m);
  thing('duct', 0.5, 5, 7, 0.5, 2.7, 2.95);
  thing('duct', 7, 0.5, 0.5, 4, 2.72, 2.95);
  thing('tray', 0.5, 0.3, 7, 0.2, 2.3, 2.38);
  thing('light', 3, 2.9, 1.2, 0.2, 2.9, CEILING_m);
  for (let i = 0; i < 5; i += 1) thing('rack', 1.2 + 1.2 * i, 2, 0.8, 2, 0, i % 2 === 0 ? 2 : 2.2);
  built.device('detector', at.x + 2, at.y + 3).device('detector', at.x + 6, at.y + 3).device('sounder', at.x + 0.1, at.y + 1).device('sign', at.x + 6.5, at.y - 0.1).device('manual-release', at.x + 5.8, at.y + 0.1);
}

/** Where the main goes through the wall between two rooms. */
const sleeve = (built: PlanBuilder, wall: number, along_m: number): PlanBuilder =>
  built.opening(wall, along_m, 0.08, { name: 'Sleeve', kind: 'penetration', swing: 'none', bottom_m: MAIN_m - 0.04, height_m: 0.08, freeArea_m2: 0, closes: true, leadsTo: 'room', crossing: { sleeve_m: 0.08, rating: '1 h', seal: 'S-1' } });

const between = (a: PlanPoint3, b: PlanPoint3, pieces: number): PlanPoint3[] =>
  Array.from({ length: pieces }, (_, i) => place3(a.x + ((b.x - a.x) * (i + 1)) / pieces, a.y + ((b.y - a.y) * (i + 1)) / pieces, a.z + ((b.z - a.z) * (i + 1)) / pieces));

/** A network of eight nozzles and eighty pipes in two rooms side by side: two cylinders, a main, and to each nozzle a branch with drop and dirt trap. */
function pipePair(built: PlanBuilder, { x, y }: PlanPoint): void {
  built.network({ assembly: [{ ...REGULATOR }], release: structuredClone(RELEASE), installation: { bonding: 'bonded', marking: 'Yellow bands', finish: 'Primer' } });
  built.cylinder(x + 0.25, y + 0.5, Math.PI).cylinder(x + 0.25, y + 0.9, Math.PI);
  const source = place3(x + 0.3, y + 0.8, 2);
  const up = { ...source, z: MAIN_m };
  const turn = place3(x + 0.3, y + DEPTH_m / 2, MAIN_m);
  const main = [source, up, ...between(up, turn, 4)];
  for (const [along_m, pieces] of TEES) main.push(...between(main.at(-1) ?? turn, place3(x + along_m, turn.y, MAIN_m), pieces));
  built.run(main, '1-1/4').support(x + 0.3, y + 2, MAIN_m, 'rigid', 2000);
  for (const [i, [along_m]] of TEES.entries()) {
    const across_m = i % 2 === 0 ? -1.6 : 1.6;
    const tee = place3(x + along_m, turn.y, MAIN_m);
    const over = { ...tee, y: tee.y + across_m };
    const orifice = { ...over, z: NOZZLE_m };
    built.run([tee, ...between(tee, over, 3)], '3/4').run([over, orifice], '3/4').run([over, { ...over, y: over.y + Math.sign(across_m) * 0.15 }], '3/4');
    const trap = built.plan.networks[built.networkId]?.nodes[built.inNetwork('node').id];
    if (trap) trap.part = 'dirt-trap';
    built.nozzle(orifice.x, orifice.y, orifice.z, [0, Math.PI / 2, Math.PI, -Math.PI / 2], { orificeArea_m2: 2.2e-5 });
    built.support(tee.x + 0.1, tee.y, MAIN_m, 'rigid', 2000).support(over.x, tee.y + across_m * 0.9, MAIN_m, 'rigid', 2000);
  }
}

/**
 * An invented building: pairs of rooms on several levels, each pair with its network. The whole of it has
 * 2,000 nozzles, 20,000 pipes, 5,000 obstructions and 500 rooms.
 * @param share  how much of it, e.g. 0.1 for a tenth
 * @returns a frozen plan, as one that was opened is
 */
export function building(share: number): Plan {
  const built = planBuilder();
  const pairs = Math.max(1, Math.round(250 * share));
  for (let pair = 0; pair < pairs; pair += 1) {
    const place = pair % PAIRS_A_LEVEL;
    if (place === 0 && pair > 0) built.level(`Floor ${pair / PAIRS_A_LEVEL}`, (pair / PAIRS_A_LEVEL) * 4);
    const west = { x: (place % PAIRS_A_ROW) * 18, y: Math.floor(place / PAIRS_A_ROW) * 8 };
    furnish(built, west, 2 * pair);
    sleeve(built, 1, DEPTH_m / 2);
    const east = { x: west.x + WIDTH_m + WALL_m, y: west.y };
    furnish(built, east, 2 * pair + 1);
    sleeve(built, 3, DEPTH_m / 2);
    pipePair(built, west);
  }
  return freeze(built.plan, true);
}

/** How many of each there are. */
export const countsOf = (plan: Plan) => {
  const networks = Object.values(plan.networks);
  const levels = Object.values(plan.levels);
  const sum = (counts: readonly Record<string, unknown>[]): number => counts.reduce((all, record) => all + Object.keys(record).length, 0);
  return {
    nozzles: sum(networks.map(({ nozzles }) => nozzles)),
    pipes: sum(networks.map(({ pipes }) => pipes)),
    obstructions: sum(levels.map(({ obstructions }) => obstructions)),
    rooms: sum(levels.map(({ enclosures }) => enclosures)),
  };
};
