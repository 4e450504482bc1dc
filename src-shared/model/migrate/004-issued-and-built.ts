import type { JsonObject } from '../guarded-json.ts';
import { emptySiteRecord, usualSheets } from '../plan.ts';
import { each } from './each-entry.ts';
import type { Migration } from './index.ts';

/** From version 4: issued sets, sheets as the user lays them out, a log of wiring and arming, service. Readings that were noted in words stay, as notes of the log. */
export const withIssuedAndBuilt: Migration = {
  from: 4,
  remark: 'Issued sets, the layout of sheets, the arming log and service were not part of the plan yet: they are empty now.',
  step: (plan) => {
    const settings = plan.settings as JsonObject;
    const { measurements, checks, readings } = plan.siteRecord as JsonObject;
    return {
      ...plan,
      settings: { ...settings, sheets: { ...usualSheets(), ...(settings.sheets as JsonObject) } },
      issuedSets: [],
      siteRecord: {
        ...emptySiteRecord(),
        measurements: each(measurements, (measurement) => ({ ...measurement, reason: '', approvedBy: '', photos: [] })),
        checks: checks ?? {},
        log: (Array.isArray(readings) ? readings : []).flatMap((reading, i) => {
          const { what, value, unit, by, at } = reading as JsonObject;
          return [{ id: `reading-${i + 1}`, kind: 'note', about: '', value: null, isGood: null, temperature_K: null, by: by ?? '', at: at ?? '', instrument: '', note: `${String(what)}: ${String(value)} ${String(unit)}` }];
        }),
      },
    };
  },
};
