import type { z } from 'zod';
import type { PlanPoint } from '../geometry/point.ts';
import { SAMPLE_PROFILE } from '../profile/sample-profile.ts';
import { usualBasis } from './basis-of-design.ts';
import type * as schema from './schema.ts';
import { PLAN_VERSION } from './schema.ts';

export type Plan = z.infer<typeof schema.planSchema>;
export type Info = z.infer<typeof schema.infoSchema>;
export type Revision = z.infer<typeof schema.revisionSchema>;
export type Settings = z.infer<typeof schema.settingsSchema>;
export type Level = z.infer<typeof schema.levelSchema>;
export type Underlay = z.infer<typeof schema.underlaySchema>;
export type KnownLength = z.infer<typeof schema.knownLengthSchema>;
export type Enclosure = z.infer<typeof schema.enclosureSchema>;
export type Corner = z.infer<typeof schema.cornerSchema>;
export type Wall = z.infer<typeof schema.wallSchema>;
export type Opening = z.infer<typeof schema.openingSchema>;
export type CeilingZone = z.infer<typeof schema.ceilingZoneSchema>;
export type Obstruction = z.infer<typeof schema.obstructionSchema>;
export type Device = z.infer<typeof schema.deviceSchema>;
export type DeviceKind = Device['kind'];
export type Adjoining = z.infer<typeof schema.adjoiningSchema>;
export type Shutdown = z.infer<typeof schema.shutdownSchema>;
export type VentStep = z.infer<typeof schema.ventStepSchema>;
export type Waiver = z.infer<typeof schema.waiverSchema>;
export type Issue = z.infer<typeof schema.issueSchema>;
export type IssuedSet = z.infer<typeof schema.issuedSetSchema>;
export type SheetSettings = z.infer<typeof schema.sheetsSchema>;
export type PlacedView = z.infer<typeof schema.placedViewSchema>;
export type SheetNote = z.infer<typeof schema.sheetNoteSchema>;
export type Measurement = z.infer<typeof schema.measurementSchema>;
export type LogEntry = z.infer<typeof schema.logEntrySchema>;
export type Visit = z.infer<typeof schema.visitSchema>;
export type Dimension = z.infer<typeof schema.dimensionSchema>;
export type Note = z.infer<typeof schema.noteSchema>;
export type Network = z.infer<typeof schema.networkSchema>;
export type Cylinder = z.infer<typeof schema.cylinderSchema>;
export type AssemblyPart = z.infer<typeof schema.assemblyPartSchema>;
export type PipeNode = z.infer<typeof schema.nodeSchema>;
export type Pipe = z.infer<typeof schema.pipeSchema>;
export type Nozzle = z.infer<typeof schema.nozzleSchema>;
export type Anchors = z.infer<typeof schema.anchorsSchema>;
export type Leakage = z.infer<typeof schema.leakageSchema>;
export type People = z.infer<typeof schema.peopleSchema>;
export type Support = z.infer<typeof schema.supportSchema>;
export type Release = z.infer<typeof schema.releaseSchema>;
export type ReleaseDevice = z.infer<typeof schema.releaseDeviceSchema>;
export type SiteRecord = z.infer<typeof schema.siteRecordSchema>;
export type SpaceKind = NonNullable<Nozzle['serves']>['space'];

type Named<K, Owner> = K extends string ? { readonly kind: K; readonly id: string } & Owner : never;

/** Names one thing of the plan: what it is, who owns it, its id. A wall has the id of the corner it starts from. */
export type Ref =
  | Named<'underlay' | 'enclosure' | 'obstruction' | 'device' | 'adjoining' | 'dimension' | 'note', { readonly level: string }>
  | Named<'corner' | 'wall' | 'opening' | 'ceiling-zone', { readonly level: string; readonly enclosure: string }>
  | Named<'network', unknown>
  | Named<'cylinder' | 'node' | 'pipe' | 'nozzle' | 'support', { readonly network: string }>;
export type RefKind = Ref['kind'];
export type RefOf<K extends RefKind> = Extract<Ref, { kind: K }>;

/** One string per thing, for keys and comparisons. */
export const refKey = (ref: Ref): string =>
  `${ref.kind}/${'level' in ref ? ref.level : ''}/${'enclosure' in ref ? ref.enclosure : ''}/${'network' in ref ? ref.network : ''}/${ref.id}`;

/** Whether two references name the same thing. */
export const isSameRef = (a: Ref, b: Ref): boolean => a === b || (a.id === b.id && a.kind === b.kind && refKey(a) === refKey(b));

