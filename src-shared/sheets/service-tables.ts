import type { Evaluation } from '../evaluate.ts';
import { dayText, findDay } from '../model/day.ts';
import type { Plan } from '../model/plan.ts';
import { groupDue } from '../site/group-due.ts';
import { GONE_WORDS, namesByKey } from '../site/name-of-key.ts';
import { type PressureTrend, pressureTrends } from '../site/pressure-trend.ts';
import { DUE_WORDS, SERVICE_SOURCE, SERVICE_WORDS, serviceDue } from '../site/service-due.ts';
import { gaugeOf_Pa } from '../units/convert.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { FIELD_ROW_mm } from './cautions.ts';
import type { Cell, Table } from './tables.ts';
import { byField, testText, unitExample } from './test-fields.ts';

const BLANK_ROWS = 3;

/** What is due when. On a sheet without a day of print only the days stand. */
function dueTable(plan: Plan, printedAt: string): Table {
  const printed = findDay(printedAt);
  const all = serviceDue(plan, printed ? dayText(printed) : '');
  return {
    title: 'Service: what is due',
    note: SERVICE_SOURCE,
    columns: [{ head: 'What', font: 'bold', most_mm: 52 }, { head: 'Of', isWide: true }, { head: 'Last', least_mm: 22 }, { head: 'Due', least_mm: 22 }, { head: printed ? `On ${dayText(printed)}` : 'Stands', least_mm: 22 }, { head: 'Done on', least_mm: 24 }, { head: 'By', least_mm: 28 }],
    rows: groupDue(all).map((group): Cell[] => {
      const [{ kind, last, due, standing }] = group;
      const what = `${SERVICE_WORDS[kind]}, ${group.map(({ name }) => name).join(', ')}`;
      const about = `${kind}/${group.map((each) => each.about).join('+')}`;
      return [SERVICE_WORDS[kind], group.map(({ name }) => name).join(', '), last ?? 'not known', due ?? 'not known', printed || due === undefined ? (standing === 'overdue' ? { kind: 'bold', words: 'OVERDUE' } : DUE_WORDS[standing]) : '', testText('service', about, 'done-on', `${what}: day on which it was done, such as 2026-03-04`), byField('service', about, what)];
    }),
    rowHeight_mm: FIELD_ROW_mm,
  };
}

function pressureRows(plan: Plan, trends: readonly PressureTrend[]): Cell[][] {
  const { lengths } = plan.settings;
  const names = namesByKey(plan);
  const gauge = (value_Pa: number): string => formatQuantity(gaugeOf_Pa(value_Pa), 'gaugePressure', lengths);
  return trends.flatMap(({ about, readings }) => {
    const name = names.get(about) ?? 'Cylinder';
    const blank = (_: unknown, i: number): Cell[] => {
      const [key, what] = [`${about}/${readings.length + i + 1}`, `${name}, reading ${readings.length + i + 1}`];
      return [
        '',
        testText('pressure', key, 'when', `${what}: date and time, such as 2026-03-04 15:20`),
        testText('pressure', key, 'gauge', `${what}: pressure as read, ${unitExample('gaugePressure', lengths)}`),
        testText('pressure', key, 'temperature', `${what}: temperature of the cylinder with its unit, such as ${formatQuantity(293.15, 'temperature', lengths)}`),
        testText('pressure', key, 'corrected', `${what}: pressure at the filling temperature by the chart of the manual, ${unitExample('gaugePressure', lengths)}`),
        testText('pressure', key, 'answer', `${what}: good, refill or replace`),
        byField('pressure', key, what),
      ];
    };
    const recorded = readings.map(({ entry, corrected_Pa, lossShare, isShort }): Cell[] => [
      '',
      entry.at,
      entry.value === null ? 'not entered' : gauge(entry.value),
      entry.temperature_K === null ? 'not entered' : formatQuantity(entry.temperature_K, 'temperature', lengths),
      corrected_Pa.isKnown ? gauge(corrected_Pa.sums) : 'not known',
      isShort === undefined ? 'not checked' : isShort ? { kind: 'bold', words: `${lossShare.isKnown ? `${(lossShare.sums * 100).toFixed(1)} % lost: ` : ''}REFILL OR REPLACE` } : lossShare.isKnown ? `${Math.max(0, lossShare.sums * 100).toFixed(1)} % lost` : '',
      entry.by,
    ]);
    return [...recorded, ...Array.from({ length: BLANK_ROWS }, blank)].map((row, i) => (i === 0 ? [name, ...row.slice(1)] : row));
  });
}

/** Pressures as read and as they would read at the filling temperature, and rows for the next ones. */
function pressureTable({ derived: { plan }, design }: Pick<Evaluation, 'derived' | 'design'>): Table {
  const trends = design.networks.flatMap((network) => pressureTrends(network, plan.siteRecord.log));
  return {
    title: 'Pressure of the cylinders',
    note: 'Gauge and temperature are read together; a cylinder takes hours to follow its room. More than 5 % of the pressure lost, temperature allowed for: refill or replace (NFPA 2001, memory). The chart of the manual governs.',
    columns: [{ head: 'Cylinder', font: 'bold' }, { head: 'Date', least_mm: 26 }, { head: 'Gauge', least_mm: 28 }, { head: 'Temperature', least_mm: 24 }, { head: 'At the filling temperature', least_mm: 30 }, { head: 'Answer', isWide: true }, { head: 'By', least_mm: 28 }],
    rows: pressureRows(plan, trends),
    repeated: 1,
    rowHeight_mm: FIELD_ROW_mm,
  };
}

function visitTable(plan: Plan): Table {
  const names = namesByKey(plan);
  return {
    title: 'Service visits as recorded',
    columns: [{ head: 'Day' }, { head: 'What' }, { head: 'Of', font: 'bold' }, { head: 'By' }, { head: 'Remark', isWide: true }],
    rows: plan.siteRecord.service.visits.map(({ on, kind, about, by, note }) => [on, SERVICE_WORDS[kind], about === '' ? (kind === 'enclosure' ? 'All enclosures' : 'All cylinders') : (names.get(about) ?? GONE_WORDS), by, note]),
  };
}

/** The service sheet: what is due, pressures over time, visits. Tables without rows are left out. */
export const serviceTables = (evaluation: Pick<Evaluation, 'derived' | 'design'>, printedAt: string): Table[] =>
  [dueTable(evaluation.derived.plan, printedAt), pressureTable(evaluation), visitTable(evaluation.derived.plan)].filter(({ rows }) => rows.length > 0);
