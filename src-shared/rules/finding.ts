import type { Outline } from '../geometry/outline.ts';
import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import { digestOf } from '../model/digest.ts';
import type { PipeNode, Ref, RefOf, Shutdown, Support, Waiver } from '../model/plan.ts';
import type { LimitKind } from '../profile/limit-catalogue.ts';

/** stop: must be cured; warn: needs a decision; note: to be known; not-checked: data is missing; ok: kept. */
export type Verdict = 'stop' | 'warn' | 'note' | 'not-checked' | 'ok';

/** Verdicts, gravest first: the order of every list of findings. */
export const VERDICTS: readonly Verdict[] = ['stop', 'warn', 'not-checked', 'note', 'ok'];

/** What a figure of a finding measures; `ratio` and `text` have no unit. */
export type MeasureKind = LimitKind | 'charge' | 'ratio' | 'gaugePressure' | 'pressureDifference' | 'force' | 'orificeArea';

/** Why a check is as it is: printed with every finding. */
export interface Basis {
  /** What is compared with what, in words or as a formula. */
  readonly formula: string;
  /** Standard and clause, "common practice", or the source noted in the unit profile. */
  readonly source: string;
  readonly caution?: string;
}

/** Lines and places that show a finding on the plan. */
export interface Place {
  readonly level: string;
  /** What to zoom to; never empty. */
  readonly at: readonly PlanPoint[];
  /** Measuring line from the subject to what governs. */
  readonly dimension?: { readonly a: PlanPoint; readonly b: PlanPoint };
  /** Jets and sight lines. */
  readonly rays?: readonly { readonly from: PlanPoint; readonly to: PlanPoint }[];
  /** Areas, each a closed ring with its holes as further rings. */
  readonly areas?: readonly (readonly Outline[])[];
  /** Heights to show in the section strip. */
  readonly heights?: readonly PlanPoint3[];
}

/** The smallest change that clears a finding, as data; a command carries it out. */
export type Cure =
  | { readonly kind: 'move-nozzle'; readonly text: string; readonly nozzle: { network: string; id: string }; readonly to: PlanPoint3 }
  | { readonly kind: 'turn-nozzle'; readonly text: string; readonly nozzle: { network: string; id: string }; readonly rotation_rad: number }
  | { readonly kind: 'level-nozzle'; readonly text: string; readonly nozzle: { network: string; id: string } }
  /** Puts these supports in place of all that a network has. */
  | { readonly kind: 'place-supports'; readonly text: string; readonly network: string; readonly places: readonly { readonly at: PlanPoint3; readonly kind: Support['kind']; readonly capacity_N: number | null }[] }
  | { readonly kind: 'add-supports'; readonly text: string; readonly network: string; readonly places: readonly PlanPoint3[] }
  | { readonly kind: 'make-rigid'; readonly text: string; readonly network: string; readonly supports: readonly string[] }
  /** Says anew what is built in at these nodes. */
  | { readonly kind: 'set-parts'; readonly text: string; readonly network: string; readonly nodes: readonly string[]; readonly part: PipeNode['part'] }
  | { readonly kind: 'add-dirt-trap'; readonly text: string; readonly network: string; readonly node: string }
  /** Hangs a drain under each of these turns, and closes each of these ends with one. */
  | { readonly kind: 'add-drains'; readonly text: string; readonly network: string; readonly turns: readonly string[]; readonly ends: readonly string[] }
  /** Draws a hole in a wall where a pipe goes through; who builds the wall says its rating and seal. */
  | { readonly kind: 'add-penetration'; readonly text: string; readonly wall: RefOf<'wall'>; readonly along_m: number; readonly middle_m: number; readonly sleeve_m: number }
  | { readonly kind: 'set-sleeve'; readonly text: string; readonly opening: RefOf<'opening'>; readonly sleeve_m: number }
  /** Puts a place where pipes meet elsewhere, alone. */
  | { readonly kind: 'move-node'; readonly text: string; readonly node: { network: string; id: string }; readonly to: PlanPoint3 }
  /** Brings runs of pipe to a height; risers and drops at them become longer or shorter. */
  | { readonly kind: 'set-pipe-height'; readonly text: string; readonly pipes: readonly { readonly network: string; readonly id: string }[]; readonly z_m: number }
  /** Builds a union into a pipe. */
  | { readonly kind: 'insert-part'; readonly text: string; readonly pipe: { readonly network: string; readonly id: string }; readonly at: PlanPoint3; readonly part: 'union' }
  /** Adds rows to the release matrix of an enclosure. */
  | { readonly kind: 'add-shutdowns'; readonly text: string; readonly enclosure: RefOf<'enclosure'>; readonly rows: readonly Omit<Shutdown, 'id'>[] }
  | { readonly kind: 'advice'; readonly text: string };

