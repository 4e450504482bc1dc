import type { SiteRecord } from '../model/plan.ts';
import { siteRecordSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';

/** Months from one service to the next; null: as the manual says, not yet read. */
export type ServiceIntervals = Omit<SiteRecord['service'], 'visits'>;

const FIELDS = siteRecordSchema.shape.service.omit({ visits: true }).partial();

/** Changes how often a service is due. Refuses what is no whole number of months from 1 to 600. */
export const editServiceIntervals = command('Edit service intervals', (draft, change: Partial<ServiceIntervals>) => {
  applyChange<ServiceIntervals>(draft.siteRecord.service, FIELDS, change);
});
