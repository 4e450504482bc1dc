import type { Network, Plan } from '#shared/model/plan';
import { type Body, type Spot, type Spot3, along, border, far, far3, isIn, isInBody, nearest, toBody, turnBetween } from './sampling.ts';

/** A fault that the catalogue names, by rule and by the name of the thing. Only faults well beyond their limit are told. */
export interface BruteFault {
  readonly rule: string;
  readonly name: string;
  readonly by: string;
}

/** Sampling sees no finer than this [m]: what is nearer to its limit is left open. */
const FINE = 0.006;
/** The same for directions [rad]. */
const FINE_rad = 0.01;

type Limits = Plan['profiles'][string]['limits'];

interface Room {
  readonly name: string;
  readonly ring: readonly Spot[];
  readonly wallPlaces: readonly Spot[];
  readonly ceiling: (p: Spot) => number | null;
  readonly enclosure: Plan['levels'][string]['enclosures'][string];
}

interface Hung {
  readonly name: string;
  readonly p: Spot3;
  readonly holes: readonly number[];
  readonly tilt: number;
  readonly rotation: number;
  readonly limits: Limits;
  readonly footprint: Plan['profiles'][string]['footprint'];
}

const value = (limits: Limits, key: keyof Limits): number => limits[key]?.value ?? Number.NaN;

function roomsOf(level: Plan['levels'][string]): Room[] {
  return Object.values(level.enclosures).map((enclosure) => {
    const ring = enclosure.outline.map(({ x, y }) => ({ x, y }));
    const zones = Object.values(enclosure.ceilingZones);
    return {
      name: enclosure.name,
      ring,
      wallPlaces: border(ring, 0.004),
      ceiling: (p) => zones.find((zone) => isIn(p, zone.outline))?.height_m ?? enclosure.height_m,
      enclosure,
    };
  });
}

/** How far a jet runs in the plane of its orifice before it leaves the room or meets a body. */
function freeRun(from: Spot3, azimuth: number, room: Room, bodies: readonly Body[], most: number): number {
  for (let run = 0; run < most; run += 0.006) {
    const at = { x: from.x + Math.cos(azimuth) * run, y: from.y + Math.sin(azimuth) * run, z: from.z };
    if (!isIn(at, room.ring) || bodies.some((body) => isInBody(at, body))) return run;
  }
  return most;
}

/** Corners where less than half the turn is inside, each with the borders of its two walls. */
function cornersOf({ ring }: Room): { at: Spot; one: readonly Spot[]; other: readonly Spot[] }[] {
  return ring.flatMap((at, i) => {
    const before = ring[(i + ring.length - 1) % ring.length] as Spot;
    const after = ring[(i + 1) % ring.length] as Spot;
    const inside = { x: at.x + ((before.x - at.x) / far(before, at) + (after.x - at.x) / far(after, at)) * 1e-4, y: at.y + ((before.y - at.y) / far(before, at) + (after.y - at.y) / far(after, at)) * 1e-4 };
    if (!isIn(inside, ring)) return [];
    const line = (a: Spot, b: Spot) => along({ ...a, z: 0 }, { ...b, z: 0 }, 0.004);
    return [{ at, one: line(before, at), other: line(at, after) }];
  });
}

