import { z } from '../profile/zod.ts';
import { planSchema } from '../model/schema.ts';
import type { HostMethod, RequestOf } from './contract.ts';

const nothing = z.strictObject({});
const name = z.string().min(1).max(400);
const ref = z.string().min(1).max(4096);
/** Also a file name, so it is held to letters, digits and dashes. */
const session = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9-]{0,79}$/, 'a session has letters, digits and dashes');
const job = z.string().min(1).max(80);
const bytes = z.instanceof(Uint8Array);
const preference = z.union([z.string().max(4000), z.number(), z.boolean()]);

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const takeOff = z.strictObject({ stock_m: z.number().min(0.5).max(30), kerf_m: z.number().min(0).max(0.02) }).nullable();

/** What each method takes: a method without a parser, or with one for another request, does not compile. */
export const REQUESTS: { readonly [M in HostMethod]: z.ZodType<RequestOf<M>> } = {
  info: nothing,
  listPlans: nothing,
  forgetRecent: z.strictObject({ ref }),
  pickPlan: nothing,
  pickPlanPlace: z.strictObject({ name }),
  openPlan: z.strictObject({ session, ref }),
  openPlanBytes: z.strictObject({ name, bytes }),
  newPlan: z.strictObject({ demo: z.string().max(80).nullable(), lengths: z.enum(['feet', 'metric']) }),
  savePlan: z.strictObject({
    session,
    ref,
    plan: planSchema,
    stamp: z.string().max(400).nullable(),
    overwrite: z.boolean(),
  }),
  packPlan: z.strictObject({ plan: planSchema }),
  closePlan: z.strictObject({ session, ref: ref.nullable() }),
  keepRecovery: z.strictObject({
    session,
    ref: ref.nullable(),
    name,
    steps: z.number().int().min(0),
    plan: planSchema,
  }),
  dropRecovery: z.strictObject({ session }),
  listRecoveries: nothing,
  openRecovery: z.strictObject({ session, id: session }),
  importUnderlay: z.strictObject({ name, bytes }),
  readUnderlay: z.strictObject({
    sha256: z.string().regex(/^[0-9a-f]{64}$/),
    page: z.number().int().min(1).max(10_000),
  }),
  underlayResult: z.strictObject({ job }),
  printSheets: z.strictObject({
    plan: planSchema,
    paper: z.string().min(1).max(40),
    scale: z.union([z.literal('auto'), z.number().positive().max(100_000)]),
    set: z.enum(['submittal', 'field']),
    takeOff: z.strictObject({ stock_m: z.number().min(0.5).max(30), kerf_m: z.number().min(0).max(0.02) }).nullable(),
  }),
  printResult: z.strictObject({ job }),
  readFieldRecord: z.strictObject({ name, bytes }),
  keepIssue: z.strictObject({ plan: planSchema, takeOff }),
  issueResult: z.strictObject({ job }),
  readIssue: z.strictObject({ sha256 }),
  printIssue: z.strictObject({ plan: planSchema, set: z.string().min(1).max(80), takeOff }),
  jobState: z.strictObject({ job }),
  cancelJob: z.strictObject({ job }),
  saveFile: z.strictObject({ name, bytes }),
  openExternally: z.strictObject({ place: ref }),
  readPreferences: nothing,
  writePreferences: z.strictObject({ preferences: z.record(z.string().min(1).max(80), preference) }),
};
