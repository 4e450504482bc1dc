import type { Plan, Ref } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';
import { matchScore } from './search-actions.ts';

/** Scattered letters are too weak an answer for a name. */
const LEAST_SCORE = 40;
const MOST = 12;

/** A thing of the plan that goes by a name. */
export interface NamedThing {
  readonly ref: Ref;
  readonly name: string;
  /** Level that it is on, where the plan has several. */
  readonly where: string;
}

function* named(plan: Plan): Generator<readonly [ref: Ref, level: string]> {
  for (const level of Object.values(plan.levels)) {
    const on = { level: level.id };
    for (const enclosure of Object.values(level.enclosures)) {
      yield [{ kind: 'enclosure', ...on, id: enclosure.id }, level.name];
      for (const id of Object.keys(enclosure.openings)) yield [{ kind: 'opening', ...on, enclosure: enclosure.id, id }, level.name];
    }
    for (const id of Object.keys(level.devices)) yield [{ kind: 'device', ...on, id }, level.name];
    for (const id of Object.keys(level.adjoining)) yield [{ kind: 'adjoining', ...on, id }, level.name];
    for (const id of Object.keys(level.obstructions)) yield [{ kind: 'obstruction', ...on, id }, level.name];
  }
  for (const network of Object.values(plan.networks)) {
    const level = plan.levels[network.level]?.name ?? '';
    yield [{ kind: 'network', id: network.id }, level];
    for (const id of Object.keys(network.cylinders)) yield [{ kind: 'cylinder', network: network.id, id }, level];
    for (const id of Object.keys(network.nozzles)) yield [{ kind: 'nozzle', network: network.id, id }, level];
  }
}

/** Things of the plan whose name answers what was typed, best first; nothing for fewer than two letters. */
export function findThings(plan: Plan, typed: string): NamedThing[] {
  if (typed.trim().length < 2) return [];
  const isTall = Object.keys(plan.levels).length > 1;
  return [...named(plan)]
    .map(([ref, level], order) => ({ ref, name: thingName(plan, ref), where: isTall ? level : '', order }))
    .map((thing) => ({ ...thing, score: matchScore(typed, thing.name) }))
    .filter(({ score }) => score >= LEAST_SCORE)
    .sort((a, b) => b.score - a.score || a.order - b.order)
    .slice(0, MOST)
    .map(({ ref, name, where }) => ({ ref, name, where }));
}
