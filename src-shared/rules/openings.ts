import { behindOpening } from '../derived/behind-opening.ts';
import type { Neighbour } from '../derived/neighbours.ts';
import { openingMiddle } from '../derived/wall-places.ts';
import type { Enclosure, Opening, RefOf } from '../model/plan.ts';
import { thingName } from '../model/thing-name.ts';
import type { Place } from './finding.ts';
import type { Asked } from './rule.ts';
import type { ServedRoom } from './served-rooms.ts';

/** An opening of a served room with the drawn spaces right behind it. */
export interface AskedOpening {
  readonly ref: RefOf<'opening'>;
  readonly enclosure: Enclosure;
  readonly opening: Opening;
  readonly behind: readonly Neighbour[];
}

/** The openings of a room that a check is about, each under its own name and that of its room. */
export function openingsOf({ ref, name, enclosure, neighbours, on }: ServedRoom, isAsked: (opening: Opening) => boolean): Asked<AskedOpening>[] {
  return Object.values(enclosure.openings)
    .filter(isAsked)
    .map((opening) => {
      const at = { kind: 'opening', level: ref.level, enclosure: ref.id, id: opening.id } as const;
      const own = thingName({ levels: { [ref.level]: on.level }, networks: {} }, at);
      return { subject: { ref: at, enclosure, opening, behind: behindOpening(enclosure, opening, neighbours) }, ref: at, name: `${own}, ${name}` };
    });
}

/** Where a finding about an opening shows, else its room. */
export function placeOfOpening({ ref, enclosure, opening }: Pick<AskedOpening, 'ref' | 'enclosure' | 'opening'>): Place {
  const middle = openingMiddle(enclosure, opening);
  return { level: ref.level, at: middle ? [middle] : enclosure.outline.map(({ x, y }) => ({ x, y })) };
}