function nozzleFaults(hung: Hung, room: Room, bodies: readonly Body[], others: readonly Hung[]): BruteFault[] {
  const { name, p, limits } = hung;
  const faults: BruteFault[] = [];
  const add = (rule: string, by: string) => faults.push({ rule, name, by });
  const ceiling = room.ceiling(p);

  const wall = nearest(p, room.wallPlaces);
  const columns = bodies.filter((body) => body.bottom <= 0 && ceiling !== null && body.top >= ceiling);
  const clear = columns.reduce((least, body) => Math.min(least, isIn(p, body.ring) ? 0 : nearest(p, border(body.ring, 0.004))), wall);
  if (clear < value(limits, 'nozzleToWall_m') - FINE) add('N1', `${clear.toFixed(3)} m`);

  if (ceiling !== null) {
    const drop = ceiling - p.z;
    if (drop > value(limits, 'nozzleToCeiling_m') + 1e-6 || drop < -1e-6) add('N2', `${drop.toFixed(3)} m`);
  } else add('N3', 'unknown');
  if (hung.tilt > value(limits, 'nozzleTilt_rad') + 1e-6) add('N4', 'tilt');

  const zone = value(limits, 'cornerZone_m');
  const cornered = cornersOf(room).filter(({ one, other }) => nearest(p, one) < zone - FINE && nearest(p, other) < zone - FINE);
  const nearlyCornered = cornersOf(room).some(({ one, other }) => nearest(p, one) < zone + FINE && nearest(p, other) < zone + FINE);
  for (const { at } of cornered) {
    const bearing = Math.atan2(at.y - p.y, at.x - p.x);
    if (far(at, p) > 0.05 && hung.holes.some((hole) => turnBetween(hole, bearing) < value(limits, 'cornerAngle_rad') - FINE_rad)) add('N5', 'into a corner');
  }
  if (!nearlyCornered) {
    room.ring.forEach((a, i) => {
      const b = room.ring[(i + 1) % room.ring.length] as Spot;
      const line = along({ ...a, z: 0 }, { ...b, z: 0 }, 0.004);
      const away = nearest(p, line);
      const isAtEnd = Math.min(far(p, a), far(p, b)) <= away + FINE;
      if (away > value(limits, 'nearWallZone_m') - FINE || isAtEnd) return;
      const axis = Math.atan2(b.y - a.y, b.x - a.x);
      const off = (hole: number) => Math.min(turnBetween(hole, axis), turnBetween(hole, axis + Math.PI));
      if (hung.holes.some((hole) => off(hole) > value(limits, 'nearWallAngle_rad') + FINE_rad)) add('N6', 'at a near wall');
    });
  }
  for (const hole of hung.holes) {
    const run = freeRun(p, hole, room, bodies, 3);
    if (run < value(limits, 'freeJet_m') - 2 * FINE) add('N7', `${run.toFixed(3)} m`);
  }
  for (const other of others) if (other !== hung && far3(p, other.p) < value(limits, 'nozzleSpacing_m') - FINE) add('N12', other.name);
  for (const body of bodies) if (body.bottom <= 0.01 && body.top < p.z && isIn(p, body.ring) && p.z - body.top < 0.3048 - FINE) add('N15', 'over equipment');
  return faults;
}

/** Floor that no nozzle covers even if every footprint were a little larger. */
function coverageFaults(room: Room, nozzles: readonly Hung[], bodies: readonly Body[]): BruteFault[] {
  const xs = room.ring.map(({ x }) => x);
  const ys = room.ring.map(({ y }) => y);
  const highest = Math.max(...nozzles.map(({ p }) => p.z));
  const standing = bodies.filter((body) => body.bottom <= 0 && body.top >= highest - FINE);
  for (let x = Math.min(...xs) + 0.08; x < Math.max(...xs); x += 0.23) {
    for (let y = Math.min(...ys) + 0.08; y < Math.max(...ys); y += 0.23) {
      const spot = { x, y };
      if (!isIn(spot, room.ring) || nearest(spot, room.wallPlaces) < 0.03 || standing.some((body) => isIn(spot, body.ring) || nearest(spot, body.border) < 0.03)) continue;
      const isSeen = nozzles.some(({ p, rotation, footprint }) => {
        if (!footprint) return false;
        const [dx, dy] = [x - p.x, y - p.y];
        const ahead = Math.abs(dx * Math.cos(rotation) + dy * Math.sin(rotation));
        const aside = Math.abs(-dx * Math.sin(rotation) + dy * Math.cos(rotation));
        const reaches = footprint.shape === 'rectangle' ? ahead <= footprint.length_m / 2 + 0.03 && aside <= footprint.width_m / 2 + 0.03 : Math.hypot(dx, dy) <= footprint.radius_m + 0.03;
        if (!reaches) return false;
        // A line of sight that a body only grazes is taken as open; floor under a hanging thing is seen from beside it.
        return along(p, { x, y, z: p.z }, 0.04).every((at) => isIn(at, room.ring) && !bodies.some((body) => !(body.bottom > 0.01 && isIn(spot, body.ring)) && isInBody(at, body) && nearest(at, body.border) > 0.03));
      });
      if (!isSeen) return [{ rule: 'N9', name: room.name, by: `(${x.toFixed(2)}, ${y.toFixed(2)})` }];
    }
  }
  return [];
}

