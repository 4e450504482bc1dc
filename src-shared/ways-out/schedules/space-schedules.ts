import type { Derived } from '../../derived/derived.ts';
import { OPENING_WORDS } from '../../model/thing-name.ts';
import { clearHeight_m } from '../../sheets/sheet-text.ts';
import { lengthCells, lengthColumns } from '../../workbook/length-columns.ts';
import { figure } from '../../workbook/workbook.ts';
import { type ScheduleContent, answerWords, column, quantityCells, quantityColumns, temperatureCell, temperatureUnit } from './cells.ts';

const words = (code: string): string => code.replaceAll('-', ' ');

/** Every space with the figures that its volume rests on. */
export function spaceRows({ plan, spaces }: Derived): ScheduleContent {
  const { lengths } = plan.settings;
  const unit = temperatureUnit(lengths);
  return {
    columns: [
      column('Level', 18), column('Space', 26), ...quantityColumns('Floor area', 'area', lengths), ...lengthColumns('Clear height', lengths), ...quantityColumns('Gross volume', 'volume', lengths),
      column('Protected', 10), column('Hazard', 14), column('Occupancy', 22), column(`Least temperature [${unit}]`, 12), column(`Greatest temperature [${unit}]`, 12), column('Design concentration [vol %]', 13),
    ],
    rows: spaces.map((space) => {
      const { temperature, hazardClass, occupancy, concentration_pct } = space.enclosure;
      return [
        space.level.name, space.name, ...quantityCells(space.area_m2, 'area', lengths), ...lengthCells(clearHeight_m(space) ?? null, lengths), ...quantityCells(space.grossVolume_m3, 'volume', lengths),
        space.isProtected ? 'yes' : 'NO', hazardClass === 'unknown' ? 'not known' : words(hazardClass), occupancy === 'unknown' ? 'not known' : words(occupancy),
        temperatureCell(temperature?.least_K, lengths), temperatureCell(temperature?.greatest_K, lengths), concentration_pct === null ? null : figure(concentration_pct, 2),
      ];
    }),
  };
}

/** Doors, windows, vents, ducts and penetrations of every room. */
export function openingRows({ plan }: Derived): ScheduleContent {
  const { lengths } = plan.settings;
  return {
    columns: [
      column('Level', 18), column('Room', 24), column('Opening', 18), column('Kind', 14), ...lengthColumns('Width', lengths), ...lengthColumns('Height', lengths), ...lengthColumns('Lower edge above floor', lengths),
      column('Leads to', 14), column('Closes before discharge', 12), ...quantityColumns('Free area', 'area', lengths), ...lengthColumns('Gap under leaf', lengths), ...lengthColumns('Sleeve inside', lengths), column('Fire rating', 12), column('Seal', 24),
    ],
    rows: Object.values(plan.levels).flatMap((level) =>
      Object.values(level.enclosures).flatMap((enclosure) =>
        Object.values(enclosure.openings).map((opening) => {
          const isPenetration = opening.kind === 'penetration';
          return [
            level.name, enclosure.name, opening.name, OPENING_WORDS[opening.kind], ...lengthCells(opening.width_m, lengths), ...lengthCells(opening.height_m, lengths), ...lengthCells(opening.bottom_m, lengths),
            isPenetration ? '' : opening.leadsTo === 'unknown' ? 'not known' : opening.leadsTo, isPenetration ? '' : answerWords(opening.closes), ...quantityCells(opening.freeArea_m2, 'area', lengths),
            ...lengthCells(opening.undercut_m, lengths), ...lengthCells(opening.crossing?.sleeve_m ?? null, lengths), opening.crossing?.rating ?? '', isPenetration ? opening.crossing?.seal.trim() || 'not chosen' : '',
          ];
        }),
      ),
    ),
  };
}
