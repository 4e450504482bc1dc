import { type Day, dayNumber, dayText, findDay, monthsLater } from '../model/day.ts';
import { type Plan, type Ref, type Visit, refKey } from '../model/plan.ts';
import { thingName } from '../model/thing-name.ts';

/** overdue: the day has passed; soon: within a month; ok: later; unknown: nobody has said when it was last done, or how often it is. */
export type DueStanding = 'overdue' | 'soon' | 'ok' | 'unknown';

/** The next service of one thing. */
export interface ServiceDue {
  readonly kind: Visit['kind'];
  readonly ref: Ref;
  readonly about: string;
  readonly name: string;
  /** Last time, and the next; undefined while not known. */
  readonly last: string | undefined;
  readonly due: string | undefined;
  readonly standing: DueStanding;
  /** A sentence. */
  readonly text: string;
}

export const SERVICE_WORDS: Readonly<Record<Visit['kind'], string>> = {
  pressure: 'Pressure of the cylinder',
  hose: 'Discharge hose: look and test',
  retest: 'Retest of the cylinder',
  enclosure: 'Enclosure: openings and leaks',
};

export const DUE_WORDS: Readonly<Record<DueStanding, string>> = { overdue: 'overdue', soon: 'due soon', ok: 'in time', unknown: 'not known' };

export const SERVICE_SOURCE = 'Weight and pressure every six months: 29 CFR 1910.160(b)(7) and (8); the other usual intervals: NFPA 2001, memory; the manual of the unit, the adopted code and the law on gas cylinders govern.';

/** Days ahead in which a service is called due soon. Source: common practice. */
export const SOON_days = 30;

const STANDINGS: readonly DueStanding[] = ['overdue', 'unknown', 'soon', 'ok'];
const OF_CYLINDER: readonly Visit['kind'][] = ['pressure', 'hose', 'retest'];

/** Every day on which something was done: visits, and readings of a cylinder's pressure. */
function daysDone({ siteRecord: { log, service } }: Plan, kind: Visit['kind'], about: string): Day[] {
  const visits = service.visits.filter((visit) => visit.kind === kind && (visit.about === about || visit.about === '')).map(({ on }) => on);
  const readings = kind === 'pressure' ? log.filter((entry) => entry.kind === 'pressure' && entry.about === about && entry.value !== null && entry.temperature_K !== null).map(({ at }) => at) : [];
  return [...visits, ...readings].flatMap((words) => findDay(words) ?? []).sort((a, b) => dayNumber(a) - dayNumber(b));
}

const counted = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`;

function dueOf(plan: Plan, kind: Visit['kind'], ref: Ref, today: Day | undefined): ServiceDue {
  const about = refKey(ref);
  const months = plan.siteRecord.service[`${kind}_months`];
  const last = daysDone(plan, kind, about).at(-1);
  const due = last && months !== null ? monthsLater(last, months) : undefined;
  const base = { kind, ref, about, name: thingName(plan, ref), last: last && dayText(last), due: due && dayText(due) };
  if (months === null) return { ...base, standing: 'unknown', text: 'How often is not entered: read it in the manual.' };
  if (!due) return { ...base, standing: 'unknown', text: kind === 'retest' ? 'Enter the day of the last test, as it is stamped on the cylinder.' : 'Nobody has entered when it was last done.' };
  if (!today) return { ...base, standing: 'unknown', text: `Due on ${dayText(due)}; which day it is now is not known.` };
  const left = dayNumber(due) - dayNumber(today);
  if (left < 0) return { ...base, standing: 'overdue', text: `Was due on ${dayText(due)}, ${counted(-left)} ago.` };
  const words = left === 0 ? 'Due today.' : `Due on ${dayText(due)}, in ${counted(left)}.`;
  return { ...base, standing: left <= SOON_days ? 'soon' : 'ok', text: words };
}

/**
 * When each cylinder and each enclosure is to be serviced next, most pressing first. A visit without a thing counts for
 * all of its kind, a logged pressure with its temperature counts as a pressure visit.
 * @param today  2026-03-04; otherwise nothing is known to be in time
 */
export function serviceDue(plan: Plan, today: string): ServiceDue[] {
  const now = findDay(today);
  const cylinders = Object.values(plan.networks).flatMap(({ id: network, cylinders: all }) => Object.values(all).map(({ id }): Ref => ({ kind: 'cylinder', network, id })));
  const enclosures = Object.values(plan.levels).flatMap(({ id: level, enclosures: all }) => Object.values(all).map(({ id }): Ref => ({ kind: 'enclosure', level, id })));
  const all = [...OF_CYLINDER.flatMap((kind) => cylinders.map((ref) => dueOf(plan, kind, ref, now))), ...enclosures.map((ref) => dueOf(plan, 'enclosure', ref, now))];
  return all.sort((a, b) => STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing) || (a.due ?? '').localeCompare(b.due ?? ''));
}
