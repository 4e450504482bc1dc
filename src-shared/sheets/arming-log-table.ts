import type { Plan } from '../model/plan.ts';
import { LOG_WORDS, readingText } from '../site/log-words.ts';
import { GONE_WORDS, namesByKey } from '../site/name-of-key.ts';
import type { Table } from './tables.ts';

/** The wiring and arming log as it was recorded, oldest first; without rows while nothing is. */
export function armingLogTable(plan: Plan): Table {
  const { log } = plan.siteRecord;
  const names = namesByKey(plan);
  return {
    title: 'Wiring and arming log as recorded',
    columns: [{ head: 'Date and time' }, { head: 'Of', font: 'bold' }, { head: 'What' }, { head: 'Read', isWide: true }, { head: 'By' }, { head: 'Instrument' }, { head: 'Remark', most_mm: 60 }],
    rows: log.map((entry) => [entry.at, names.get(entry.about) ?? GONE_WORDS, LOG_WORDS[entry.kind], readingText(entry, plan.settings.lengths), entry.by, entry.instrument, entry.note]),
  };
}