/** Pipe of each path from the source, found by walking. */
function pathFaults(network: Network, limits: Limits): BruteFault[] {
  const faults: BruteFault[] = [];
  for (const nozzle of Object.values(network.nozzles)) {
    const walk = (node: string, seen: readonly string[]): string[] | undefined => {
      if (node === nozzle.node) return [...seen];
      for (const pipe of Object.values(network.pipes)) {
        const next = pipe.from === node ? pipe.to : pipe.to === node ? pipe.from : undefined;
        if (next === undefined || seen.includes(pipe.id)) continue;
        const found = walk(next, [...seen, pipe.id]);
        if (found) return found;
      }
      return undefined;
    };
    const way = network.source === null ? undefined : walk(network.source, []);
    if (!way) {
      faults.push({ rule: 'P1', name: network.name, by: `${nozzle.name} is not reached` });
      continue;
    }
    const length = way.reduce((sum, id) => {
      const pipe = network.pipes[id];
      const [a, b] = [network.nodes[pipe?.from ?? '']?.at, network.nodes[pipe?.to ?? '']?.at];
      return a && b ? sum + far3(a, b) : sum;
    }, 0);
    if (length > value(limits, 'pathLength_m') + FINE) faults.push({ rule: 'P2', name: nozzle.name, by: `${length.toFixed(2)} m` });
  }
  const total = Object.values(network.pipes).reduce((sum, { from, to }) => {
    const [a, b] = [network.nodes[from]?.at, network.nodes[to]?.at];
    return a && b ? sum + far3(a, b) : sum;
  }, 0);
  if (total > value(limits, 'totalPipeLength_m') + FINE) faults.push({ rule: 'P3', name: network.name, by: `${total.toFixed(2)} m` });
  const cylinders = Object.keys(network.cylinders).length;
  if (cylinders > 0 && Object.keys(network.nozzles).length > cylinders * value(limits, 'nozzlesPerUnit')) faults.push({ rule: 'N22', name: network.name, by: 'too many nozzles' });
  return faults;
}

/** Outside diameters of steel pipe [m]. Source: ASME B36.10M, memory. */
const OUTSIDE: Readonly<Record<string, number>> = { '1/2': 0.02134, '3/4': 0.02667, '1': 0.0334, '1-1/4': 0.04216, '1-1/2': 0.04826, '2': 0.06033 };

/** Pipe nearer to a body than its clearance, by places along it. */
function clashFaults(network: Network, bodies: readonly (Body & { readonly name: string })[], limits: Limits): BruteFault[] {
  return bodies.flatMap((body) => {
    const isNear = Object.values(network.pipes).some(({ from, to, size }) => {
      const [a, b] = [network.nodes[from]?.at, network.nodes[to]?.at];
      return a && b && along(a, b, 0.02).some((at) => toBody(at, body) - (OUTSIDE[size] ?? 0) / 2 < value(limits, 'pipeClearance_m') - 2 * FINE);
    });
    return isNear ? [{ rule: 'P27', name: body.name, by: 'too near to pipe' }] : [];
  });
}

