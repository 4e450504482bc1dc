import { LIMIT_KEYS, type LimitKey } from './limit-catalogue.ts';
import { PIPE_SCHEDULES, PIPE_SIZES } from './pipe-table.ts';
import { z } from './zod.ts';

const shortText = z.string().max(400);
/** No manual gives a larger figure in base SI (ten thousand bar); sums with anything smaller stay finite. */
const LARGEST_LIMIT = 1e9;
/** No nozzle covers more floor than this [m]. */
const reach_m = z.number().positive().max(100_000);

/** A figure with the place it was read from. The unit is the suffix of its key. */
export const sourcedLimitSchema = z.strictObject({ value: z.number().min(0).max(LARGEST_LIMIT), source: shortText });
export type SourcedLimit = z.infer<typeof sourcedLimitSchema>;

/** The floor that one nozzle covers, seen from above: round, or a rectangle turned with the nozzle. */
export const footprintSchema = z.discriminatedUnion('shape', [
  z.strictObject({ shape: z.literal('circle'), radius_m: reach_m, source: shortText }),
  z.strictObject({
    shape: z.literal('rectangle'),
    length_m: reach_m,
    width_m: reach_m,
    source: shortText,
  }),
]);
export type Footprint = z.infer<typeof footprintSchema>;

/** Parts that may stand between the valve of a cylinder and the pipe. */
export const ASSEMBLY_KINDS = ['hose', 'check-valve', 'manifold', 'stop-valve', 'relief-valve', 'regulator', 'adapter'] as const;
/** Ways in which the branch of a tee may point; bull: fed through its branch. */
export const TEE_ATTITUDES = ['side', 'up', 'down', 'bull'] as const;
export const MADE_FITTINGS = ['elbow-90', 'elbow-45', 'street-elbow', 'tee', 'cross', 'reducer', 'coupling', 'union', 'cap', 'plug'] as const;

/** A fitting as its maker gives it, for what no table here holds: reducing, forged, welded and grooved ones. */
export const madeFittingSchema = z.strictObject({
  kind: z.enum(MADE_FITTINGS),
  /**
   * Size of each leg with its centre-to-end [m]. Of a tee the two legs of the run come first, then the branch; of a
   * reducer the larger end; of a street elbow the inside thread. A straight fitting may give one leg for all.
   */
  legs: z.array(z.strictObject({ size: z.enum(PIPE_SIZES), reach_m: z.number().min(0).max(2) })).min(1).max(4),
  /** null: not given. */
  weight_kg: z.number().positive().max(1000).nullable(),
  source: shortText,
});
export type MadeFitting = z.infer<typeof madeFittingSchema>;

/**
 * The limits of one pre-engineered unit, as its manual gives them.
 * A key that is missing from `limits` is blank: what needs it is not checked.
 */
export const unitProfileSchema = z.strictObject({
  id: z.string().min(1).max(80),
  name: shortText,
  /** A sample is invented: every sheet that rests on it says so. */
  isSample: z.boolean(),
  note: z.string().max(4000),
  limits: z.partialRecord(z.enum(LIMIT_KEYS as [LimitKey, ...LimitKey[]]), sourcedLimitSchema),
  footprint: footprintSchema.nullable(),
  /** Orifices that the nozzle is made with: the code stamped on it and the area of all its holes. */
  orifices: z.array(z.strictObject({ code: z.string().min(1).max(40), area_m2: z.number().positive().max(1) })).max(500),
  pipeSizes: z.array(z.enum(PIPE_SIZES)).max(PIPE_SIZES.length),
  schedule: z.enum(PIPE_SCHEDULES).nullable(),
  fittingClass: z.enum(['300', '2000', '3000', '6000']).nullable(),
  /** Fittings whose lengths are known from their maker. */
  madeFittings: z.array(madeFittingSchema).max(500),
  /** Parts of the discharge assembly in the order of the manual, from the valve on; null: blank. */
  assemblyOrder: z.array(z.enum(ASSEMBLY_KINDS)).max(20).nullable(),
  /** Ways in which a tee may be turned; null: blank. */
  teeAttitudes: z.array(z.enum(TEE_ATTITUDES)).max(TEE_ATTITUDES.length).nullable(),
});
export type UnitProfile = z.infer<typeof unitProfileSchema>;

/** A profile with every figure blank, to be filled from a manual. */
export const blankProfile = (id: string, name: string): UnitProfile => ({
  id,
  name,
  isSample: false,
  note: '',
  limits: {},
  footprint: null,
  orifices: [],
  pipeSizes: [],
  schedule: null,
  fittingClass: null,
  madeFittings: [],
  assemblyOrder: null,
  teeAttitudes: null,
});
