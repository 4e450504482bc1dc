import { expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { newDevice } from '#shared/model/new-device';
import { whereToMend } from '../../../src-renderer/panels/findings/where-to-mend.ts';
import { type LayoutSpec, at3, layout } from '../../support/layout.ts';

const nozzles = [{ at: at3(3, 2, 2.5) }];
const rack = { kind: 'rack', footprint: rectangle(0.5, 1, planPoint(5, 1.5)), bottom_m: 0, top_m: 2.4 } as const;
const leftOut = (exclusion: { reason: string; by: string; date: string } | null) => ({ depth_m: 0.4, isProtected: false, exclusion });

/** Where the first open finding of a rule leads. */
function leadsTo(rule: string, spec: LayoutSpec) {
  const { derived, findings } = evaluate(layout(spec));
  const finding = findings.find((each) => each.rule === rule && each.verdict !== 'ok');
  return finding && whereToMend(derived, finding).map((each) => (each.kind === 'tool' ? each.action : each.kind === 'limit' ? each.limit : each.label));
}

test.each<readonly [string, readonly string[], LayoutSpec]>([
  ['N1', ['nozzleToWall_m'], { nozzles, limits: { nozzleToWall_m: null } }],
  ['N3', ['Floor to ceiling'], { nozzles, height_m: null }],
  ['N8', ['Loose or light things on it'], { nozzles, obstructions: [rack], limits: { jetSpread_rad: 0.2 } }],
  ['N8', ['jetSpread_rad'], { nozzles, obstructions: [rack], limits: { jetSpread_rad: null } }],
  ['N12', ['nozzleSpacing_m'], { nozzles: [...nozzles, { at: at3(3, 3.5, 2.5) }], limits: { nozzleSpacing_m: null } }],
  ['N13', ['Floor to ceiling'], { nozzles, height_m: null, obstructions: [{ ...rack, kind: 'partition' }] }],
  ['N15', ['Height above floor'], { nozzles, level: { devices: { d1: newDevice('air-intake', 'd1', 'Intake', planPoint(5, 2)) } } }],
  ['N16', ['Why the under-floor void is left out'], { nozzles, underFloor: leftOut(null) }],
  ['N16', ['Signed by'], { nozzles, underFloor: leftOut({ reason: 'Empty', by: '', date: '' }) }],
  ['N16', ['On'], { nozzles, underFloor: leftOut({ reason: 'Empty', by: 'A. Reader', date: '' }) }],
  ['N17', ['Void above the ceiling'], { nozzles, enclosure: { ceiling: { make: 'tiles', clipped_m: 2 } } }],
  ['N18', ['voidDepth_m'], { nozzles: [{ at: at3(3, 2, -0.2) }], underFloor: { depth_m: 0.4, isProtected: true, exclusion: null }, limits: { voidDepth_m: null } }],
  ['N19', ['Highest voltage to earth'], { nozzles, obstructions: [{ ...rack, kind: 'live-part' }] }],
  ['N23', ['Ceiling'], { nozzles }],
  ['N23', ['Tiles clipped within'], { nozzles, enclosure: { ceiling: { make: 'tiles', clipped_m: 1 } } }],
  ['N24', ['Running disk drives in it'], { nozzles, obstructions: [rack] }],
  ['N24', ['soundPower_dB'], { nozzles, obstructions: [{ ...rack, hasDrives: true }], limits: { soundPower_dB: null } }],
  // A cure turns or moves it.
  ['N14', [], { room: rectangle(10, 6), nozzles, obstructions: [{ kind: 'beam', footprint: rectangle(0.3, 6, planPoint(5, 0)), bottom_m: 2.3, top_m: 2.7 }] }],
])('%s leads to %j', (rule, labels, spec) => expect(leadsTo(rule, spec)).toEqual(labels));
