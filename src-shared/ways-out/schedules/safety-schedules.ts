import type { Derived } from '../../derived/derived.ts';
import { fieldDimensionsOf } from '../../derived/field-dimensions.ts';
import type { FieldRoomAnswer } from '../../margins/field-room.ts';
import { SHUTDOWN_ON_WORDS, SHUTDOWN_WORDS } from '../../model/shutdown-words.ts';
import { DEVICE_WORDS } from '../../model/thing-name.ts';
import type { Finding } from '../../rules/finding.ts';
import { deviceFacts } from '../../sheets/device-schedule.ts';
import { fieldTolerance } from '../../sheets/field-tables.ts';
import { numberFindings } from '../../sheets/findings-table.ts';
import { shutdownTarget } from '../../sheets/release-matrix.ts';
import { sentence } from '../../sheets/sheet-text.ts';
import { lengthCells, lengthColumns } from '../../workbook/length-columns.ts';
import { type ScheduleContent, angleCell, column, count } from './cells.ts';

/** Detectors, alarms, signs, buttons, panels and air outlets. */
export function deviceRows({ plan }: Derived): ScheduleContent {
  const { lengths } = plan.settings;
  return {
    columns: [column('Level', 18), column('Device', 14), column('What it is', 22), ...lengthColumns('Plan east', lengths), ...lengthColumns('Plan north', lengths), ...lengthColumns('Middle above floor', lengths), column('Faces [°]', 9), column('What is known', 60)],
    rows: Object.values(plan.levels).flatMap((level) =>
      Object.values(level.devices).map((device) => [
        level.name, device.name, DEVICE_WORDS[device.kind], ...lengthCells(device.at.x, lengths), ...lengthCells(device.at.y, lengths), ...lengthCells(device.height_m, lengths), angleCell(device.facing_rad), deviceFacts(device, lengths),
      ]),
    ),
  };
}

/** What is shut or switched off in each room, and on what. */
export const releaseRows = ({ plan }: Derived): ScheduleContent => ({
  columns: [column('Level', 18), column('Room', 24), column('What', 26), column('Kind', 14), column('On the plan', 26), column('Shuts on', 24)],
  rows: Object.values(plan.levels).flatMap((level) =>
    Object.values(level.enclosures).flatMap((enclosure) =>
      Object.values(enclosure.shutdowns).map((row) => [level.name, enclosure.name, row.name || SHUTDOWN_WORDS[row.kind], SHUTDOWN_WORDS[row.kind], shutdownTarget(row, level), SHUTDOWN_ON_WORDS[row.on]]),
    ),
  ),
});

const VERDICT_WORDS: Readonly<Record<Finding['verdict'], string>> = { stop: 'STOP', warn: 'warning', note: 'note', 'not-checked': 'NOT CHECKED', ok: 'kept' };

/** Findings as the sheets number them. */
export const findingRows = (findings: readonly Finding[]): ScheduleContent => ({
  columns: [column('Number', 8), column('Check', 8), column('Verdict', 13), column('About', 34), column('What', 70), column('Source', 40), column('Accepted because', 40), column('By', 18)],
  rows: numberFindings(findings).map(({ number, finding }) => [
    count(number), finding.rule, VERDICT_WORDS[finding.verdict], `${finding.title}: ${finding.name}`, finding.text, finding.basis.source, finding.waiver?.reason ?? '', finding.waiver?.by ?? '',
  ]),
});

/** Every dimension that is measured on site; what was measured so far stands beside what was planned. */
export function fieldRows(derived: Derived, rooms?: ReadonlyMap<string, FieldRoomAnswer>): ScheduleContent {
  const { lengths } = derived.plan.settings;
  const { measurements } = derived.plan.siteRecord;
  const all = fieldDimensionsOf(derived);
  return {
    columns: [
      column('Id', 24), column('Dimension', 20), column('From', 24), column('To', 24), ...lengthColumns('Planned', lengths), ...lengthColumns('May be less by', lengths), ...lengthColumns('May be more by', lengths),
      ...lengthColumns('Measured', lengths), ...lengthColumns('Deviation', lengths), column('By', 16), column('When', 18), column('Instrument', 18),
    ],
    rows: all.map((dimension) => {
      const { id, name, from, to, planned_m } = dimension;
      const tolerance = fieldTolerance(dimension, all, rooms);
      const measured = measurements[id];
      return [
        id, name, sentence(from), to, ...lengthCells(planned_m, lengths), ...lengthCells(tolerance?.[0] ?? null, lengths), ...lengthCells(tolerance?.[1] ?? null, lengths),
        ...lengthCells(measured?.value_m ?? null, lengths), ...lengthCells(measured ? measured.value_m - planned_m : null, lengths), measured?.by ?? '', measured?.at ?? '', measured?.instrument ?? '',
      ];
    }),
  };
}
