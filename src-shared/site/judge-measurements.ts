import { derivePlan } from '../derived/derive-plan.ts';
import { type FieldDimension, fieldDimensionsOf } from '../derived/field-dimensions.ts';
import type { Evaluation } from '../evaluate.ts';
import { LENGTH_SLACK_m } from '../geometry/tolerance.ts';
import { type Live, makeLive } from '../live.ts';
import { OF_SUPPORTS } from '../margins/stopping-rules.ts';
import { type Measurement, type Plan, refKey } from '../model/plan.ts';
import { type Finding, findingKey } from '../rules/finding.ts';
import { type AsBuiltPlan, asBuiltPlan } from './as-built-plan.ts';
import { answerWords } from './answer-words.ts';
import { knockOnOf } from './knock-on.ts';

/** What a measured dimension comes to. `supports`: nothing but supports no longer stand as they should; whoever builds adds or shifts them. */
export type SiteAnswer = 'fits' | 'inside' | 'supports' | 'breaks' | 'does-not-close' | 'not-measured';

/** How much less and more each dimension may come out, by its id, as the field sheet prints it [m, both ≥ 0]. */
export type PrintedTolerances = ReadonlyMap<string, readonly [minus_m: number, plus_m: number]>;

/** One dimension with what was measured of it, and the answer. */
export interface JudgedDimension {
  readonly dimension: FieldDimension;
  readonly measurement: Measurement | null;
  /** Measured less planned [m]; null: not measured. */
  readonly deviation_m: number | null;
  readonly answer: SiteAnswer;
  /** Checks that it breaks, alone or together with the others. */
  readonly breaks: readonly Finding[];
  /** Supports that no longer stand as they should. */
  readonly mend: readonly Finding[];
  /** It breaks something by itself, not only together with others. */
  readonly isAlone: boolean;
  /** Sentences about it: what could not be applied, what disagrees. */
  readonly remarks: readonly string[];
  /** The answer as it is read. */
  readonly words: string;
}

/** Everything that the measured dimensions of a plan come to. */
export interface SiteJudgement {
  readonly rows: readonly JudgedDimension[];
  readonly asBuilt: AsBuiltPlan;
  /** The plan as built with every sum, without discharges run anew. */
  readonly evaluation: Evaluation;
  /** Stops, warnings and checks that can no longer be made, that the plan as drawn does not have. */
  readonly broken: readonly Finding[];
  /** Supports to add or shift, all over the plan. */
  readonly mend: readonly Finding[];
  /** Those of them that no dimension breaks alone and that are about no measured thing. */
  readonly together: readonly Finding[];
  /** What the whole changes, each a sentence. */
  knockOn(): readonly string[];
  /** What one dimension changes by itself. */
  knockOnOf(id: string): readonly string[];
}

/** Checks of the papers themselves: that the plan differs from what was issued is no fault of a dimension. */
const OF_PAPERS: ReadonlySet<string> = new Set(['D2', 'D3', 'D7', 'D8', 'D9']);
const isOfSupport = ({ rule }: Finding): boolean => OF_SUPPORTS.has(rule);
/** A reading this near to the plan is the plan [m]: less than a tape shows. */
const AS_PLANNED_m = 0.0005;

type Measurements = Readonly<Record<string, Measurement>>;
const noDischarge = () => undefined;
const keysOf = ({ found }: Evaluation, verdict: Finding['verdict']): string[] => found.of(verdict).map(findingKey);

/** Tells which stops, warnings and lost checks a plan has that another has not. */
function newsSince(before: Evaluation): (now: Evaluation) => Finding[] {
  const stopped = new Set(keysOf(before, 'stop'));
  const warned = new Set([...stopped, ...keysOf(before, 'warn')]);
  const unchecked = new Set([...warned, ...keysOf(before, 'not-checked')]);
  const news = (now: Evaluation, verdict: Finding['verdict'], known: ReadonlySet<string>): Finding[] =>
    now.found.of(verdict).filter((finding) => !finding.waiver && !OF_PAPERS.has(finding.rule) && !known.has(findingKey(finding)));
  return (now) => [...news(now, 'stop', stopped), ...news(now, 'warn', warned), ...news(now, 'not-checked', unchecked)];
}

interface Alone {
  /** Supports to mend among them. */
  readonly news: readonly Finding[];
  knockOn(): readonly string[];
}

