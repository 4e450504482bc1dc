import type { PipeContacts } from '../../derived/clash-contacts.ts';
import type { DerivedNetwork, Fitting } from '../../derived/derived.ts';
import { FITTING_WORDS } from '../../derived/fitting-words.ts';
import { remembered } from '../../derived/remember.ts';
import { type WrenchRoom, wrenchRoomsOf } from '../../derived/wrench-room.ts';
import { distance3_m } from '../../geometry/point.ts';
import { along3 } from '../../geometry/segment3.ts';
import { ANGLE_SLACK_rad } from '../../geometry/tolerance.ts';
import type { RefOf } from '../../model/plan.ts';
import { inches_m } from '../../units/convert.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { perNetworkAmongThings } from './among-things.ts';
import { clashThingName } from './clash-thing-name.ts';

const QUARTER_TURN = { value: Math.PI / 2, source: 'common practice' };
/** Where a union goes: this far from where the pipe begins, or in the middle of a shorter pipe [m]. */
const UNION_AT_m = inches_m(6);

/** A threaded joint of a fitting: an end of a pipe with what is near it. */
interface Joint {
  readonly near: PipeContacts;
  readonly end: 'from' | 'to';
}

type Asked =
  | { readonly kind: 'fitting'; readonly level: string; readonly joints: readonly Joint[] }
  | { readonly kind: 'last-joint'; readonly network: DerivedNetwork };

const asked = remembered((near: readonly PipeContacts[], { network, fittings, level }: DerivedNetwork) => {
  const byPipe = new Map(near.map((each) => [each.pipe.ref.id, each]));
  const taken = new Set<string>();
  const names = new Map<string, number>();
  return fittings.flatMap(({ node, kind, pipes }) => {
    if (taken.has(node)) return [];
    taken.add(node);
    const at = network.nodes[node]?.at;
    const joints = pipes.flatMap((id): Joint[] => {
      const found = byPipe.get(id);
      return found && found.pipe.pipe.joint === 'threaded' && at ? [{ near: found, end: found.pipe.from === at ? 'from' : 'to' }] : [];
    });
    if (joints.length === 0) return [];
    const plain = `${FITTING_WORDS[kind]} of ${network.name}`;
    const count = (names.get(plain) ?? 0) + 1;
    names.set(plain, count);
    const ref: RefOf<'node'> = { kind: 'node', network: network.id, id: node };
    return [{ subject: { kind: 'fitting', level: level.id, joints } satisfies Asked, ref, name: count === 1 ? plain : `${plain}, place ${count}` }];
  });
});

/** What comes first on the way from where the pipe begins. */
function firstFitting({ network, pipes, fittings }: DerivedNetwork): 'union' | 'none' | 'other' {
  let node = network.source;
  const seen = new Set<string>();
  const kindsAt = new Map<string, Fitting['kind'][]>();
  for (const fitting of fittings) {
    const others = kindsAt.get(fitting.node);
    if (others) others.push(fitting.kind);
    else kindsAt.set(fitting.node, [fitting.kind]);
  }
  while (node !== null) {
    const here: string = node;
    const kinds = kindsAt.get(here) ?? [];
    if (kinds.includes('union')) return 'union';
    if (kinds.some((kind) => kind !== 'coupling' && kind !== 'reducer' && kind !== 'joint')) return 'other';
    const next = pipes.find(({ pipe }) => !seen.has(pipe.id) && (pipe.from === here || pipe.to === here));
    if (!next) return 'none';
    seen.add(next.pipe.id);
    node = next.pipe.from === here ? next.pipe.to : next.pipe.from;
  }
  return 'none';
}