/** One figure or fact that a finding rests on, in the plan's units. */
export interface FindingInput {
  readonly label: string;
  readonly value: string;
  readonly source?: string;
}

/** A rule's answer about one subject. */
export interface Finding {
  /** Catalogue id, e.g. "N1". */
  readonly rule: string;
  /** Rule's plain name, e.g. "Wall clearance". */
  readonly title: string;
  readonly verdict: Verdict;
  /** The thing it is about. */
  readonly subject: Ref | { readonly kind: 'plan'; readonly id: 'plan' } | { readonly kind: 'profile'; readonly id: string };
  /** Its name as the user knows it, e.g. "N2". */
  readonly name: string;
  /** One sentence for the user, in the plan's length units. */
  readonly text: string;
  readonly measure: MeasureKind;
  /** Measured value in base SI of `measure`; undefined when there is none. */
  readonly measured?: number;
  /** Limit in the same unit. */
  readonly limit?: number;
  readonly limitSource?: string;
  /** Signed distance to the limit, positive when kept, same unit. */
  readonly margin?: number;
  readonly basis: Basis;
  /** What went into it besides the measured value and its limit, each as it is printed. */
  readonly inputs?: readonly FindingInput[];
  readonly place?: Place;
  readonly cure?: Cure;
  /** Somebody accepts it as it is. */
  readonly waiver?: Pick<Waiver, 'id' | 'reason' | 'by' | 'date'>;
}

/**
 * Same rule, same thing: keeps a list stable while figures change. The name is part of it, for the room and the
 * voids of one enclosure are asked one by one.
 */
export const findingKey = ({ rule, subject, name }: Finding): string =>
  `${rule}/${'network' in subject ? subject.network : ''}/${subject.kind}/${subject.id}/${name}`;

/** Places are told apart from this distance on [m]: a tenth of a millimetre. */
const SAME_PLACE_m = 1e-4;
/** Figures are told apart in this many digits: the last ones of a sum differ from machine to machine. */
const FIGURE_DIGITS = 6;

const figureText = (figure: number | undefined): string => (figure === undefined ? '' : String(Number(figure.toPrecision(FIGURE_DIGITS))));
/** Adding 0 makes a 0 of what is 0 from below. */
const placeText = (...coordinates: readonly number[]): string => coordinates.map((each) => Math.round(each / SAME_PLACE_m) + 0).join(',');

/** A length as it stands in a sentence, in feet and inches or metric. */
const LENGTH_WORDS = /\d[\d\s./'-]*"|\d+'|\d[\d.,]*\s?(?:mm|cm|m)\b/g;
/** Any figure with the word after it, which may be its unit. */
const FIGURE_WORDS = /\d\S*(?:\s\S+)?/g;

/** What a sentence says whatever the units are: while data is missing no figure of it is judged, and its place stands for lengths. */
const unitlessText = ({ verdict, text, place }: Finding): string => (verdict === 'not-checked' ? text.replace(LENGTH_WORDS, '').replace(FIGURE_WORDS, '') : place ? text.replace(LENGTH_WORDS, '') : text);

/**
 * Digest of what a finding rests on: verdict, measured value, limit with its source, and place. Its sentence counts
 * only where it has no figures, so that another way of showing lengths changes nothing.
 */
export function restsOn(finding: Finding): string {
  const { verdict, measured, limit, limitSource, place } = finding;
  const hasFigures = measured !== undefined || limit !== undefined;
  const places = [
    ...(place?.at ?? []).map(({ x, y }) => placeText(x, y)),
    ...(place?.dimension ? [place.dimension.a, place.dimension.b] : []).map(({ x, y }) => placeText(x, y)),
    ...(place?.heights ?? []).map(({ x, y, z }) => placeText(x, y, z)),
  ];
  return digestOf([verdict, figureText(measured), figureText(limit), limitSource ?? '', place?.level ?? '', places.join(';'), hasFigures ? '' : unitlessText(finding)].join('|'));
}
