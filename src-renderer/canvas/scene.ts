import type { DerivedNetwork, Solid, Space } from '#shared/derived/derived';
import type { Evaluation } from '#shared/evaluate';
import type { Level, Plan, Settings } from '#shared/model/plan';
import type { Ink } from '../ink.ts';
import type { LayerName, LayerState } from '../store/state.ts';

/** What a picture of the board is made from. */
export interface Scene {
  readonly evaluation: Evaluation;
  readonly level: string;
  readonly ink: Ink;
  readonly lengths: Settings['lengths'];
  readonly layers: Readonly<Record<LayerName, LayerState>>;
  /** Whether this picture shows a thing, by its key: while something is dragged, one picture rests and the other follows. */
  readonly shows: (key: string) => boolean;
}

/** The plan of a scene. */
export const planOf = (scene: Scene): Plan => scene.evaluation.derived.plan;

/** The level of a scene; undefined when the plan has lost it. */
export const levelOf = (scene: Scene): Level | undefined => planOf(scene).levels[scene.level];

/** Networks of the level. */
export const networksOf = (scene: Scene): DerivedNetwork[] =>
  scene.evaluation.derived.networks.filter((network) => network.network.level === scene.level);

/** Rooms of the level, without their voids. */
export const roomsOf = (scene: Scene): Space[] =>
  scene.evaluation.derived.spaces.filter((space) => space.level.id === scene.level && space.kind === 'room');

/** Things in the way on the level. */
export const solidsOf = (scene: Scene): Solid[] =>
  scene.evaluation.derived.solids.filter((solid) => solid.ref.level === scene.level);

/** Whether a layer is shown. */
export const isShown = (scene: Scene, layer: LayerName): boolean => scene.layers[layer].visible;
