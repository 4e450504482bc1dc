import type { Demo } from './demo-plan.ts';
import { buildSignalHut } from './f1-signal-hut.ts';
import { buildArchiveAnnex } from './f2-archive-annex.ts';
import { buildFerryControl } from './f3-ferry-control.ts';

const BUILDERS = {
  F1: async () => buildSignalHut(),
  F2: async () => buildArchiveAnnex(false),
  F3: () => buildFerryControl(false),
  'F2-faults': async () => buildArchiveAnnex(true),
  'F3-faults': () => buildFerryControl(true),
} as const satisfies Record<string, () => Promise<Demo>>;

/** Name of one demo plan. */
export type DemoName = keyof typeof BUILDERS;
export const DEMO_NAMES = Object.keys(BUILDERS) as DemoName[];
export const isDemoName = (name: string): name is DemoName => Object.hasOwn(BUILDERS, name);

/** Builds a finished demo plan with its floor plan file; the same name gives the same bytes. */
export const buildDemo = (name: DemoName): Promise<Demo> => BUILDERS[name]();