/** Judges measured dimensions, again and again; what is known of a dimension alone is kept while the plan as drawn stays. */
export interface SiteJudge {
  /**
   * A nozzle that is off fits only within what the field sheet prints for it: where that is not known, its deviation is to be recorded.
   * @param measurements  those of the plan's site record unless others are given
   * @param printed       as far as they were worked out
   */
  judge(plan: Plan, measurements?: Measurements, printed?: PrintedTolerances): SiteJudgement;
}

/** All of the plan that a dimension is judged by: not what was measured, nor how the sheets lie. */
const groundsOf = ({ levels, networks, profiles, basis, settings, waivers }: Plan): readonly unknown[] => [levels, networks, profiles, basis, settings.siteTolerance_m, settings.lengths, waivers];

/** What is known of the plan as drawn. */
class Grounds {
  readonly derived;
  readonly dimensions: readonly FieldDimension[];
  readonly #live: Live;
  #drawn: { readonly evaluation: Evaluation; readonly newsOf: (now: Evaluation) => Finding[] } | undefined;
  readonly #alone = new Map<string, Alone>();

  constructor(plan: Plan, live: Live) {
    this.#live = live;
    this.derived = derivePlan(plan);
    this.dimensions = fieldDimensionsOf(this.derived);
  }

  /** Checked once something is measured: in a large building that takes long. */
  get drawn() {
    if (!this.#drawn) {
      const evaluation = this.#live.check(this.derived.plan, noDischarge);
      this.#drawn = { evaluation, newsOf: newsSince(evaluation) };
    }
    return this.#drawn;
  }

  /** What one measured dimension breaks and changes by itself. */
  alone(id: string, measurement: Measurement): Alone {
    const key = `${id}=${measurement.value_m}`;
    const known = this.#alone.get(key);
    if (known) return known;
    const { plan } = asBuiltPlan(this.derived, { [id]: measurement }, this.dimensions);
    const { evaluation, newsOf } = this.drawn;
    const now = this.check(plan);
    let sentences: readonly string[] | undefined;
    const knockOn = () => {
      sentences ??= now === evaluation ? [] : knockOnOf(evaluation, now);
      return sentences;
    };
    const fresh: Alone = { news: newsOf(now), knockOn };
    this.#alone.set(key, fresh);
    return fresh;
  }

  check(plan: Plan): Evaluation {
    const { evaluation } = this.drawn;
    return plan === this.derived.plan ? evaluation : this.#live.check(plan, noDischarge);
  }
}

const NONE_PRINTED: PrintedTolerances = new Map();

interface Deviating {
  readonly dimension: FieldDimension;
  readonly deviation_m: number | null;
  readonly isOff: boolean;
}

/** Whether a deviation needs no word: within the tolerance of the site and, for a nozzle that is off, within what is printed for it. */
function isExact({ dimension: { id, kind }, deviation_m, isOff }: Deviating, tolerance_m: number, printed: PrintedTolerances): boolean {
  if (deviation_m === null || Math.abs(deviation_m) > tolerance_m + LENGTH_SLACK_m) return false;
  if (kind !== 'nozzle' || !isOff) return true;
  const [minus_m, plus_m] = printed.get(id) ?? [0, 0];
  return deviation_m >= -minus_m - LENGTH_SLACK_m && deviation_m <= plus_m + LENGTH_SLACK_m;
}

/** Things that are off in height and on the plan: what is printed for either holds with the other as drawn. */
function offBothWays(drafts: readonly Deviating[]): ReadonlySet<string> {
  const off = drafts.filter(({ isOff }) => isOff).map(({ dimension: { about, part } }) => ({ key: refKey(about), isHeight: part === 'height' || part === 'drop' }));
  const aside = new Set(off.filter(({ isHeight }) => !isHeight).map(({ key }) => key));
  return new Set(off.filter(({ isHeight, key }) => isHeight && aside.has(key)).map(({ key }) => key));
}

const subjectKey = ({ subject }: Finding): string => (subject.kind === 'plan' || subject.kind === 'profile' ? '' : refKey(subject));

