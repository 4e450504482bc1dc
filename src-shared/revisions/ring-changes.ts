import { area_m2 } from '../geometry/outline.ts';
import type { Corner } from '../model/plan.ts';
import { formatQuantityAgainstLimit } from '../units/quantity-text.ts';
import { type Telling, fieldChanges, isAlike, isSameWay, wayBetween } from './field-changes.ts';
import { moveWords } from './field-words.ts';
import type { FieldChange } from './plan-change.ts';
import type { PartRing } from './plan-parts.ts';

interface NamedCorner {
  readonly corner: Corner;
  readonly name: string;
  readonly wall: string;
}

function namedCorners(rings: readonly PartRing[]): ReadonlyMap<string, NamedCorner> {
  const named = new Map<string, NamedCorner>();
  for (const { label, corners } of rings) {
    const of = label === '' ? '' : ` of ${label}`;
    for (const [i, corner] of (corners ?? []).entries()) named.set(corner.id, { corner, name: `Corner ${i + 1}${of}`, wall: `Wall ${i + 1}${of}` });
  }
  return named;
}

/** Corner by corner and wall by wall: which came, went, moved, or are made otherwise. */
function cornerChanges(before: readonly PartRing[], now: readonly PartRing[], telling: Telling): FieldChange[] {
  const [was, is] = [namedCorners(before), namedCorners(now)];
  const told = [...new Set([...was.keys(), ...is.keys()])].flatMap((id): FieldChange[] => {
    const [old, fresh] = [was.get(id), is.get(id)];
    if (!old || !fresh) return [{ label: (fresh ?? old)?.name ?? 'Corner', before: '', now: fresh ? 'added' : 'removed' }];
    const way = wayBetween({ x: old.corner.x, y: old.corner.y }, { x: fresh.corner.x, y: fresh.corner.y });
    const isMoved = (way.east_m !== 0 || way.north_m !== 0) && !(telling.move && isSameWay(way, telling.move));
    const moved = isMoved ? [{ label: fresh.name, before: '', now: `moved ${moveWords(way, telling.now.system)}` }] : [];
    return [...moved, ...fieldChanges(fresh.wall, 'wall', old.corner.wall, fresh.corner.wall, telling)];
  });
  const order = (rings: readonly PartRing[], other: ReadonlyMap<string, unknown>): string => rings.map(({ corners }) => (corners ?? []).flatMap(({ id }) => (other.has(id) ? [id] : [])).join(' ')).join('/');
  const isReordered = order(before, is) !== order(now, was);
  return isReordered ? [...told, { label: 'Corners', before: '', now: 'in another order' }] : told;
}

/** What differs in the rings of a thing, unless the whole of it was moved. */
export function ringChanges(before: readonly PartRing[], now: readonly PartRing[], telling: Telling): FieldChange[] {
  if ([...before, ...now].some(({ corners }) => corners !== null)) return cornerChanges(before, now, telling);
  return now.flatMap(({ label, places }, i): FieldChange[] => {
    const old = before[i]?.places ?? [];
    if (isAlike(old, places) || telling.move) return [];
    const [was, is] = [area_m2(old), area_m2(places)];
    if (old.length === places.length && Math.abs(was - is) < 1e-6) return [{ label, before: '', now: 'turned or shaped otherwise' }];
    const { value, limit } = formatQuantityAgainstLimit(was, is, 'area', telling.now.system);
    return [{ label, before: `${old.length} corners, ${value}`, now: `${places.length} corners, ${limit}` }];
  });
}