/**
 * P28: around each threaded joint there is room to swing a wrench, and the last joint to the cylinders can be made up.
 * Measure: the widest free range of directions around the pipe for a wrench with a handle of 6 in by 1 in, set on the
 * pipe 2 in from the fitting; of all joints of a fitting the least [rad]. Limit: a quarter turn, common practice.
 * In the way are solids, walls, slabs above and below, and other pipe; a suspended ceiling and a raised floor are opened.
 * Where the pipe begins there is a hose in the discharge assembly, whose nuts turn, or a union before the first fitting.
 * Not checked: the parts of the discharge assembly are not entered.
 */
export const p28WrenchRoom = defineRule<Asked>({
  id: 'P28',
  title: 'Wrench room and last joint',
  severity: 'warn',
  measure: 'angle',
  basis: {
    formula: 'free swing of a wrench of 6 in (150 mm) around each threaded joint ≥ a quarter turn; a hose or union at the last joint',
    source: 'common practice',
  },
  subjects: perNetworkAmongThings<Asked>((network, near) => {
    const isThreaded = network.pipes.some(({ pipe }) => pipe.joint === 'threaded' && (pipe.from === network.network.source || pipe.to === network.network.source));
    const last = isThreaded ? [{ subject: { kind: 'last-joint', network } satisfies Asked, ref: network.ref, name: network.network.name }] : [];
    return [...asked(near, network), ...last];
  }),
  check(subject, { say }) {
    if (subject.kind === 'last-joint') {
      const { network } = subject;
      const { assembly, source } = network.network;
      const first = firstFitting(network);
      const at = network.network.nodes[source ?? '']?.at;
      const place = at && { level: network.level.id, at: [at], heights: [at] };
      if (assembly.some(({ kind }) => kind === 'hose')) return { kind: 'judged', isKept: true, text: 'A hose lets the last joint to the cylinders be made up.', place };
      if (first === 'union') return { kind: 'judged', isKept: true, text: 'A union lets the last joint to the cylinders be made up.', place };
      if (first === 'none') return { kind: 'judged', isKept: true, text: 'The pipe has no fitting and is turned into the last joint itself.', place };
      if (assembly.length === 0) return notChecked('the parts of the discharge assembly are not entered, so it is not known whether a hose lets the last joint be made up.', place);
      const pipe = network.pipes.find((each) => each.pipe.from === source || each.pipe.to === source);
      const text = 'Nothing lets the last joint to the cylinders be made up: the discharge assembly has no hose, and no union comes before the first fitting. Put a union in.';
      if (!pipe || !at) return { kind: 'judged', isKept: false, text, place };
      const far = pipe.from === at ? pipe.to : pipe.from;
      const length_m = distance3_m(at, far);
      const union = along3({ a: at, b: far }, Math.min(UNION_AT_m, length_m / 2) / length_m);
      return { kind: 'judged', isKept: false, text, place, cure: { kind: 'insert-part', text: 'Put a union in', pipe: { network: network.network.id, id: pipe.pipe.id }, at: union, part: 'union' } };
    }
    const rooms = subject.joints.map(({ near, end }): WrenchRoom & { near: PipeContacts } => ({ ...wrenchRoomsOf(near)[end], near }));
    const worst = rooms.reduce((least, each) => (each.free_rad < least.free_rad ? each : least));
    const place = { level: subject.level, at: [worst.at], heights: [worst.at] };
    const figures = atLeast(worst.free_rad, QUARTER_TURN, ANGLE_SLACK_rad);
    if (figures.isKept) return { ...figures, text: `A wrench can be swung over ${say.angle(worst.free_rad)}.`, place };
    const [thing, other] = worst.inTheWay.map((each) => clashThingName(each, worst.near.pipe, say));
    const what = [thing, other].filter((each) => each !== undefined).join(' and ');
    return {
      ...figures,
      text: `A wrench has room over only ${say.angle(worst.free_rad)} here, a quarter turn is wanted: ${what} ${other === undefined ? 'is' : 'are'} in its way. Shift the pipe, or join it on the floor and lift it up.`,
      place,
      cure: { kind: 'advice', text: `Shift the fitting until 6 in are free around it, away from ${thing ?? 'what is near'}.` },
    };
  },
});