/** Starts to judge measured dimensions. */
export function makeSiteJudge(): SiteJudge {
  const live = makeLive();
  let grounds: { readonly of: readonly unknown[]; readonly known: Grounds } | undefined;
  const groundsFor = (plan: Plan): Grounds => {
    const of = groundsOf(plan);
    if (!grounds?.of.every((part, i) => part === of[i])) grounds = { of, known: new Grounds(plan, live) };
    return grounds.known;
  };
  return {
    judge(plan, measurements = plan.siteRecord.measurements, printed = NONE_PRINTED) {
      const known = groundsFor(plan);
      const asBuilt = asBuiltPlan(known.derived, measurements, known.dimensions);
      const isAsDrawn = asBuilt.plan === known.derived.plan;
      const evaluation = isAsDrawn ? undefined : known.check(asBuilt.plan);
      const news = evaluation ? known.drawn.newsOf(evaluation) : [];
      const broken = news.filter((finding) => !isOfSupport(finding));
      const newKeys = new Set(news.map(findingKey));
      const tolerance_m = known.derived.plan.settings.siteTolerance_m;
      const explained = new Set<string>();
      const openRooms = new Set(asBuilt.closures.filter(({ answer }) => answer === 'does-not-close').map(({ room }) => refKey(room)));

      const drafts = known.dimensions.map((dimension) => {
        const measurement = (Object.hasOwn(measurements, dimension.id) ? measurements[dimension.id] : undefined) ?? null;
        const deviation_m = measurement && measurement.value_m - dimension.planned_m;
        const isOpen = (dimension.kind === 'wall' || dimension.kind === 'diagonal') && openRooms.has(refKey(dimension.about));
        const isOff = deviation_m !== null && Math.abs(deviation_m) > AS_PLANNED_m;
        // What another dimension puts right again is no fault.
        const own = measurement && isOff && !isOpen ? known.alone(dimension.id, measurement).news.filter((finding) => newKeys.has(findingKey(finding))) : [];
        for (const finding of own) explained.add(findingKey(finding));
        return { dimension, measurement, deviation_m, isOpen, isOff, alone: own.filter((finding) => !isOfSupport(finding)), mend: own.filter(isOfSupport) };
      });
      const rest = broken.filter((finding) => !explained.has(findingKey(finding)));
      const mixed = offBothWays(drafts);
      const measuredKeys = new Set(drafts.filter(({ isOff, isOpen }) => isOff && !isOpen).map(({ dimension }) => refKey(dimension.about)));
      const rows = drafts.map(({ dimension, measurement, deviation_m, isOpen, isOff, alone, mend }): JudgedDimension => {
        const shared = isOff && !isOpen ? rest.filter((finding) => subjectKey(finding) === refKey(dimension.about)) : [];
        const breaks = [...alone, ...shared];
        const answer = ((): SiteAnswer => {
          if (deviation_m === null) return 'not-measured';
          if (isOpen) return 'does-not-close';
          if (breaks.length > 0) return 'breaks';
          if (mend.length > 0) return 'supports';
          const ownTolerances = mixed.has(refKey(dimension.about)) ? NONE_PRINTED : printed;
          return isExact({ dimension, deviation_m, isOff }, tolerance_m, ownTolerances) ? 'fits' : 'inside';
        })();
        const remarks = asBuilt.remarks.filter(({ id }) => id === dimension.id).map(({ text }) => text);
        const judged = { dimension, measurement, deviation_m, answer, breaks, mend, isAlone: alone.length > 0, remarks };
        return { ...judged, words: answerWords(judged) };
      });
      let whole: readonly string[] | undefined;
      return {
        rows,
        asBuilt,
        get evaluation() {
          return evaluation ?? known.drawn.evaluation;
        },
        broken,
        mend: news.filter(isOfSupport),
        together: rest.filter((finding) => !measuredKeys.has(subjectKey(finding))),
        knockOn() {
          whole ??= evaluation ? knockOnOf(known.drawn.evaluation, evaluation) : [];
          return whole;
        },
        knockOnOf(id) {
          const measurement = Object.hasOwn(measurements, id) ? measurements[id] : undefined;
          return measurement ? known.alone(id, measurement).knockOn() : [];
        },
      };
    },
  };
}

/** Judges the measured dimensions of one plan. */
export const judgeMeasurements = (plan: Plan, measurements?: Measurements, printed?: PrintedTolerances): SiteJudgement => makeSiteJudge().judge(plan, measurements, printed);
