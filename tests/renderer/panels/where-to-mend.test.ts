import { expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { findAction } from '../../../src-renderer/actions/actions.ts';
import { neededOfVent } from '../../../src-renderer/panels/bench/needed-vent.tsx';
import { whereToMend } from '../../../src-renderer/panels/findings/where-to-mend.ts';

const { plan: hut } = await buildDemo('F1');

type Room = Plan['levels'][string]['enclosures'][string];

/** Writes the same into several things. */
function setAll(things: readonly object[], part: object): void {
  for (const thing of things) Object.assign(thing, part);
}

/** A pipe that goes through a wall, in a hole of which little is said. */
function pierced(room: Room, network: Plan['networks'][string], crossing: Room['openings'][string]['crossing'] = null): void {
  const [from, to] = [room.outline[0], room.outline[1]];
  const [any] = Object.values(room.openings);
  const pipe = Object.values(network.pipes)[0];
  if (!from || !to || !any || !pipe) throw new Error('The hut has walls, openings and pipe.');
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  network.nodes.within = { id: 'within', part: null, at: { ...middle, y: middle.y + 0.5, z: 1 } };
  network.nodes.without = { id: 'without', part: 'cap', at: { ...middle, y: middle.y - 0.5, z: 1 } };
  network.pipes.piercing = { ...pipe, id: 'piercing', from: 'within', to: 'without' };
  room.openings.hole = { ...any, id: 'hole', kind: 'penetration', wall: from.id, along_m: Math.hypot(to.x - from.x, to.y - from.y) / 2, width_m: 0.1, bottom_m: 0.9, height_m: 0.2, swing: 'none', crossing };
}

/** The hut changed, and worked out. */
function worked(change: (room: Room, network: Plan['networks'][string]) => void) {
  const plan = structuredClone(hut);
  const [room] = Object.values(plan.levels['level-0']?.enclosures ?? {});
  const [network] = Object.values(plan.networks);
  if (room && network) change(room, network);
  return evaluate(plan);
}

/** Where the first open finding of a rule leads. */
function leadsTo(rule: string, change: Parameters<typeof worked>[0]) {
  const { derived, findings } = worked(change);
  const finding = findings.find((each) => each.rule === rule && each.verdict !== 'ok');
  return finding && whereToMend(derived, finding).map((field) => (field.kind === 'tool' ? field.action : field.kind === 'limit' ? field.limit : field.label));
}

test.each<readonly [string, readonly string[], Parameters<typeof worked>[0]]>([
  ['E9', ['All walls bear'], (room) => setAll(room.outline.map(({ wall }) => wall), { allowablePressure_Pa: null })],
  ['E8', ['add-vent'], (room) => Object.assign(room, { openings: {} })],
  ['E2', ['Design concentration'], (room) => Object.assign(room, { concentration_pct: null })],
  ['S2', ['Delay before discharge'], (room) => Object.assign(room, { concentration_pct: null, people: { ...room.people, delay_s: null } })],
  ['C2', ['Load-bearing'], (room) => setAll(room.outline.map(({ wall }) => wall), { loadBearing: null })],
  ['C3', ['Kind of anchor'], (_, network) => setAll(Object.values(network.cylinders), { anchors: null })],
  ['N20', ['Orifice of the unit'], (_, network) => setAll(Object.values(network.nozzles), { orificeArea_m2: null })],
  ['C1', ['Coldest'], (room, network) => setAll([room, ...Object.values(network.cylinders)], { temperature: null, storage: null })],
  ['C8', ['Gauge above floor'], (_, network) => setAll(Object.values(network.cylinders), { gauge: null })],
  ['C10', ['Sun, heat, water, vehicles, weather'], (_, network) => setAll(Object.values(network.cylinders), { exposedTo: null })],
  ['C13', ['Add a restraint'], (_, network) => setAll(Object.values(network.cylinders), { restraints_m: [] })],
  // The finding itself places them.
  ['P18', [], (_, network) => Object.assign(network, { supports: {} })],
  ['P19', ['Place supports by the table'], (_, network) => Object.assign(network, { supports: {} })],
  ['P26', ['Bonding to earth'], (_, network) => Object.assign(network.installation, { bonding: 'unknown' })],
  ['P34', ['Marking along the pipe'], (_, network) => Object.assign(network.installation, { finish: '' })],
  ['P29', ['Inside of the sleeve'], (room, network) => pierced(room, network)],
  ['P29', ['Fire rating of the wall'], (room, network) => pierced(room, network, { sleeve_m: 0.05, rating: '', seal: '' })],
  ['P29', ['Fire-stop system'], (room, network) => pierced(room, network, { sleeve_m: 0.05, rating: '1 h', seal: '' })],
  ['L1', ['Draw up the circuit'], (_, network) => Object.assign(network, { release: null })],
])('%s leads to %j', (rule, expected, change) => {
  expect(leadsTo(rule, change)).toEqual(expected);
});

test.each<readonly [Plan['basis']['seismic'], readonly string[]]>([
  ['unknown', ['Earthquake bracing']],
  ['required', ['Earthquake brace']],
])('P23 with bracing %s leads to %j', (seismic, labels) => {
  const plan = structuredClone(hut);
  plan.basis.seismic = seismic;
  const { derived, findings } = evaluate(plan);
  const finding = findings.find(({ rule }) => rule === 'P23');
  expect(finding && whereToMend(derived, finding)).toMatchObject(labels.map((label) => ({ label })));
});

test('what is kept leads nowhere', () => {
  const { derived, findings } = worked(() => {});
  for (const finding of findings.filter(({ verdict }) => verdict === 'ok')) expect(whereToMend(derived, finding)).toEqual([]);
});

test('a vent without an area is told the area that the sum asks for, rounded up', () => {
  const before = evaluate(hut);
  const [room] = before.design.enclosures;
  const needed_m2 = room?.vent.isKnown ? room.vent.sums.needed_m2 : Number.NaN;
  const blank = worked((each) => setAll(Object.values(each.openings), { freeArea_m2: null }));
  const vent = room?.vent.isKnown ? room.vent.sums.vents[0] : undefined;
  if (!vent) throw new Error('The hut has no vent.');
  const found = neededOfVent(blank, vent.ref);
  expect(found).toBeGreaterThanOrEqual(needed_m2);
  expect(found).toBeLessThan(needed_m2 + 1e-4);
});

test('changes since the last issue lead to issuing a new set, and to what has changed', () => {
  const plan = structuredClone(hut);
  plan.lastIssue = { mark: 'A', date: '', things: {}, changed: [] };
  const evaluation = evaluate(plan);
  const finding = evaluation.findings.find(({ rule, verdict }) => rule === 'D7' && verdict === 'warn');
  if (!finding) throw new Error('D7 found nothing.');
  expect(whereToMend(evaluation.derived, finding).map((field) => field.kind === 'tool' && findAction(field.action)?.id)).toEqual(['issue-set', 'compare-issues']);
});
