import { type FloorRack, RAIL_OVERHANG_m, type Rail, type Stretch, type WallCylinder } from './elevation.ts';

/** Cylinders farther apart than this hang on rails of their own [m]: common practice. */
const OWN_RAIL_m = 1.2;
/** Rails at the same height to the millimetre are one. */
const SAME_HEIGHT_m = 1e-3;
/** Anchors sit this far in from the ends of their cylinder's share of the rail [m]: 2 in, common practice. */
const ANCHOR_INSET_m = 0.0508;
/** A floor frame is drawn as high as its highest restraint, or this where none is known [m]. */
const RACK_HEIGHT_m = 1.2;

/** Neighbours of a row that stand near enough to each other for one rail. */
function groupsOf(cylinders: readonly WallCylinder[], isSame: (a: WallCylinder, b: WallCylinder) => boolean): WallCylinder[][] {
  const groups: WallCylinder[][] = [];
  for (const cylinder of cylinders.toSorted((a, b) => a.at.s - b.at.s)) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    if (group && last && cylinder.at.s - last.at.s <= OWN_RAIL_m && isSame(last, cylinder)) group.push(cylinder);
    else groups.push([cylinder]);
  }
  return groups;
}

/** From past the first to past the last cylinder, kept on the wall. */
function stretchOf(group: readonly WallCylinder[], beyond_m: number, length_m: number): Stretch {
  return {
    from_m: Math.max(0, Math.min(...group.map(({ at, radius_m }) => at.s - radius_m)) - beyond_m),
    to_m: Math.min(length_m, Math.max(...group.map(({ at, radius_m }) => at.s + radius_m)) + beyond_m),
  };
}

/** The anchors of each cylinder, evenly over its share of the rail. */
function anchorsOf(group: readonly WallCylinder[], { from_m, to_m }: Stretch): Rail['anchors'] {
  return group.flatMap(({ cylinder, at }, i) => {
    const { anchors } = cylinder;
    if (!anchors) return [];
    const [before, after] = [group[i - 1], group[i + 1]];
    const start = (before ? (before.at.s + at.s) / 2 : from_m) + ANCHOR_INSET_m;
    const end = (after ? (after.at.s + at.s) / 2 : to_m) - ANCHOR_INSET_m;
    return Array.from({ length: anchors.count }, (_, k) => ({ s: anchors.count === 1 ? at.s : start + ((end - start) * k) / (anchors.count - 1), anchors }));
  });
}

/** The rails on a wall: one for each row of neighbours at one height, past the outer cylinders by the overhang. */
export function railsOf(cylinders: readonly WallCylinder[], length_m: number): Rail[] {
  const hung = cylinders.filter(({ cylinder }) => cylinder.mounting === 'wall' && cylinder.railHeight_m !== null);
  const isSame = (a: WallCylinder, b: WallCylinder): boolean => Math.abs((a.cylinder.railHeight_m ?? 0) - (b.cylinder.railHeight_m ?? 0)) <= SAME_HEIGHT_m;
  return groupsOf(hung, isSame).map((group) => {
    const stretch = stretchOf(group, RAIL_OVERHANG_m, length_m);
    return { ...stretch, height_m: group[0]?.cylinder.railHeight_m ?? 0, cylinders: group, anchors: anchorsOf(group, stretch) };
  });
}

/** The floor frames before a wall, for cylinders that do not hang on it. */
export function racksOf(cylinders: readonly WallCylinder[], length_m: number): FloorRack[] {
  const standing = cylinders.filter(({ cylinder }) => cylinder.mounting === 'floor');
  return groupsOf(standing, () => true).map((group) => ({
    ...stretchOf(group, ANCHOR_INSET_m, length_m),
    height_m: Math.max(RACK_HEIGHT_m, ...group.flatMap(({ cylinder }) => cylinder.restraints_m)),
    cylinders: group,
  }));
}