/** Corner list of a ring as plain plan places. */
export const ringOf = (corners: readonly Corner[]): PlanPoint[] => corners.map(({ x, y }) => ({ x, y }));

/** A wall about which nothing is known yet. */
export const unknownWall = (): Wall => ({ construction: 'unknown', loadBearing: null, allowablePressure_Pa: null, capacity_N: null, reaches: 'unknown' });

/**
 * Takes the next id of a kind from a plan under change. Ids are never used twice, so that what was
 * printed with an id can never come to mean something else.
 * @example takeId(draft, 'pipe') // 'pipe-12', and the plan's next serial is 13
 */
export function takeId(draft: { nextSerial: number }, kind: string): string {
  const taken = `${kind}-${draft.nextSerial}`;
  draft.nextSerial += 1;
  return taken;
}

/** What a new enclosure says of its people, leaks and lowest protected place: nothing yet. */
export const unknownRoom = (): Pick<Enclosure, 'people' | 'leakage' | 'lowestProtected_m' | 'ceiling' | 'ambientSound_dBA' | 'dischargedWith' | 'shutdowns' | 'afterDischarge'> => ({
  people: { exposure: '5-min', egress_s: null, delay_s: null },
  leakage: { kind: 'unknown' },
  lowestProtected_m: null,
  ceiling: { make: 'unknown', clipped_m: null },
  ambientSound_dBA: null,
  dischargedWith: '',
  shutdowns: {},
  afterDischarge: { extract: 'unknown', extractFlow_m3_s: null, procedure: '', hasMeter: null },
});

/** Sheets that nobody has laid out: paper, scale and places as the program chooses. */
export const usualSheets = (): SheetSettings => ({ paper: null, scale: null, titleBlock: { logo: null, lines: [] }, hasStampBox: true, views: {}, notes: {}, dimensions: {} });

/** Nothing has come back from the site. Intervals of service: NFPA 2001 (memory); the unit's manual governs. */
export const emptySiteRecord = (): SiteRecord => ({
  measurements: {},
  checks: {},
  log: [],
  service: { pressure_months: 6, hose_months: 60, retest_months: 60, enclosure_months: 12, visits: [] },
});

/** Nothing stands on a level yet. */
export const emptyLevel = (id: string, name: string, floorElevation_m: number): Level => ({
  id,
  name,
  floorElevation_m,
  underlays: {},
  enclosures: {},
  obstructions: {},
  devices: {},
  adjoining: {},
  dimensions: {},
  notes: {},
});

/** What nobody has said yet of an obstruction. */
export const unknownThing = (): Pick<Obstruction, 'front_rad' | 'voltage_V' | 'hasLooseItems' | 'hasDrives'> => ({ front_rad: null, voltage_V: null, hasLooseItems: null, hasDrives: null });

/** What nobody has said yet of an opening. */
export const unknownOpening = (): Pick<Opening, 'freeArea_m2' | 'crossing' | 'undercut_m' | 'ventPath'> => ({ freeArea_m2: null, crossing: null, undercut_m: null, ventPath: [] });

/** What nobody has said yet of a releasing circuit. */
export const unknownCircuit = (): Pick<Release, 'endOfLine' | 'isActuatorWatched' | 'panel' | 'battery'> => ({
  endOfLine: 'unknown',
  isActuatorWatched: null,
  panel: { isListed: null, isCompatible: null, listing: '' },
  battery: null,
});

/** Grid of a plan that nobody chose another for [m]: 3 in or 100 mm. */
export const usualGrid_m = (lengths: Settings['lengths']): number => (lengths === 'feet' ? 0.0254 * 3 : 0.1);

/** An empty plan: one level, the sample profile, nothing drawn. */
export const newPlan = (lengths: Settings['lengths'] = 'feet'): Plan => ({
  format: 'nozzlewright-plan',
  version: PLAN_VERSION,
  info: {
    project: '',
    site: '',
    client: '',
    drawnBy: '',
    checkedBy: '',
    approvedBy: '',
    sheetPrefix: 'NW',
    code: '',
    edition: '',
    notes: '',
    state: 'design',
    revisions: [],
  },
  settings: { lengths, grid_m: usualGrid_m(lengths), siteTolerance_m: lengths === 'feet' ? 0.0127 : 0.01, sheets: usualSheets() },
  basis: usualBasis(),
  nextSerial: 1,
  assets: {},
  levels: { 'level-0': emptyLevel('level-0', 'Level 1', 0) },
  networks: {},
  profiles: { [SAMPLE_PROFILE.id]: SAMPLE_PROFILE },
  waivers: {},
  lastIssue: null,
  issuedSets: [],
  siteRecord: emptySiteRecord(),
});
