import type { HungNozzle, Solid } from './derived.ts';
import { type ConeHit, type JetCone, conesOf, findConeHit, mayReach } from './jet-cone.ts';

/** What people put loose things on. */
const SHELVES: ReadonlySet<string> = new Set(['rack', 'cabinet', 'other']);

/** A thing that a jet comes to. */
export interface Struck extends ConeHit {
  readonly cone: JetCone;
  readonly solid: Solid;
}

/** Things of its space that a jet of a nozzle comes to, nearest along their jets first. */
export function struckBy(nozzle: HungNozzle, isAsked: (solid: Solid) => boolean): Struck[] {
  const solids = nozzle.space?.solids.filter(isAsked) ?? [];
  if (solids.length === 0) return [];
  const struck: Struck[] = [];
  for (const cone of conesOf(nozzle)) {
    for (const solid of solids) {
      const hit = mayReach(cone, solid.bounds) ? findConeHit(cone, solid) : undefined;
      if (hit) struck.push({ ...hit, cone, solid });
    }
  }
  return struck.sort((a, b) => a.along_m - b.along_m);
}

/** A place where people are, or where loose things are known to lie. */
export const isForbidden = ({ obstruction: { kind, hasLooseItems } }: Solid): boolean => kind === 'work-place' || hasLooseItems === true;
/** A shelf of which nobody has said whether loose things lie on it. */
export const isUnknownShelf = ({ obstruction: { kind, hasLooseItems } }: Solid): boolean => SHELVES.has(kind) && hasLooseItems === null;
