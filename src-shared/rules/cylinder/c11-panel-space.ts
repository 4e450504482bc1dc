import { assemblyRunOf } from '../../derived/assembly-run.ts';
import type { Derived, DerivedLevel, DerivedNetwork, Solid } from '../../derived/derived.ts';
import { type Standing, findPanelSpace, freeWidthOf, panelZone } from '../../derived/panel-space.ts';
import { remembered, sameList } from '../../derived/remember.ts';
import { type Box, boundsOf, boxesTouch } from '../../geometry/outline.ts';
import { distance_m } from '../../geometry/point.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { per } from '../subjects.ts';

interface PanelAmongPipe {
  readonly solid: Solid;
  readonly networks: readonly DerivedNetwork[];
}

/** Nobody enters how thick the parts of the assembly are: they are taken as 4 in across [m], common practice. */
const PART_RADIUS_m = 0.0508;
/** A cylinder farther from a panel than this has neither hose nor manifold in its working space [m]: common practice. */
const NEAR_m = 3;
const SOURCE = 'NEC 110.26(A) (memory: confirm in the adopted edition)';

/** Everything of a network that may stand in a working space, and what of it is not known. */
function standingOf(derived: DerivedNetwork): { readonly things: Standing[]; readonly hasUnknownAssembly: boolean; readonly hasUnknownCylinders: boolean } {
  const { network, profile, pipes } = derived;
  const diameter_m = profile?.limits.cylinderDiameter_m?.value;
  const outlet_m = profile?.limits.outletHeight_m?.value ?? 2;
  const cylinders = Object.values(network.cylinders);
  const run = assemblyRunOf(derived);
  return {
    things: [
      ...(diameter_m === undefined ? [] : cylinders.map(({ name, at }): Standing => ({ name: `cylinder ${name}`, a: { ...at, z: 0 }, b: { ...at, z: outlet_m }, radius_m: diameter_m / 2 }))),
      ...run.pieces.flatMap(({ part, curve }) => curve.slice(1).map((to, i): Standing => ({ name: part.name || 'the discharge assembly', a: curve[i] ?? to, b: to, radius_m: PART_RADIUS_m }))),
      ...pipes.map(({ from, to, outside_m, pipe }): Standing => ({ name: `pipe of ${network.name}`, a: from, b: to, radius_m: outside_m / 2 + pipe.insulation_m })),
    ],
    hasUnknownAssembly: network.assembly.length > 0 && cylinders.length > 0 && run.missing.length > 0,
    hasUnknownCylinders: cylinders.length > 0 && diameter_m === undefined,
  };
}

/** Box around everything of a network. */
const boxOf = remembered((derived: DerivedNetwork): Box =>
  boundsOf([
    ...derived.pipes.flatMap(({ from, to }) => [from, to]),
    ...Object.values(derived.network.cylinders).map(({ at }) => at),
    ...assemblyRunOf(derived).pieces.flatMap(({ curve }) => curve),
  ]),
);

/** The networks that may stand in the working space of a panel, or have a cylinder near it. */
function networksNear(solid: Solid, networks: readonly DerivedNetwork[]): DerivedNetwork[] {
  const space = findPanelSpace(solid.obstruction);
  if (!space) return [];
  const { minX, minY, maxX, maxY } = boundsOf([space.at, ...panelZone(space)]);
  const around = { minX: minX - NEAR_m, minY: minY - NEAR_m, maxX: maxX + NEAR_m, maxY: maxY + NEAR_m };
  return networks.filter((network) => boxesTouch(boxOf(network), around));
}

/** A level with every network on it. */
interface PipedLevel {
  readonly level: DerivedLevel;
  readonly networks: readonly DerivedNetwork[];
}

const pipedLevel = remembered((level: DerivedLevel, networks: readonly DerivedNetwork[]): PipedLevel => ({ level, networks }));
const lastOn = new WeakMap<DerivedLevel, readonly DerivedNetwork[]>();
const pipedLevels = ({ levels, networks }: Derived): PipedLevel[] =>
  levels.map((level) => {
    const on = sameList(lastOn.get(level), networks.filter((network) => network.level === level.level));
    lastOn.set(level, on);
    return pipedLevel(level, on);
  });

/** The electrical panels of every level. */
const panelSubjects = per(pipedLevels, ({ level }) => level.level.id)(({ level, networks }) =>
  level.solids
    .filter(({ obstruction }) => obstruction.kind === 'panel')
    .map((solid) => ({ subject: { solid, networks: networksNear(solid, networks) } satisfies PanelAmongPipe, ref: solid.ref, name: solid.obstruction.name || 'Electrical panel' })),
);

/**
 * C11: the working space in front of an electrical panel is kept free of cylinders, discharge assembly and pipe.
 * Measure: width free before the panel, 36 in deep and 6 ft 6 in high (or the panel's height) [m].
 * Limit: 30 in, or the width of the panel where that is more.
 * Not checked: its front is not known, or a cylinder near it has no known diameter or assembly. A fault is reported even then.
 */
export const c11PanelSpace = defineRule<PanelAmongPipe>({
  id: 'C11',
  title: 'Space before electrical panel',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'width free of cylinders, assembly and pipe, 36 in deep and 6 ft 6 in high, before the panel ≥ max(30 in, panel)',
    source: SOURCE,
    caution: 'For up to 150 V to ground; higher voltage asks for more depth. Walls, shelves and other things before the panel are not judged, nor the dedicated space above it.',
  },
  subjects: panelSubjects,
  check({ solid, networks }, { say }) {
    const space = findPanelSpace(solid.obstruction);
    const middle = solid.footprint[0] ?? { x: 0, y: 0 };
    if (!space) return notChecked('which way it opens is not known.', { level: solid.ref.level, at: [middle] });
    const place = { level: solid.ref.level, at: [space.at], areas: [[panelZone(space)]] };
    const standing = networks.map((network) => ({ network, ...standingOf(network) }));
    const free = freeWidthOf(space, standing.flatMap(({ things }) => things));
    const figures = atLeast(free.width_m, { value: space.width_m, source: SOURCE }, LENGTH_SLACK_m);
    if (!figures.isKept) {
      const { value, limit } = say.against(free.width_m, space.width_m);
      const by = free.by.join(' and ');
      const text = free.width_m === 0 ? `Right before it ${free.by.length > 1 ? 'stand' : 'stands'} ${by}` : `Only ${value} is free before it, beside ${by}`;
      return { ...figures, text: `${text}; a space ${limit} wide and ${say.length(space.depth_m)} deep must be kept for work on it. Move what stands there.`, place, cure: { kind: 'advice', text: 'Move the cylinder, the assembly or the pipe out of the working space.' } };
    }
    const near = standing.filter(({ network }) => Object.values(network.network.cylinders).some(({ at }) => distance_m(at, space.at) <= NEAR_m));
    if (near.some(({ hasUnknownCylinders }) => hasUnknownCylinders)) return notChecked('the diameter of the cylinders near it is not known.', place);
    if (near.some(({ hasUnknownAssembly }) => hasUnknownAssembly)) return notChecked('where the discharge assembly near it runs is not known.', place);
    const { measured, margin, ...kept } = figures;
    return { ...kept, ...(Number.isFinite(measured) ? { measured, margin } : {}), text: `${say.length(space.width_m)} by ${say.length(space.depth_m)} before it is free of cylinders, assembly and pipe.`, place };
  },
});
