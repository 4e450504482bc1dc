import { governingFaces } from '../derived/clearance-faces.ts';
import type { Derived, DerivedNozzle, Solid } from '../derived/derived.ts';
import { distanceToOutline_m, sidesOf } from '../geometry/outline.ts';
import { type Segment, distanceToSegment_m } from '../geometry/segment.ts';
import { type Finding, findingKey } from '../rules/finding.ts';

/** How far a finding could come down on site, all dimensions at the worst end of their tolerance. */
export interface StackedFinding {
  readonly finding: Finding;
  /** What is left of the limit as drawn, and at worst; below 0 the verdict flips. [m] */
  readonly margin_m: number;
  readonly worst_m: number;
}

/** Findings that are kept as drawn, by what the site tolerance can do to them. */
export interface ToleranceStack {
  readonly tolerance_m: number;
  /** Kept as drawn and perhaps not as built; those that could fail by most first. */
  readonly couldFlip: readonly StackedFinding[];
  /** Kept however the tolerances fall. */
  readonly safe: readonly StackedFinding[];
  /** Kept findings of which this stack tells nothing. */
  readonly untold: number;
}

/** A place on the plan with both coordinates off by the tolerance has moved by this many of them; in space by the second figure. */
const ON_PLAN = Math.SQRT2;
const IN_SPACE = Math.sqrt(3);
/** A thing that ends this near to the ceiling is as high as the space [m], as check N1 takes it. */
const JOINT_m = 1e-3;

/** N1: nozzle and face may come toward each other, each by both of its coordinates. Things that a tolerance could make as high as the space count as faces. */
function worstClearance_m({ at, space, profile }: DerivedNozzle, tolerance_m: number): number | undefined {
  const limit_m = profile?.limits.nozzleToWall_m?.value;
  if (!at || !space || limit_m === undefined) return undefined;
  const almost = space.solids.filter(({ top_m, footprint }) => top_m >= Math.min(...footprint.map((corner) => space.ceilingAt_m(corner) ?? Infinity)) - JOINT_m - 2 * tolerance_m);
  const near_m = Math.min(...governingFaces(space, at.z + tolerance_m).map(({ segment }) => distanceToSegment_m(at, segment)), ...almost.map(({ footprint }) => distanceToOutline_m(at, footprint)));
  return near_m - 2 * ON_PLAN * tolerance_m - limit_m;
}

/** N2: orifice and ceiling may be off in height, and under a slope by what it rises over the shift on the plan; near the edge of a ceiling zone any of its heights may count. */
function worstDrop_m({ at, space, profile }: DerivedNozzle, tolerance_m: number): number | undefined {
  const limit_m = profile?.limits.nozzleToCeiling_m?.value;
  if (!at || !space || limit_m === undefined) return undefined;
  const { enclosure, kind } = space;
  const here_m = space.ceilingAt_m(at);
  if (here_m === undefined) return undefined;
  const zones = kind === 'under-floor' ? [] : Object.values(enclosure.ceilingZones);
  const reach_m = 2 * ON_PLAN * tolerance_m;
  // Beside an edge of a zone the heights on both of its sides may be over the nozzle.
  if (zones.some(({ outline }) => distanceToOutline_m(at, outline) <= reach_m)) return -Infinity;
  const rise = kind === 'under-floor' ? 0 : Math.abs(enclosure.slope?.rise ?? 0);
  const drop_m = here_m - at.z;
  return Math.min(drop_m, limit_m - drop_m) - 2 * tolerance_m - rise * reach_m;
}

/** How far a hole blows freely when everything that may stop it comes nearer from all sides by `closer_m` [m]. */
function freeFor_m(at: { readonly x: number; readonly y: number }, hole_rad: number, faces: readonly Segment[], closer_m: number): number {
  const [x, y] = [Math.cos(hole_rad), Math.sin(hole_rad)];
  const onRay = (p: { readonly x: number; readonly y: number }) => ({ along: (p.x - at.x) * x + (p.y - at.y) * y, aside: (p.y - at.y) * x - (p.x - at.x) * y });
  let free_m = Infinity;
  for (const { a, b } of faces) {
    const [p, q] = [onRay(a), onRay(b)];
    if (Math.min(p.aside, q.aside) > closer_m || Math.max(p.aside, q.aside) < -closer_m) continue;
    const alongAt = (aside: number): number => (p.aside === q.aside ? p.along : p.along + ((q.along - p.along) * (aside - p.aside)) / (q.aside - p.aside));
    const inStrip = [p, q].filter(({ aside }) => Math.abs(aside) <= closer_m).map(({ along }) => along);
    const cut = [-closer_m, closer_m].filter((aside) => (p.aside - aside) * (q.aside - aside) < 0).map(alongAt);
    const all = [...inStrip, ...cut];
    if (all.length === 0 || Math.max(...all) < -closer_m) continue;
    free_m = Math.min(free_m, Math.min(...all) - closer_m);
  }
  return free_m;
}

