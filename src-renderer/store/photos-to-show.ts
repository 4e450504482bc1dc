import type { Plan } from '#shared/model/plan';
import { photoOf } from '#shared/sheets/photo-table';
import type { SheetPhoto } from '#shared/sheets/sheet';
import type { UnderlayDrawings } from './underlay-drawings.ts';

const pinnedIn = ({ siteRecord }: Plan): ReadonlySet<string> => new Set(Object.values(siteRecord.measurements).flatMap(({ photos }) => photos));

/** Starts reading the photographs that are pinned in a plan, each once. */
export function wantPhotos(plan: Plan, drawings: Pick<UnderlayDrawings, 'wantPage'>): void {
  for (const asset of pinnedIn(plan)) drawings.wantPage(plan, { asset, page: 1 });
}

/** The pinned photographs as far as they were read, for sheets on the screen. One that is gone or damaged is left out: the sheet says so in its place. */
export function photosToShow(plan: Plan, drawings: Pick<UnderlayDrawings, 'stateOf'>): ReadonlyMap<string, SheetPhoto | 'later'> {
  return new Map(
    [...pinnedIn(plan)].flatMap((asset): [string, SheetPhoto | 'later'][] => {
      if (!plan.assets[asset]) return [];
      const state = drawings.stateOf(plan, { asset, page: 1 });
      if (state === undefined || state.state === 'loading') return [[asset, 'later']];
      const photo = state.state === 'ready' ? photoOf(state.drawing) : undefined;
      return photo ? [[asset, photo]] : [];
    }),
  );
}
