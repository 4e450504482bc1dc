import { faceName } from '../../derived/datum.ts';
import type { Derived } from '../../derived/derived.ts';
import { nozzleName } from '../../derived/nozzle-name.ts';
import { placedSupportsOf } from '../../derived/placed-supports.ts';
import { assemblyPartWords, nozzlePlaces } from '../../sheets/schedules.ts';
import { networkStretches } from '../../sheets/pipe-stretches.ts';
import { degreesText, sentence } from '../../sheets/sheet-text.ts';
import { supportWhere } from '../../sheets/support-schedule.ts';
import { lengthCells, lengthColumns } from '../../workbook/length-columns.ts';
import { figure } from '../../workbook/workbook.ts';
import { type ScheduleContent, angleCell, column, count, orificeCells, orificeColumns } from './cells.ts';

/** Sizes in words, so that no program takes 3/4 for a day of the year. */
const nps = (size: string): string => `NPS ${size}`;

/** Nozzles with all that a fitter needs to place them. */
export function nozzleRows(derived: Derived): ScheduleContent {
  const { lengths } = derived.plan.settings;
  return {
    columns: [
      column('Network', 18), column('Nozzle', 10), column('Space', 26), column('From face', 16), ...lengthColumns('Off that face', lengths), column('And from face', 16), ...lengthColumns('Off this face', lengths),
      ...lengthColumns('Orifice above floor', lengths), ...lengthColumns('Below ceiling', lengths), column('Holes', 8), column('Hole directions', 30), ...orificeColumns(lengths),
    ],
    rows: nozzlePlaces(derived).map(({ nozzle, space, datum, fromFaces_m }) => {
      const { at, localCeiling_m, holes_rad } = nozzle;
      return [
        nozzle.network.network.name, nozzleName(derived, nozzle), space?.name ?? 'in no space',
        datum ? faceName(datum.faces[0]) : 'not known', ...lengthCells(fromFaces_m?.[0] ?? null, lengths), datum ? faceName(datum.faces[1]) : 'not known', ...lengthCells(fromFaces_m?.[1] ?? null, lengths),
        ...lengthCells(at?.z ?? null, lengths), ...lengthCells(at && localCeiling_m !== undefined ? localCeiling_m - at.z : null, lengths), count(holes_rad.length), holes_rad.map(degreesText).join(', '), ...orificeCells(nozzle.nozzle.orificeArea_m2, lengths),
      ];
    }),
  };
}

/** Every cylinder where it stands. */
export function cylinderRows({ plan, networks }: Derived): ScheduleContent {
  const { lengths } = plan.settings;
  return {
    columns: [column('Network', 18), column('Cylinder', 10), column('Unit', 30), column('Mounting', 10), ...lengthColumns('Plan east', lengths), ...lengthColumns('Plan north', lengths), column('Back toward [°]', 10), ...lengthColumns('Rail above floor', lengths), column('Assembly in flow order', 60)],
    rows: networks.flatMap(({ network, profile }) =>
      Object.values(network.cylinders).map((cylinder) => [
        network.name, cylinder.name, profile ? profile.name : 'profile lost', cylinder.mounting, ...lengthCells(cylinder.at.x, lengths), ...lengthCells(cylinder.at.y, lengths), angleCell(cylinder.back_rad),
        ...lengthCells(cylinder.railHeight_m, lengths), network.assembly.map((part) => assemblyPartWords(part, lengths)).join(', ') || 'none entered',
      ]),
    ),
  };
}

/** Straight pipe from fitting to fitting, as the plan names it. */
export function stretchRows({ plan, networks }: Derived): ScheduleContent {
  const { lengths } = plan.settings;
  return {
    columns: [column('Network', 18), column('Stretch', 8), column('Size', 12), column('Schedule', 10), column('Lies', 10), ...lengthColumns('Length between centres', lengths), ...lengthColumns('Begins above floor', lengths), ...lengthColumns('Ends above floor', lengths)],
    rows: networks.flatMap((network) =>
      networkStretches(network, network.pipes).map(({ size, schedule, lie, way, length_m, from, to }, i) => [
        network.network.name, count(i + 1), nps(size), `Sch ${schedule}`, way ?? lie, ...lengthCells(length_m, lengths), ...lengthCells(from.z, lengths), ...lengthCells(to.z, lengths),
      ]),
    ),
  };
}

/** Way of the agent from the cylinders to each nozzle. */
export function pathRows(derived: Derived): ScheduleContent {
  const { lengths } = derived.plan.settings;
  return {
    columns: [column('Network', 18), column('Nozzle', 10), ...lengthColumns('Developed length', lengths), column('Elbows', 8), column('Tees', 8)],
    rows: derived.networks.flatMap((network) =>
      network.paths.map(({ nozzle: id, length_m, elbows, tees }) => {
        const nozzle = network.nozzles.find(({ ref }) => ref.id === id);
        return [network.network.name, nozzle ? nozzleName(derived, nozzle) : id, ...lengthCells(length_m, lengths), count(elbows), count(tees)];
      }),
    ),
  };
}

/** What holds the pipe, and where. */
export function supportRows(derived: Derived): ScheduleContent {
  const { lengths } = derived.plan.settings;
  return {
    columns: [column('Network', 18), column('Kind', 10), column('Pipe', 12), ...lengthColumns('Above floor', lengths), column('Where', 50), column('Bears [N]', 11), column('Braces', 14)],
    rows: derived.networks.flatMap((network) =>
      placedSupportsOf(network).map((placed) => [
        network.network.name, sentence(placed.support.kind), placed.pipe ? nps(placed.pipe.pipe.size) : '', ...lengthCells(placed.support.at.z, lengths), supportWhere(derived, network, placed),
        placed.support.capacity_N === null ? null : figure(placed.support.capacity_N, 0), placed.support.brace === 'none' ? '' : placed.support.brace.replace('-', ' '),
      ]),
    ),
  };
}
