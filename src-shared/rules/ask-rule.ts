import type { Design } from '../calculations/design/design.ts';
import type { Derived } from '../derived/derived.ts';
import { isAlike } from '../derived/remember.ts';
import { placesThatDiffer } from '../derived/places-that-differ.ts';
import { type Chunk, type Ground, type LookedAt, chunkOf, stillHolds } from './chunk.ts';
import type { Finding } from './finding.ts';
import type { Answer, Asked, CheckContext, CureFinder, RuleSpec } from './rule.ts';
import { RuleFindings } from './rule-findings.ts';
import type { SubjectsOf } from './subjects.ts';
import { wordingFor } from './wording.ts';

/** A finding whose cure is looked for when somebody reads it first. */
function withLateCure(finding: Finding, find: CureFinder): Finding {
  let cure: { readonly found: Finding['cure'] } | undefined;
  return {
    ...finding,
    get cure() {
      cure ??= { found: find() };
      return cure.found;
    },
  };
}

function findingOf<S>(spec: RuleSpec<S>, asked: Asked<S>, answer: Answer): Finding {
  const { cure } = answer;
  return typeof cure === 'function' ? withLateCure(written(spec, asked, answer, undefined), cure) : written(spec, asked, answer, cure);
}

// Written out field by field: most of what a step of a drag asks anew ends here.
function written<S>(spec: RuleSpec<S>, { ref, name }: Asked<S>, answer: Answer, cure: Finding['cure']): Finding {
  const { id: rule, title, basis } = spec;
  if (answer.kind === 'not-checked') return { rule, title, subject: ref, name, measure: spec.measure, basis, verdict: 'not-checked', text: `Not checked: ${answer.because}`, place: answer.place, cure };
  const { isKept, text, measured, limit, limitSource, margin, severity = spec.severity, measure = spec.measure, inputs, place } = answer;
  return { rule, title, subject: ref, name, measure, basis, text, measured, limit, limitSource, margin, inputs, place, cure, verdict: isKept ? 'ok' : severity };
}

/** Subjects that are put together anew from the same parts: a network with one of its nozzles, worked out. */
const SUBJECT_DEPTH = 4;

/** Asks about the subjects of one owner. What was found of a subject before stands while it and all else that the check looked at are the same. */
function askChunk<S>(spec: RuleSpec<S>, source: SubjectsOf<S>, owner: object, ground: Ground, derived: Derived, design: Design, last: Chunk | undefined): Chunk {
  const { basis, levels, lengths } = ground;
  const before = last && last.ground.basis === basis && last.ground.lengths === lengths ? last : undefined;
  const isLevelKept = before?.ground.levels === levels;
  let looked: LookedAt = 'nothing';
  const lookAround = <T>(at: T): T => {
    looked = 'more';
    return at;
  };
  const context: CheckContext = {
    basis,
    lengths,
    say: wordingFor(lengths),
    get levels() {
      if (looked === 'nothing') looked = 'levels';
      return levels;
    },
    get derived() {
      return lookAround(derived);
    },
    get design() {
      return lookAround(design);
    },
  };
  const asked = source.of(owner);
  const findings: Finding[] = [];
  const lookedAt: LookedAt[] = [];
  for (const [i, each] of asked.entries()) {
    const far = before?.lookedAt[i];
    const known = before?.findings[i];
    const isReusable = far === 'nothing' || (far === 'levels' && isLevelKept);
    const was = before?.asked[i];
    if (known && isReusable && (was === each || isAlike(was, each, SUBJECT_DEPTH))) {
      findings.push(known);
      lookedAt.push(far);
      continue;
    }
    looked = 'nothing';
    findings.push(findingOf(spec, each, spec.check(each.subject, context)));
    lookedAt.push(looked);
  }
  return chunkOf(owner, ground, asked, findings, lookedAt);
}

/** Finds the earlier chunk of an owner: at the same place in most plans, else by its key. */
function predecessors<S>(source: SubjectsOf<S>, before: readonly Chunk[]): (owner: object, i: number) => Chunk | undefined {
  let byKey: Map<string, Chunk> | undefined;
  return (owner, i) => {
    const there = before[i];
    const key = source.keyOf(owner);
    if (there && source.keyOf(there.owner) === key) return there;
    byKey ??= new Map(before.map((chunk) => [source.keyOf(chunk.owner), chunk]));
    return byKey.get(key);
  };
}

const NOWHERE: readonly number[] = [];

interface Compared {
  readonly owners: readonly object[];
  readonly before: readonly object[];
  readonly changed: readonly number[] | undefined;
}

/** What was told last: as many as there are kinds of lists. Kept by list, each would keep the one before it for ever. */
const compared: Compared[] = [];
const MOST_COMPARED = 16;

/** Which owners are others than before; several rules ask about the same lists. Undefined where some came or went. */
function changedOwners(owners: readonly object[], before: readonly object[]): readonly number[] | undefined {
  if (owners === before) return NOWHERE;
  const known = compared.find((each) => each.owners === owners && each.before === before);
  if (known) return known.changed;
  const changed = owners.length === before.length ? placesThatDiffer(owners, before) : undefined;
  compared.unshift({ owners, before, changed });
  compared.length = Math.min(compared.length, MOST_COMPARED);
  return changed;
}

/** The places of the owners that have changed, where nothing else can have made a chunk out of date; undefined: look at all. */
function placesToLook(before: RuleFindings, owners: readonly object[], { basis, lengths, levels }: Ground): readonly number[] | undefined {
  const { farthest, isStale, isMixed } = before;
  const isGroundKept = !isMixed && before.basis === basis && before.lengths === lengths && (farthest === 'nothing' || (farthest === 'levels' && before.levels === levels));
  if (isStale || !isGroundKept) return undefined;
  return changedOwners(owners, before.owners);
}

/**
 * Asks one rule about a plan, owner by owner.
 * @param before    what it found last: a chunk stands while its owner and all else that its checks looked at are the same
 * @param isTimeUp  once it says so, what has changed stays as it was and is marked stale; a later call goes on
 */
export function askRule<S>(spec: RuleSpec<S>, source: SubjectsOf<S>, derived: Derived, design: Design, before: RuleFindings | undefined, isTimeUp: () => boolean): RuleFindings {
  const { basis, levels, settings } = derived.plan;
  const ground: Ground = { basis, levels, lengths: settings.lengths };
  const owners = source.owners(derived, design);
  const last = before?.chunks ?? [];
  const touched = before && placesToLook(before, owners, ground);
  if (before && touched?.length === 0) return before.owners === owners ? before : new RuleFindings(last, owners, { found: before, changed: touched });
  let chunks: Chunk[] | undefined = last.length === owners.length ? undefined : [...last.slice(0, owners.length)];
  let find: ReturnType<typeof predecessors<S>> | undefined;
  for (let k = 0; k < (touched ?? owners).length; k += 1) {
    const i = touched?.[k] ?? k;
    const owner = owners[i];
    const there = last[i];
    if (!owner || (there && !there.isStale && stillHolds(there, owner, ground))) continue;
    find ??= predecessors(source, last);
    const known = find(owner, i);
    chunks ??= [...last];
    if (known && !known.isStale && stillHolds(known, owner, ground)) chunks[i] = known;
    else if (!isTimeUp()) chunks[i] = askChunk(spec, source, owner, ground, derived, design, known);
    else if (!known) chunks[i] = { ...chunkOf(owner, ground, [], [], []), isStale: true };
    else chunks[i] = known.isStale ? known : { ...known, isStale: true };
  }
  return before && !chunks ? before : new RuleFindings(chunks ?? [], owners, before && touched && { found: before, changed: touched });
}
