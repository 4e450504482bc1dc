import type { Command } from '../commands/command.ts';
import { derivePlan } from '../derived/derive-plan.ts';
import type { Derived } from '../derived/derived.ts';
import type { FieldDimension } from '../derived/field-dimensions.ts';
import type { Measurement, Plan, Ref } from '../model/plan.ts';
import { refKey } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { type DatumFrame, datumFrames, sameFrame } from './datum-frame.ts';

/**
 * Something that a measured dimension could not do, or does besides. `not-applied`: the plan stays as drawn there.
 * `disagrees`: two measured dimensions say two things. `follows`: moved along though nobody measured it. `unknown`: no such dimension.
 */
export interface AsBuiltRemark {
  readonly kind: 'not-applied' | 'disagrees' | 'follows' | 'not-level' | 'unknown';
  /** Of the dimension. */
  readonly id: string;
  readonly text: string;
}

/** The dimensions of one thing that were measured, by part. */
export interface MeasuredThing {
  readonly about: Ref;
  readonly parts: ReadonlyMap<string, { readonly dimension: FieldDimension; readonly value_m: number }>;
}

/** A plan on its way from as drawn to as built. */
export class Building {
  plan: Plan;
  readonly remarks: AsBuiltRemark[] = [];
  readonly tolerance_m: number;
  readonly #frameOf: (about: Ref) => DatumFrame | undefined;
  readonly #lengths: Plan['settings']['lengths'];

  constructor(drawn: Derived) {
    this.plan = drawn.plan;
    this.tolerance_m = drawn.plan.settings.siteTolerance_m;
    this.#lengths = drawn.plan.settings.lengths;
    this.#frameOf = datumFrames(drawn);
  }

  get derived(): Derived {
    return derivePlan(this.plan);
  }

  /** The datum faces of a thing, where they stand now. */
  frameOf(about: Ref): DatumFrame | undefined {
    const frame = this.#frameOf(about);
    return frame && sameFrame(frame, this.derived);
  }

  length(length_m: number): string {
    return formatLength(length_m, this.#lengths);
  }

  /** Does the first of some commands that is not refused; answers the last reason otherwise. */
  try(...commands: readonly Command[]): string | undefined {
    let reason: string | undefined;
    for (const command of commands) {
      const outcome = command(this.plan);
      if (outcome.ok) {
        this.plan = outcome.next;
        return undefined;
      }
      reason = outcome.reason;
    }
    return reason;
  }

  remark(kind: AsBuiltRemark['kind'], { id }: { readonly id: string }, text: string): void {
    this.remarks.push({ kind, id, text });
  }

  /** Remarks that nothing of a thing's measured dimensions was done. */
  notApplied({ parts }: MeasuredThing, because: string): void {
    for (const { dimension } of parts.values()) this.remark('not-applied', dimension, `${dimension.name} could not be taken into the plan: ${because}`);
  }
}

/** The measured dimensions of some kinds, thing by thing in the order of the list. */
export function measuredThings(dimensions: readonly FieldDimension[], measurements: Readonly<Record<string, Measurement>>, kind: FieldDimension['kind']): MeasuredThing[] {
  const things = new Map<string, { about: Ref; parts: Map<string, { dimension: FieldDimension; value_m: number }> }>();
  for (const dimension of dimensions) {
    const value_m = dimension.kind === kind && Object.hasOwn(measurements, dimension.id) ? measurements[dimension.id]?.value_m : undefined;
    if (value_m === undefined) continue;
    const key = refKey(dimension.about);
    const thing = things.get(key) ?? { about: dimension.about, parts: new Map() };
    thing.parts.set(dimension.part, { dimension, value_m });
    things.set(key, thing);
  }
  return [...things.values()];
}
