import type { Elevation, GaugeLook, WallCylinder } from '../elevation/elevation.ts';
import { RAIL_OVERHANG_m } from '../elevation/elevation.ts';
import type { Settings } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { compassName } from '../derived/datum.ts';

type Lengths = Settings['lengths'];

/** A height beside the wall. */
export interface LadderRow {
  readonly z_m: number;
  readonly words: string;
}

/** Where a gauge faces, as who stands before the wall says it. */
const LOOKS: Readonly<Record<GaugeLook, string>> = { room: 'the room', left: 'left along the wall', right: 'right along the wall', wall: 'the wall, where nobody reads it' };

/** Names of a row of cylinders: "C1", "C1, C2", "C1 to C5". */
export function namesOf(cylinders: readonly WallCylinder[]): string {
  const names = cylinders.map(({ cylinder }) => cylinder.name).sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  return names.length < 3 ? names.join(', ') : `${names[0]} to ${names.at(-1)}`;
}

/** Heights that belong to cylinders, like ones together: what, at which height, of which cylinders. */
function grouped(elevation: Elevation, what: (cylinder: WallCylinder) => readonly { readonly z_m: number; readonly words: string }[]): LadderRow[] {
  const found = new Map<string, { z_m: number; words: string; of: WallCylinder[] }>();
  for (const cylinder of elevation.cylinders) {
    for (const { z_m, words } of what(cylinder)) {
      const key = `${words} ${Math.round(z_m * 1e4)}`;
      const known = found.get(key);
      if (known) known.of.push(cylinder);
      else found.set(key, { z_m, words, of: [cylinder] });
    }
  }
  return [...found.values()].map(({ z_m, words, of }) => ({ z_m, words: of.length === elevation.cylinders.length ? words : `${words} (${namesOf(of)})` }));
}

/** The heights of an elevation, from below: floor, restraints, rail, gauge, outlet, where the pipe begins, ceiling. */
export function ladderRows(elevation: Elevation, lengths: Lengths): LadderRow[] {
  const height = (z_m: number): string => formatLength(z_m, lengths);
  const ceilings = new Map(elevation.ceiling.map(({ z }) => [Math.round(z * 1000), z]));
  const { network } = elevation.network;
  const source = network.source === null ? undefined : network.nodes[network.source]?.at;
  const rows: LadderRow[] = [
    { z_m: 0, words: 'finished floor' },
    ...grouped(elevation, ({ cylinder }) => cylinder.restraints_m.map((z_m) => ({ z_m, words: `restraint ${height(z_m)}` }))),
    ...grouped(elevation, ({ cylinder }) => (cylinder.mounting === 'wall' && cylinder.railHeight_m !== null ? [{ z_m: cylinder.railHeight_m, words: `rail ${height(cylinder.railHeight_m)}` }] : [])),
    ...grouped(elevation, ({ gauge }) => (gauge ? [{ z_m: gauge.height_m, words: `gauge ${height(gauge.height_m)}` }] : [])),
    ...grouped(elevation, ({ outlet_m }) => (outlet_m === undefined ? [] : [{ z_m: outlet_m, words: `valve outlet ${height(outlet_m)}` }])),
    ...(source && elevation.pipes.length > 0 ? [{ z_m: source.z, words: `pipe begins ${height(source.z)}` }] : []),
    ...[...ceilings.values()].map((z_m) => ({ z_m, words: `ceiling ${height(z_m)}` })),
    ...(ceilings.size === 0 ? [{ z_m: 2.1, words: 'ceiling not known' }] : []),
  ];
  return rows.sort((a, b) => a.z_m - b.z_m);
}

/** Which way the gauges face. */
function gaugeNotes(cylinders: readonly WallCylinder[]): string[] {
  const byLook = new Map<GaugeLook, WallCylinder[]>();
  for (const each of cylinders) if (each.gauge) byLook.set(each.gauge.look, [...(byLook.get(each.gauge.look) ?? []), each]);
  return [...byLook].map(([look, of]) => `${of.length === 1 ? 'Gauge' : 'Gauges'}${of.length < cylinders.length ? ` of ${namesOf(of)}` : ''} ${of.length === 1 ? 'faces' : 'face'} ${LOOKS[look]}.`);
}

/** What is said of the mounting that no line can show, each a sentence. */
export function mountNotes(elevation: Elevation, lengths: Lengths): string[] {
  const { cylinders, rails, racks, network } = elevation;
  const anchors = new Map<string, WallCylinder[]>();
  for (const each of cylinders) {
    const { anchors: held } = each.cylinder;
    if (each.cylinder.mounting !== 'wall' || !held) continue;
    const words = `${held.count} ${held.count === 1 ? 'anchor' : 'anchors'} “${held.kind}” a cylinder, ${formatLength(held.edge_m, lengths)} from the nearest edge of the wall (least ${formatLength(held.leastEdge_m, lengths)})`;
    anchors.set(words, [...(anchors.get(words) ?? []), each]);
  }
  const front_m = network.profile?.limits.frontDepth_m?.value;
  const width_m = network.profile?.limits.removalWidth_m?.value;
  const { wayOut } = elevation;
  return [
    `${elevationPlace(elevation)}. Heights above the finished floor, distances from the ${elevation.datum} corner.`,
    ...[...anchors].map(([words, of]) => `${anchors.size > 1 || of.length < cylinders.length ? `${namesOf(of)}: ` : ''}${words}.`),
    ...(rails.length > 0 ? [`Rail ${formatLength(RAIL_OVERHANG_m, lengths)} past the outer cylinders, two clamps to a cylinder at each level: common practice; the manual governs.`] : []),
    ...gaugeNotes(cylinders),
    ...(racks.length > 0 ? ['Floor frame: drawn as a symbol; its make and anchors as its maker says.'] : []),
    `Hatched below: clear floor in front, ${front_m === undefined ? 'depth not in the manual, drawn 3 ft' : formatLength(front_m, lengths)}.`,
    ...(wayOut ? [`Way out by ${wayOut.name || 'the nearest door'}${width_m === undefined ? '' : `, kept ${formatLength(width_m, lengths)} wide`}.`] : ['No door is drawn: the way out is not known.']),
    'Outlet caps stay on until piped (hold point H8).',
    ...elevation.missing,
  ];
}

/** Words under an elevation. */
export const elevationTitle = ({ network }: Elevation): string => `Cylinder wall, ${network.network.name}`;

/** Which wall it is: its room, and where the viewer looks. */
export const elevationPlace = ({ room, frame }: Elevation): string => {
  const at = frame.onFace(0);
  const ahead = frame.onFace(1);
  // The viewer looks at the wall: a quarter turn to the left of the way from left to right.
  const look_rad = Math.atan2(ahead.x - at.x, -(ahead.y - at.y));
  return `${room.name}, looking ${compassName(look_rad)} from inside the room`;
};