/** Clear cylinders of the door leaves, by places in the quarter circle of each. */
function doorFaults(room: Room, network: Network, diameter: number): BruteFault[] {
  const faults: BruteFault[] = [];
  const ring = room.enclosure.outline;
  for (const door of Object.values(room.enclosure.openings)) {
    if (door.kind !== 'door' || door.swing !== 'in') continue;
    const i = ring.findIndex(({ id }) => id === door.wall);
    const a = ring[i] as Spot;
    const b = ring[(i + 1) % ring.length] as Spot;
    const wall = Math.atan2(b.y - a.y, b.x - a.x);
    const side = door.hinge === 'start' ? -1 : 1;
    const hinge = { x: a.x + Math.cos(wall) * (door.along_m + (side * door.width_m) / 2), y: a.y + Math.sin(wall) * (door.along_m + (side * door.width_m) / 2) };
    const shut = side < 0 ? wall : wall + Math.PI;
    const turn = side < 0 ? 1 : -1;
    for (const cylinder of Object.values(network.cylinders)) {
      let isHit = false;
      for (let angle = 0; angle <= Math.PI / 2; angle += 0.03) {
        for (let run = 0; run <= door.width_m; run += 0.03) {
          const at = { x: hinge.x + Math.cos(shut + turn * angle) * run, y: hinge.y + Math.sin(shut + turn * angle) * run };
          if (far(at, cylinder.at) < diameter / 2 - 2 * FINE) isHit = true;
        }
      }
      if (isHit) faults.push({ rule: 'C7', name: cylinder.name, by: door.name });
    }
  }
  return faults;
}

/** Buttons too near to each other, and releases that hang too high. */
function buttonFaults(level: Plan['levels'][string]): BruteFault[] {
  const devices = Object.values(level.devices);
  return devices
    .filter(({ kind }) => kind === 'manual-release')
    .flatMap((release) => [
      ...(release.height_m !== null && release.height_m > 1.2192 + FINE ? [{ rule: 'S5', name: release.name, by: 'too high' }] : []),
      ...(devices.some(({ kind, at, height_m }) => kind === 'door-button' && far3({ ...at, z: height_m ?? 0 }, { ...release.at, z: release.height_m ?? 0 }) < 0.6096 - FINE) ? [{ rule: 'S8', name: release.name, by: 'by the door button' }] : []),
    ]);
}

/**
 * Faults of a plan that plain sampling finds, written from the catalogue and knowing nothing of the program but the form
 * of its plans. Rooms without shafts, voids and slopes; networks with their profile.
 */
export function bruteForceFaults(plan: Plan): BruteFault[] {
  const faults: BruteFault[] = [];
  for (const level of Object.values(plan.levels)) {
    const rooms = roomsOf(level);
    const bodies = Object.values(level.obstructions).map(({ name, footprint, bottom_m, top_m }) => ({ name, ring: footprint, border: border(footprint, 0.02), bottom: bottom_m, top: top_m }));
    const hung: Hung[] = [];
    for (const network of Object.values(plan.networks)) {
      if (network.level !== level.id) continue;
      const profile = plan.profiles[network.profile];
      if (!profile) continue;
      const { limits, footprint } = profile;
      for (const { name, node, holes_rad, rotation_rad, tilt_rad } of Object.values(network.nozzles)) {
        const p = network.nodes[node]?.at;
        if (p) hung.push({ name, p, holes: holes_rad.map((hole) => hole + rotation_rad), rotation: rotation_rad, tilt: tilt_rad, limits, footprint });
      }
      faults.push(...pathFaults(network, limits), ...clashFaults(network, bodies, limits));
      for (const room of rooms) faults.push(...doorFaults(room, network, value(limits, 'cylinderDiameter_m')));
    }
    for (const room of rooms) {
      const inside = hung.filter(({ p }) => isIn(p, room.ring));
      const there = bodies.filter((body) => body.border.some((p) => isIn(p, room.ring)));
      for (const each of inside) faults.push(...nozzleFaults(each, room, there, inside));
      const counting = inside.filter(({ p }) => p.z >= 0 && p.z <= (room.ceiling(p) ?? Infinity));
      faults.push(...(counting.length > 0 ? coverageFaults(room, counting, there) : [{ rule: 'N9', name: room.name, by: 'no nozzle' }]));
    }
    faults.push(...buttonFaults(level));
  }
  return faults;
}
