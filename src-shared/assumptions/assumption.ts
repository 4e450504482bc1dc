import type { Ref } from '../model/plan.ts';

/** What an assumption is about, in the order in which they are listed. */
export const ASSUMPTION_TOPICS = ['choice', 'unit', 'survey', 'room', 'pipe', 'sum'] as const;
export type AssumptionTopic = (typeof ASSUMPTION_TOPICS)[number];

/** Topics as headings. */
export const ASSUMPTION_TOPIC_WORDS: Readonly<Record<AssumptionTopic, string>> = {
  choice: 'Choices nobody has changed',
  unit: 'The unit and its parts',
  survey: 'The floor plan',
  room: 'Rooms and what stands in them',
  pipe: 'Pipe and supports',
  sum: 'How the sums are made',
};

/** Where an assumption is made good: a field of a thing, a choice of the basis of design, or the unit profile. */
export type AssumptionPlace =
  | { readonly kind: 'field'; readonly on: Ref; /** Label of the field on its form. */ readonly label: string }
  | { readonly kind: 'basis'; /** Label of the choice. */ readonly label: string }
  | { readonly kind: 'profile' };

/** Something that the program took for granted in a plan, since nobody said otherwise. */
export interface Assumption {
  /** Stable while the plan changes. */
  readonly id: string;
  readonly topic: AssumptionTopic;
  /** What it is about, as the user knows it: "Signal hut". */
  readonly name: string;
  /** One sentence: what was taken for granted. */
  readonly taken: string;
  /** What would come out otherwise if it were not so. */
  readonly affects: string;
  /** One sentence: where it is confirmed or changed. */
  readonly change: string;
  /** undefined where nothing of the plan can change it. */
  readonly at?: AssumptionPlace;
}
