import type { Derived } from '../derived/derived.ts';
import type { Enclosure, Opening, Settings } from '../model/plan.ts';
import { OPENING_WORDS } from '../model/thing-name.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { compassName } from '../derived/datum.ts';
import { lengthText } from './sheet-text.ts';
import type { Cell, Table } from './tables.ts';

const NOT_KNOWN = 'not known';
const LEADS: Readonly<Record<Opening['leadsTo'], string>> = { unknown: NOT_KNOWN, outdoors: 'outdoors', corridor: 'a corridor', room: 'another room', exit: 'an exit way' };

const answered = (answer: boolean | null): string => (answer === null ? NOT_KNOWN : answer ? 'yes' : 'NO');

/** What stays open, or how a penetration is made good, in words. */
function remark({ kind, freeArea_m2, undercut_m, crossing }: Opening, lengths: Settings['lengths']): string {
  switch (kind) {
    case 'door':
      return undercut_m === null ? `gap under the leaf ${NOT_KNOWN}` : `gap under the leaf ${formatLength(undercut_m, lengths)}`;
    case 'penetration':
      return crossing
        ? [crossing.sleeve_m === null ? `sleeve ${NOT_KNOWN}` : `sleeve ${formatLength(crossing.sleeve_m, lengths)}`, crossing.seal.trim() ? `seal ${crossing.seal.trim()}` : 'seal not chosen', crossing.rating.trim() ? `rated ${crossing.rating.trim()}` : `rating ${NOT_KNOWN}`].join(', ')
        : 'nothing entered on how it is made good';
    default:
      return freeArea_m2 === null ? `free area ${NOT_KNOWN}` : `free area ${formatQuantity(freeArea_m2, 'area', lengths)}`;
  }
}

/** The wall that an opening is in, as a person in the room calls it. */
function wallWords({ outline }: Enclosure, { wall }: Opening): string {
  const i = outline.findIndex(({ id }) => id === wall);
  const [a, b] = [outline[i], outline[(i + 1) % outline.length]];
  if (!a || !b) return NOT_KNOWN;
  const twice = outline.reduce((sum, { x, y }, k) => sum + x * (outline[(k + 1) % outline.length]?.y ?? y) - y * (outline[(k + 1) % outline.length]?.x ?? x), 0);
  const along_rad = Math.atan2(b.y - a.y, b.x - a.x);
  return compassName(twice > 0 ? along_rad - Math.PI / 2 : along_rad + Math.PI / 2);
}

/** Doors, windows, vents, ducts and penetrations of every room: size, place, where they lead, whether they close. */
export function openingSchedule({ plan }: Derived): Table {
  const { lengths } = plan.settings;
  const enclosures = Object.values(plan.levels).flatMap((level) => Object.values(level.enclosures));
  return {
    title: 'Openings and penetrations',
    shortTitle: 'Openings',
    note: 'Sizes are clear ones; the lower edge is above the finished floor. What does not close before the discharge is open while the gas is held.',
    columns: [{ head: 'Room', isWide: true }, { head: 'Opening', font: 'bold' }, { head: 'Kind' }, { head: 'Wall' }, { head: 'Width', align: 'right' }, { head: 'Height', align: 'right' }, { head: 'Lower edge', align: 'right' }, { head: 'Leads to' }, { head: 'Closes' }, { head: 'Remarks', isWide: true }],
    repeated: 1,
    rows: enclosures.flatMap((enclosure) =>
      Object.values(enclosure.openings).map((opening, i): Cell[] => [
        i === 0 ? enclosure.name : '',
        opening.name,
        OPENING_WORDS[opening.kind],
        wallWords(enclosure, opening),
        formatLength(opening.width_m, lengths),
        formatLength(opening.height_m, lengths),
        lengthText(opening.bottom_m, lengths),
        opening.kind === 'penetration' ? '' : LEADS[opening.leadsTo],
        opening.kind === 'penetration' ? '' : answered(opening.closes),
        remark(opening, lengths),
      ]),
    ),
  };
}
