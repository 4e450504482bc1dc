import type { Contact, PipeContacts } from '../../derived/clash-contacts.ts';
import { clashPass } from '../../derived/clash-pass.ts';
import type { ClashPipe } from '../../derived/clash-pipe.ts';
import { type LevelRun, clearingShift_m, findLevelRun } from '../../derived/clear-run.ts';
import type { Derived, DerivedNetwork } from '../../derived/derived.ts';
import { remembered } from '../../derived/remember.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { inches_m } from '../../units/convert.ts';
import type { Cure } from '../finding.ts';
import { type CheckContext, atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { per } from '../subjects.ts';
import { clashPipeName, clashThingName } from './clash-thing-name.ts';

/** A pipe with one thing that it is too close to, or with the nearest one. */
interface Clash {
  readonly pipe: ClashPipe;
  readonly contact: Contact | undefined;
  readonly unknownCeiling: PipeContacts['unknownCeiling'];
  /** The level run that it is part of, where that can be brought to another height. */
  readonly run?: LevelRun;
}

/** The clearance that holds between a pipe and a thing: of two pipes the greater of those that are known. */
function wantedOf({ pipe, contact }: Clash): ReturnType<typeof limitOrBlank> {
  const own = limitOrBlank(pipe.profile, 'pipeClearance_m');
  if (contact?.thing.kind !== 'pipe') return own;
  const other = limitOrBlank(contact.thing.pipe.profile, 'pipeClearance_m');
  return other.limit && other.limit.value > (own.limit?.value ?? -Infinity) ? other : own;
}

const isFault = (clash: Clash): boolean =>
  clash.contact !== undefined && clash.contact.clearance_m - (wantedOf(clash).limit?.value ?? 0) < -LENGTH_SLACK_m;

/** A pipe with the subjects that it is asked about. */
interface AskedPipe {
  readonly near: PipeContacts;
  readonly asked: readonly { readonly subject: Clash; readonly ref: ClashPipe['ref']; readonly name: string }[];
  readonly isAtFault: boolean;
}

/** One subject for every thing that a pipe is too close to; for a pipe that keeps clear one, with what is nearest to it. */
const askedOfPipe = remembered((near: PipeContacts): AskedPipe => {
  const { pipe, contacts, unknownCeiling } = near;
  const clashes = contacts.map((contact): Clash => ({ pipe, contact, unknownCeiling })).filter(isFault);
  const all: readonly Clash[] = clashes.length > 0 ? clashes : [{ pipe, contact: contacts[0], unknownCeiling }];
  return { near, asked: all.map((subject) => ({ subject, ref: pipe.ref, name: clashPipeName(pipe) })), isAtFault: clashes.length > 0 };
});

/** The pipes of a network as they were last asked. */
interface AskedNetwork {
  readonly near: readonly PipeContacts[];
  readonly pipes: readonly AskedPipe[];
  readonly all: AskedPipe['asked'];
  /** Place of the first subject of each pipe among all. */
  readonly starts: readonly number[];
  readonly atFault: readonly AskedPipe[];
}

const lastOf = new Map<string, AskedNetwork>();

/** A network asked as it was before but for a few pipes with as many subjects as they had; undefined where more has changed. */
function patched(last: AskedNetwork, near: readonly PipeContacts[]): AskedNetwork | undefined {
  if (last.near.length !== near.length) return undefined;
  const [pipes, all] = [last.pipes.slice(), last.all.slice()];
  const touched: AskedPipe[] = [];
  for (let i = 0; i < near.length; i += 1) {
    const each = near[i];
    if (!each || last.near[i] === each) continue;
    const [old, now] = [pipes[i], askedOfPipe(each)];
    if (old?.asked.length !== now.asked.length) return undefined;
    pipes[i] = now;
    for (const [k, subject] of now.asked.entries()) all[(last.starts[i] ?? 0) + k] = subject;
    touched.push(old, now);
  }
  return { near, pipes, all, starts: last.starts, atFault: touched.some(({ isAtFault }) => isAtFault) ? pipes.filter(({ isAtFault }) => isAtFault) : last.atFault };
}

const askedOf = remembered((near: readonly PipeContacts[]): AskedNetwork => {
  const id = near[0]?.pipe.ref.network ?? '';
  const last = lastOf.get(id);
  const fresh = (pipes: readonly AskedPipe[]): AskedNetwork => {
    let next = 0;
    const starts = pipes.map(({ asked }) => {
      next += asked.length;
      return next - asked.length;
    });
    return { near, pipes, all: pipes.flatMap(({ asked }) => asked), starts, atFault: pipes.filter(({ isAtFault }) => isAtFault) };
  };
  const now = (last && patched(last, near)) ?? fresh(near.map((each) => askedOfPipe(each)));
  lastOf.set(id, now);
  return now;
});

/** So many pipes at fault are each looked at for a shift that clears them; a plan with more of them has other troubles. */
const MOST_CURED = 100;

/** A network with what its pipes are near to. */
interface Asking {
  readonly network: DerivedNetwork;
  readonly near: readonly PipeContacts[];
  /** Its clashes are told with the run that could be shifted. */
  readonly isCured: boolean;
}

const asking = remembered((near: readonly PipeContacts[], network: DerivedNetwork, isCured: boolean): Asking => ({ network, near, isCured }));
const byPipe = remembered((near: readonly PipeContacts[]): ReadonlyMap<ClashPipe, PipeContacts> => new Map(near.map((each) => [each.pipe, each])));

/** Every network; while few pipes of the plan are at fault, with word that theirs are to be cured. */
function everyNetwork(derived: Derived): readonly Asking[] {
  const pass = clashPass(derived);
  const faults = pass.map((near) => (near.length > 0 ? askedOf(near).atFault.length : 0));
  const isFew = faults.reduce((sum, each) => sum + each, 0) <= MOST_CURED;
  return derived.networks.flatMap((network, i) => {
    const near = pass[i] ?? [];
    return near.length > 0 ? [asking(near, network, isFew && (faults[i] ?? 0) > 0)] : [];
  });
}

/** Every subject of a network, those that are to be cured with the run that could be shifted. */
function subjectsOf({ network: { network }, near, isCured }: Asking): AskedPipe['asked'] {
  const { all, atFault } = askedOf(near);
  if (!isCured) return all;
  const runs = new Map(atFault.map(({ near: { pipe } }) => [pipe, findLevelRun(pipe, byPipe(near), network)]));
  return all.map((each) => {
    const run = runs.get(each.subject.pipe);
    return run ? { ...each, subject: { ...each.subject, run } } : each;
  });
}

/** Feet are shifted in eighths of an inch, metres in 5 mm. */
const STEP_m = { feet: inches_m(1 / 8), metric: 0.005 };

function cureOf({ pipe, contact, run }: Clash, { say, lengths }: Pick<CheckContext, 'say' | 'lengths'>): Cure {
  const by_m = run && contact ? clearingShift_m(run, contact, pipe, STEP_m[lengths]) : undefined;
  if (!run || by_m === undefined) return { kind: 'advice', text: 'Lead the pipe around it: no change of height up to 10 in clears it alone.' };
  return {
    kind: 'set-pipe-height',
    text: `${by_m > 0 ? 'Raise' : 'Lower'} the run by ${say.length(Math.abs(by_m))}`,
    pipes: run.level.map(({ pipe: { ref } }) => ({ network: ref.network, id: ref.id })),
    z_m: pipe.from.z + by_m,
  };
}

/**
 * P27: pipe keeps clear of beams, boxes and other solids, of the walls, floor and ceiling around it and of other pipe.
 * Measure: outside of the pipe, with its insulation, to the nearest solid in space [m]; negative when they run into each other.
 * Limit: clearance around pipe from the unit profile (common practice: 1 in); below 0 it is a stop.
 * One finding for each pipe and thing, for two pipes one with the first. Pipe may pass a suspended ceiling under a void
 * and a raised floor over one; pipes that meet at a node are no clash. Pipe that crosses a wall or slab from one side to
 * the other, square to it or up to 30° off, is P29's; pipe in a wall or slab, along it, slanting or ending in it is a clash.
 * Cure: the smallest change of height, up to 0.25 m, that takes the level run out of the clash and into no other.
 * Not checked: the limit is blank, or the height of the ceiling above the pipe is. A clash below 0 is reported even then.
 */
export const p27Clash = defineRule<Clash>({
  id: 'P27',
  title: 'Clash',
  severity: 'warn',
  measure: 'length',
  basis: { formula: 'outside of pipe with its insulation to nearest solid ≥ limit; below 0 they collide', source: 'common practice 1 in (25 mm)' },
  limitKeys: ['pipeClearance_m'],
  subjects: per(everyNetwork, ({ network }) => network.ref.id)(subjectsOf),
  check(clash, { say, lengths }) {
    const { pipe, contact, unknownCeiling } = clash;
    const wanted = wantedOf(clash);
    const at = [pipe.from, pipe.to];
    const place = { level: pipe.level, at, heights: at };
    const thing = contact ? clashThingName(contact.thing, pipe, say) : '';
    if (contact && contact.clearance_m < -LENGTH_SLACK_m) {
      return {
        kind: 'judged',
        isKept: false,
        severity: 'stop',
        measured: contact.clearance_m,
        limit: wanted.limit?.value ?? 0,
        limitSource: wanted.limit?.source ?? 'geometry',
        margin: contact.clearance_m - (wanted.limit?.value ?? 0),
        text: `Runs at least ${say.length(-contact.clearance_m)} into ${thing}. Shift it.`,
        place,
        cure: cureOf(clash, { say, lengths }),
      };
    }
    // A pipe that keeps clear of one thing by that thing's limit is still not checked against the rest without its own.
    const needed = isFault(clash) ? wanted : limitOrBlank(pipe.profile, 'pipeClearance_m');
    if (!needed.limit) return needed.blank;
    if (!wanted.limit) return wanted.blank;
    if (unknownCeiling && !isFault(clash)) return notChecked(`the height of the ceiling of ${unknownCeiling.enclosure.name} is not known.`, place);
    if (!contact) return { kind: 'judged', isKept: true, limit: wanted.limit.value, limitSource: wanted.limit.source, text: 'Keeps clear of everything drawn.', place };
    const figures = atLeast(contact.clearance_m, wanted.limit, LENGTH_SLACK_m);
    const { value: gap, limit: least } = say.against(contact.clearance_m, wanted.limit.value);
    return {
      ...figures,
      ...(figures.isKept ? {} : { cure: cureOf(clash, { say, lengths }) }),
      text: figures.isKept ? `Is ${gap} clear of ${thing}.` : `Is only ${gap} clear of ${thing}; ${least} is wanted. Shift it.`,
      place,
    };
  },
});
