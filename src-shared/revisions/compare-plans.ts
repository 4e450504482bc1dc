import type { Plan } from '../model/plan.ts';
import type { LengthSystem } from '../units/length-text.ts';
import { type Telling, fieldChanges, isSameWay, wayBetween } from './field-changes.ts';
import { type Wording, placeWords } from './field-words.ts';
import { CHANGE_KINDS, type Move, type PlanChange } from './plan-change.ts';
import { type PlanPart, planParts } from './plan-parts.ts';
import { ringChanges } from './ring-changes.ts';

type Parts = ReadonlyMap<string, PlanPart>;

/** Names of everything that other things refer to by id. */
function wordingOf(plan: Plan, parts: Parts, system: LengthSystem): Wording {
  const names = new Map<string, string>();
  for (const { id, name } of [...Object.values(plan.levels), ...Object.values(plan.profiles), ...Object.values(plan.assets)]) names.set(id, name);
  for (const { ref, name } of parts.values()) if (ref) names.set(ref.id, name);
  for (const { enclosures } of Object.values(plan.levels)) {
    for (const { outline, holes } of Object.values(enclosures)) for (const ring of [outline, ...holes]) for (const [i, { id }] of ring.entries()) names.set(id, `wall ${i + 1}`);
  }
  for (const { nodes } of Object.values(plan.networks)) for (const { id, at } of Object.values(nodes)) names.set(id, placeWords(at, system));
  return { system, nameOf: (id) => names.get(id) };
}

/** The one way that all places of a thing went; null when they stayed, or went different ways. */
function moveOf(before: PlanPart, now: PlanPart): Move | null {
  const [first, start] = [now.anchors[0], before.anchors[0]];
  if (!first || !start || now.anchors.length !== before.anchors.length) return null;
  const way = wayBetween(start, first);
  const ways = now.anchors.map((place, i) => wayBetween(before.anchors[i] ?? place, place));
  if (ways.every(({ east_m, north_m, up_m }) => east_m === 0 && north_m === 0 && up_m === 0)) return null;
  return ways.every((each) => isSameWay(each, way)) ? way : null;
}

/** An opening goes along its wall, or into another one. */
const isShifted = ({ ref, own }: PlanPart, before: object): boolean => {
  const [now, was] = [own as Readonly<Record<string, unknown>>, before as Readonly<Record<string, unknown>>];
  return ref?.kind === 'opening' && (now.along_m !== was.along_m || now.wall !== was.wall);
};

function changeOf(before: PlanPart, now: PlanPart, wordings: Pick<Telling, 'before' | 'now'>): PlanChange | undefined {
  const move = moveOf(before, now);
  const telling: Telling = { ...wordings, move };
  const fields = [...ringChanges(before.rings, now.rings, telling), ...fieldChanges('', '', before.own, now.own, telling)];
  // Places that went different ways and are no ring: the ends of a dimension.
  if (!move && now.rings.length === 0) fields.unshift(...now.anchors.flatMap((place, i) => fieldChanges(`End ${i + 1}`, 'at', before.anchors[i], place, telling)));
  if (!move && fields.length === 0) return undefined;
  return { key: now.key, kind: move || isShifted(now, before.own) ? 'moved' : 'changed', ref: now.ref, name: now.name, where: now.where, move, fields, before: before.shape, now: now.shape };
}

const alone = (part: PlanPart, kind: 'added' | 'removed'): PlanChange => ({
  key: part.key, kind, ref: part.ref, name: part.name, where: part.where, move: null, fields: [], before: kind === 'removed' ? part.shape : null, now: kind === 'added' ? part.shape : null,
});

/** Keys of pipe ends that are told by what hangs at them: a nozzle that moved with them, pipe that came or went with them. */
function toldByOthers(before: Plan, now: Plan): ReadonlySet<string> {
  const told = new Set<string>();
  const keyOf = (network: string, node: string): string => `node///${network}/${node}`;
  for (const id of new Set([...Object.keys(before.networks), ...Object.keys(now.networks)])) {
    const [was, is] = [before.networks[id], now.networks[id]];
    for (const [one, other] of [[was, is], [is, was]] as const) {
      for (const { id: pipe, from, to } of Object.values(one?.pipes ?? {})) {
        if (other?.pipes[pipe]) continue;
        for (const end of [from, to]) if (one?.nodes[end]?.part === null && !other?.nodes[end]) told.add(keyOf(id, end));
      }
      for (const { id: nozzle, node } of Object.values(one?.nozzles ?? {})) {
        const same = other?.nozzles[nozzle];
        const isGone = !same && one?.nodes[node]?.part === null && !other?.nodes[node];
        const isWithIt = same?.node === node && one?.nodes[node]?.part === other?.nodes[node]?.part;
        if (isGone || isWithIt) told.add(keyOf(id, node));
      }
    }
  }
  return told;
}

/**
 * Lists what differs between two states of a plan, thing by thing, in words with units. Only how the plan was issued
 * is left out: that is told by the log. Equal plans tell nothing, and nothing that differs is left untold.
 * @param lengths  how lengths are written
 * @returns added first, then moved, changed and removed, each in the order of the plan
 */
export function comparePlans(before: Plan, now: Plan, lengths: LengthSystem = now.settings.lengths): PlanChange[] {
  if (before === now) return [];
  const [was, is] = [planParts(before), planParts(now)];
  const wordings = { before: wordingOf(before, was, lengths), now: wordingOf(now, is, lengths) };
  const told = toldByOthers(before, now);
  const changes = [...new Set([...is.keys(), ...was.keys()])].flatMap((key): PlanChange[] => {
    if (told.has(key)) return [];
    const [old, fresh] = [was.get(key), is.get(key)];
    const change = old && fresh ? changeOf(old, fresh, wordings) : fresh ? alone(fresh, 'added') : old ? alone(old, 'removed') : undefined;
    return change ? [change] : [];
  });
  return CHANGE_KINDS.flatMap((kind) => changes.filter((change) => change.kind === kind));
}
