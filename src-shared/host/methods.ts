import type { Bytes, HostMethod, RequestOf, ValueOf } from './contract.ts';

const KB = 1024;
const MB = 1024 * KB;

/** What a transport must know of one method before it looks into a message. */
export interface MethodShape {
  /** Whether the request has a `bytes` field. */
  readonly bytesIn: boolean;
  /** Whether the value has a `bytes` field. */
  readonly bytesOut: boolean;
  /** Largest request that is read at all [bytes]. */
  readonly limit_bytes: number;
}

type ShapeOf<M extends HostMethod> = {
  readonly bytesIn: RequestOf<M> extends { bytes: Bytes } ? true : false;
  readonly bytesOut: ValueOf<M> extends { bytes: Bytes } ? true : false;
  readonly limit_bytes: number;
};

const words = { bytesIn: false, bytesOut: false, limit_bytes: 64 * KB } as const;
const wordsForBytes = { bytesIn: false, bytesOut: true, limit_bytes: 64 * KB } as const;
const plan = { bytesIn: false, bytesOut: false, limit_bytes: 128 * MB } as const;
const planForBytes = { bytesIn: false, bytesOut: true, limit_bytes: 128 * MB } as const;
const file = { bytesIn: true, bytesOut: false, limit_bytes: 512 * MB } as const;
const drawing = { bytesIn: true, bytesOut: false, limit_bytes: 256 * MB } as const;

/** Every method of the contract; a forgotten one, or bytes in an undeclared place, does not compile. */
export const HOST_METHODS: { readonly [M in HostMethod]: ShapeOf<M> } = {
  info: words,
  listPlans: words,
  forgetRecent: words,
  pickPlan: words,
  pickPlanPlace: words,
  openPlan: words,
  openPlanBytes: file,
  newPlan: words,
  savePlan: plan,
  packPlan: planForBytes,
  closePlan: words,
  keepRecovery: plan,
  dropRecovery: words,
  listRecoveries: words,
  openRecovery: words,
  importUnderlay: drawing,
  readUnderlay: words,
  underlayResult: wordsForBytes,
  printSheets: plan,
  printResult: wordsForBytes,
  readFieldRecord: drawing,
  keepIssue: plan,
  issueResult: words,
  readIssue: words,
  printIssue: plan,
  jobState: words,
  cancelJob: words,
  saveFile: file,
  openExternally: words,
  readPreferences: words,
  writePreferences: words,
};

/** Whether a name that came from outside is a method of the contract. */
export const isHostMethod = (name: string): name is HostMethod => Object.hasOwn(HOST_METHODS, name);
