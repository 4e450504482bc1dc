import type { DerivedNetwork, Solid, Space } from '#shared/derived/derived';
import type { Evaluation } from '#shared/evaluate';
import type { Level, Plan, Settings } from '#shared/model/plan';
import type { Ink } from '../ink.ts';
import type { LayerName, LayerState } from '../store/state.ts';
import type { Touched } from './changed-things.ts';

/** What a picture of the board is made from. */
export interface Scene {
  readonly evaluation: Evaluation;
  readonly level: string;
  readonly ink: Ink;
  readonly lengths: Settings['lengths'];
  readonly layers: Readonly<Record<LayerName, LayerState>>;
  /** Whether this picture shows a thing, by its key: while something is dragged, one picture rests and the other follows. */
  readonly shows: (key: string) => boolean;
  /** Where anything that it shows can be; undefined for a picture of everything. It spares looking through all the rest at every step. */
  readonly touched?: Touched;
}

/** The plan of a scene. */
export const planOf = (scene: Scene): Plan => scene.evaluation.derived.plan;

/** The level of a scene; undefined when the plan has lost it. */
export const levelOf = (scene: Scene): Level | undefined => planOf(scene).levels[scene.level];

/** Networks of the level. */
export const networksOf = (scene: Scene): DerivedNetwork[] =>
  scene.evaluation.derived.networks.filter((network) => network.network.level === scene.level && (scene.touched?.networks.has(network.ref.id) ?? true));

const isLevelTouched = ({ touched, level }: Scene): boolean => touched?.levels.has(level) ?? true;

/** The level with what a picture can show of it; undefined where a gesture leaves all that stands on it alone. */
export const shownLevelOf = (scene: Scene): Level | undefined => (isLevelTouched(scene) ? levelOf(scene) : undefined);

/** Rooms of the level, without their voids. */
export const roomsOf = (scene: Scene): Space[] =>
  isLevelTouched(scene) ? scene.evaluation.derived.spaces.filter((space) => space.level.id === scene.level && space.kind === 'room') : [];

/** Things in the way on the level. */
export const solidsOf = (scene: Scene): Solid[] =>
  isLevelTouched(scene) ? scene.evaluation.derived.solids.filter((solid) => solid.ref.level === scene.level) : [];

/** Whether a layer is shown. */
export const isShown = (scene: Scene, layer: LayerName): boolean => scene.layers[layer].visible;
