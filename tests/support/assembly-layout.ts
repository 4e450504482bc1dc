import type { PlanPoint3 } from '#shared/geometry/point';
import type { AssemblyPart, Plan } from '#shared/model/plan';
import type { LimitKey } from '#shared/profile/limit-catalogue';
import { type Placing, at3, layout, placed, placedAngle_rad } from './layout.ts';

/** A part of a discharge assembly with its id after its place. */
export const part = (kind: AssemblyPart['kind'], length_m = 0.1, more: Partial<AssemblyPart> = {}): Omit<AssemblyPart, 'id'> => ({ kind, name: kind, length_m, setPressure_Pa: null, arrowDownstream: true, ...more });

export interface AssemblySpec {
  readonly parts?: readonly Omit<AssemblyPart, 'id'>[];
  /** Axis of each cylinder, outlet and end of its hose; the wall is to the west. */
  readonly cylinders?: readonly { readonly y: number; readonly outlet_rad: number | null; readonly end: PlanPoint3 | null }[];
  readonly source?: PlanPoint3 | null;
  readonly manifold?: { readonly from: PlanPoint3; readonly to: PlanPoint3 } | null;
  readonly limits?: Partial<Record<LimitKey, number | null>>;
  readonly order?: readonly AssemblyPart['kind'][] | null;
  readonly placing?: Placing;
}

/** Outlet at 1.5 m; the hose leaves south, turns back 0.32 m higher into valves of 0.25 m, which end over the axis. */
export const ALONE: AssemblySpec = {
  parts: [part('hose', 0.8), part('check-valve', 0.1), part('regulator', 0.15)],
  cylinders: [{ y: 1, outlet_rad: -Math.PI / 2, end: at3(0.2, 0.75, 1.82) }],
  source: at3(0.2, 1, 1.82),
};

/** Three hoses leave south and turn up into check valves under a manifold that runs north to the regulator. */
export const SEVERAL: AssemblySpec = {
  parts: [part('hose', 0.45), part('check-valve', 0.1), part('manifold', 1.2), part('regulator', 0.15)],
  cylinders: [1, 1.4, 1.8].map((y) => ({ y, outlet_rad: -Math.PI / 2, end: at3(0.2, y - 0.25, 1.75) })),
  manifold: { from: at3(0.2, 0.65, 1.85), to: at3(0.2, 1.85, 1.85) },
  source: at3(0.2, 2, 1.85),
};

/** A plan with one network whose discharge assembly is as told; sample limits but for outlet height 1.5 m, bend radius 0.15 m and reach 0.75 m. */
export function assemblyPlan(spec: AssemblySpec): Plan {
  const source = spec.source === undefined ? at3(0.2, 1, 1.82) : spec.source;
  const put = <P extends PlanPoint3>(p: P): { x: number; y: number; z: number } => {
    const { x, y, z } = spec.placing ? placed(p, spec.placing) : p;
    return { x, y, z };
  };
  const plan = layout({
    cylinders: 0,
    runs: source ? [{ places: [put(source), put({ ...source, z: source.z + 0.5 })] }] : [],
    limits: { outletHeight_m: 1.5, hoseBendRadius_m: 0.15, hoseReach_m: 0.75, ...spec.limits },
  });
  const network = plan.networks.net;
  const profile = Object.values(plan.profiles)[0];
  if (!network || !profile) throw new Error('A layout has its network and its profile.');
  if (spec.order !== undefined) profile.assemblyOrder = spec.order && [...spec.order];
  const turned = (angle_rad: number): number => (spec.placing ? placedAngle_rad(angle_rad, spec.placing) : angle_rad);
  network.assembly = (spec.parts ?? []).map((each, i) => ({ ...each, id: `a${i + 1}` }));
  network.manifold = spec.manifold ? { from: put(spec.manifold.from), to: put(spec.manifold.to) } : null;
  (spec.cylinders ?? []).forEach(({ y, outlet_rad, end }, i) => {
    const id = `cy${i + 1}`;
    const at = put(at3(0.2, y, 0));
    network.cylinders[id] = { id, name: `C${i + 1}`, at: { x: at.x, y: at.y }, mounting: 'wall', back_rad: turned(Math.PI), railHeight_m: null, restraints_m: [], anchors: null, outlet_rad: outlet_rad === null ? null : turned(outlet_rad), hoseEnd: end && put(end), gauge: null, storage: null, exposedTo: null };
  });
  return plan;
}
