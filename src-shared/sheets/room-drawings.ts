import { fieldDimensionsOf } from '../derived/field-dimensions.ts';
import { type Ref, refKey } from '../model/plan.ts';
import { drawAsBuilt, isAnyMeasured } from './as-built-view.ts';
import { drawFieldSheet } from './field-room-view.ts';
import { fieldTable } from './field-tables.ts';
import type { PlanContent } from './plan-content.ts';
import type { RoomDrawing } from './room-sheets.ts';
import type { Table } from './tables.ts';
import type { ViewSet } from './view-set.ts';

/** Everything that the drawing of a room shows and a dimension can be about, by key. */
function thingsOf({ level, layer, rooms, networks }: PlanContent): string[] {
  const own: Ref[] = layer === 'room' ? rooms.map(({ enclosure }) => ({ kind: 'enclosure', level: level.id, id: enclosure.id })) : [];
  const hung = networks.flatMap(({ network, nozzles, fittings, hasCylinders }): Ref[] => [
    ...nozzles.map(({ ref }): Ref => ref),
    ...fittings.map(({ node }): Ref => ({ kind: 'node', network: network.ref.id, id: node })),
    ...(hasCylinders ? Object.keys(network.network.cylinders).map((id): Ref => ({ kind: 'cylinder', network: network.ref.id, id })) : []),
  ]);
  return [...own, ...hung].map(refKey);
}

/** The dimensions of each room as a table, every one once; what belongs to no room stands with the last. */
function tablesByRoom({ derived, rooms }: ViewSet, parts: readonly PlanContent[]): ReadonlyMap<PlanContent, Table> {
  const homes = new Map<string, PlanContent>();
  for (const part of parts) for (const key of thingsOf(part)) if (!homes.has(key)) homes.set(key, part);
  const last = parts.at(-1);
  const answers = rooms.size > 0 ? rooms : undefined;
  return new Map(
    parts.flatMap((part): [PlanContent, Table][] => {
      const table = fieldTable(derived, answers, parts.length < 2 ? undefined : { name: part.title, holds: ({ about }) => (homes.get(refKey(about)) ?? last) === part });
      return table.rows.length > 0 ? [[part, table]] : [];
    }),
  );
}

/** Each room as it is measured, with the table to be filled in. */
export const fieldDrawing = (set: ViewSet): RoomDrawing => ({
  title: 'Field sheet',
  kind: 'field',
  isWanted: () => true,
  draw: drawFieldSheet(fieldDimensionsOf(set.derived)),
  tablesOf: (parts) => tablesByRoom(set, parts),
});

/** Each room in which something was measured, with red lines. */
export function asBuiltDrawing({ derived }: ViewSet): RoomDrawing {
  const { siteRecord, settings } = derived.plan;
  const all = fieldDimensionsOf(derived);
  const { measurements } = siteRecord;
  return { title: 'As built', kind: 'as-built', isWanted: (content) => isAnyMeasured(content, all, measurements), draw: drawAsBuilt(all, measurements, settings.siteTolerance_m) };
}