/** N7: every face that may stop a jet, those that a tolerance in height brings into its plane included, may come nearer by both coordinates of its own and of the nozzle. */
function worstJet_m({ at, space, profile, holes_rad }: DerivedNozzle, tolerance_m: number): number | undefined {
  const limit_m = profile?.limits.freeJet_m?.value;
  if (!at || !space || limit_m === undefined || holes_rad.length === 0) return undefined;
  const isCut = ({ bottom_m, top_m }: Solid): boolean => bottom_m - 2 * tolerance_m <= at.z && at.z <= top_m + 2 * tolerance_m;
  const faces = [...space.walls.map(({ segment }) => segment), ...space.solids.filter(isCut).flatMap(({ footprint }) => sidesOf(footprint))];
  return Math.min(...holes_rad.map((hole_rad) => freeFor_m(at, hole_rad, faces, 2 * ON_PLAN * tolerance_m))) - limit_m;
}

/** P2, P3: both ends of every pipe may be off in space. */
const worstLength_m = (margin_m: number, pipes: number, tolerance_m: number): number => margin_m - pipes * 2 * IN_SPACE * tolerance_m;

function worstOf_m(finding: Finding, derived: Derived, tolerance_m: number): number | undefined {
  const { rule, subject, margin } = finding;
  if (subject.kind === 'nozzle') {
    const nozzle = derived.nozzles.find(({ ref }) => ref.id === subject.id && ref.network === subject.network);
    if (!nozzle) return undefined;
    if (rule === 'N1') return worstClearance_m(nozzle, tolerance_m);
    if (rule === 'N2') return worstDrop_m(nozzle, tolerance_m);
    if (rule === 'N7') return worstJet_m(nozzle, tolerance_m);
    if (rule === 'P2' && margin !== undefined) return worstLength_m(margin, nozzle.network.paths.find((path) => path.nozzle === subject.id)?.pipes.length ?? Infinity, tolerance_m);
  }
  if (margin === undefined) return undefined;
  if (rule === 'P3' && subject.kind === 'network') return worstLength_m(margin, derived.networks.find(({ ref }) => ref.id === subject.id)?.pipes.length ?? Infinity, tolerance_m);
  // Rail: the height that it is set to is one dimension from the finished floor.
  if (rule === 'C4') return margin - tolerance_m;
  return undefined;
}

/**
 * Which findings that are kept as drawn could fail as built when every dimension may be off by the site tolerance, all at their
 * worst ends at once. What each measure may change by, in tolerances: distance on the plan between nozzle and face 2·√2 (both
 * coordinates of both), drop below the ceiling 2 (both heights), free jet 2·√2 to every side of everything that may stop it,
 * path and total length 2·√3 for every pipe (both ends in space), rail height 1. A stack of the worst case, not a likely one
 * (common practice: worst-case tolerance analysis adds the tolerances up). Angles, coverage, clash and all else are not told here.
 */
export function toleranceStack(derived: Derived, findings: readonly Finding[]): ToleranceStack {
  const tolerance_m = derived.plan.settings.siteTolerance_m;
  const kept = findings.filter(({ verdict }) => verdict === 'ok');
  const stacked = kept.flatMap((finding): StackedFinding[] => {
    const worst_m = worstOf_m(finding, derived, tolerance_m);
    return worst_m === undefined ? [] : [{ finding, margin_m: finding.margin ?? worst_m, worst_m }];
  });
  const byKey = (a: StackedFinding, b: StackedFinding): number => a.worst_m - b.worst_m || findingKey(a.finding).localeCompare(findingKey(b.finding));
  return {
    tolerance_m,
    couldFlip: stacked.filter(({ worst_m }) => !(worst_m >= 0)).sort(byKey),
    safe: stacked.filter(({ worst_m }) => worst_m >= 0).sort(byKey),
    untold: kept.length - stacked.length,
  };
}
