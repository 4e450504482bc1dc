import type { Contact, PipeContacts } from '../../derived/clash-contacts.ts';
import { clashPass } from '../../derived/clash-pass.ts';
import type { ClashPipe } from '../../derived/clash-pipe.ts';
import { type LevelRun, clearingShift_m, findLevelRun } from '../../derived/clear-run.ts';
import type { Derived, DerivedNetwork } from '../../derived/derived.ts';
import { placeByPlace } from '../../derived/place-by-place.ts';
import { remembered, sameList } from '../../derived/remember.ts';
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

/** So many pipes are asked together, so that in a large network few are asked anew. */
const BLOCK = 64;

/** Some pipes of a network, one after the other, as they were last asked. */
interface AskedBlock {
  readonly near: readonly PipeContacts[];
  readonly all: AskedPipe['asked'];
  readonly atFault: readonly AskedPipe[];
}

function blockOf(near: readonly PipeContacts[]): AskedBlock {
  const pipes = near.map((each) => askedOfPipe(each));
  return { near, all: pipes.flatMap(({ asked }) => asked), atFault: pipes.filter(({ isAtFault }) => isAtFault) };
}

/** A network as it was last asked. */
interface AskedNetwork {
  readonly blocks: readonly AskedBlock[];
  readonly atFault: number;
}

const lastOf = new Map<string, AskedNetwork>();

const isBlockKept = ({ near: before }: AskedBlock, near: readonly PipeContacts[], from: number): boolean => {
  if (before.length !== Math.min(BLOCK, near.length - from)) return false;
  for (let i = 0; i < before.length; i += 1) if (before[i] !== near[from + i]) return false;
  return true;
};

const askedOf = remembered((near: readonly PipeContacts[]): AskedNetwork => {
  const id = near[0]?.pipe.ref.network ?? '';
  const last = lastOf.get(id);
  const blocks: AskedBlock[] = [];
  for (let from = 0; from < near.length; from += BLOCK) {
    const before = last?.blocks[blocks.length];
    blocks.push(before && isBlockKept(before, near, from) ? before : blockOf(near.slice(from, from + BLOCK)));
  }
  const now = { blocks, atFault: blocks.reduce((sum, { atFault }) => sum + atFault.length, 0) };
  lastOf.set(id, now);
  return now;
});

/** So many pipes at fault are each looked at for a shift that clears them; a plan with more of them has other troubles. */
const MOST_CURED = 100;

/** Some pipes of a network, and, where clashes of theirs are told with the run that could be shifted, all that it follows from. */
interface Asking {
  readonly block: AskedBlock;
  readonly key: string;
  readonly cured: { readonly network: DerivedNetwork; readonly near: readonly PipeContacts[] } | undefined;
}

const keyOf = (near: readonly PipeContacts[], i: number): string => `${near[0]?.pipe.ref.network ?? ''}/${i}`;
const uncured = remembered((block: AskedBlock, key: string): Asking => ({ block, key, cured: undefined }));
const cured = remembered((block: AskedBlock, key: string, network: DerivedNetwork, near: readonly PipeContacts[]): Asking => ({ block, key, cured: { network, near } }));
const NOBODY: AskedNetwork = { blocks: [], atFault: 0 };
const NOT_ASKED: readonly Asking[] = [];
const byPipe = remembered((near: readonly PipeContacts[]): ReadonlyMap<ClashPipe, PipeContacts> => new Map(near.map((each) => [each.pipe, each])));

const asUncured = remembered((near: readonly PipeContacts[]): readonly Asking[] => askedOf(near).blocks.map((block, i) => uncured(block, keyOf(near, i))));
const asCured = remembered((network: DerivedNetwork, near: readonly PipeContacts[]): readonly Asking[] =>
  askedOf(near).blocks.map((block, i) => (block.atFault.length > 0 ? cured(block, keyOf(near, i), network, near) : uncured(block, keyOf(near, i)))),
);

const askedEach = placeByPlace((near: readonly PipeContacts[]): AskedNetwork => (near.length > 0 ? askedOf(near) : NOBODY));
const uncuredEach = placeByPlace((near: readonly PipeContacts[]): readonly Asking[] => (near.length > 0 ? asUncured(near) : NOT_ASKED));
const inOneList = remembered((each: readonly (readonly Asking[])[]): readonly Asking[] => {
  const all: Asking[] = [];
  for (const some of each) for (const asking of some) all.push(asking);
  return all;
});
let lastEach: readonly (readonly Asking[])[] = [];

/** Every pipe, block by block; while few pipes of the plan are at fault, with word that theirs are to be cured. */
function everyBlock(derived: Derived): readonly Asking[] {
  const pass = clashPass(derived);
  const asked = askedEach(pass, derived.levels);
  const blocks = uncuredEach(pass, derived.levels);
  let faults = 0;
  for (const { atFault } of asked) faults += atFault;
  if (faults === 0 || faults > MOST_CURED) return inOneList(blocks);
  lastEach = sameList(
    lastEach,
    blocks.map((each, i) => {
      const [network, near] = [derived.networks[i], pass[i]];
      return (asked[i]?.atFault ?? 0) > 0 && network && near ? asCured(network, near) : each;
    }),
  );
  return inOneList(lastEach);
}

/** Every subject of a block, those that are to be cured with the run that could be shifted. */
function subjectsOf({ block: { all, atFault }, cured: by }: Asking): AskedPipe['asked'] {
  if (!by) return all;
  const runs = new Map(atFault.map(({ near: { pipe } }) => [pipe, findLevelRun(pipe, byPipe(by.near), by.network.network)]));
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
  subjects: per(everyBlock, ({ key }) => key)(subjectsOf),
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
