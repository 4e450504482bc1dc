import type { Host } from '#shared/host/contract';
import type { Desk } from './desk.ts';
import { KERF_m, STOCK_m } from './save-take-off.ts';
import type { LayerName, Session, Store } from '../store/state.ts';

export type Preferences = Readonly<Record<string, string | number | boolean>>;

const SNAPS = ['orthogonal', 'snapGrid', 'snapPlan', 'snapUnderlay'] as const;
const HIDEABLE: readonly LayerName[] = ['coverage', 'jets', 'findings', 'grid'];

/** What of a session is remembered from one start to the next. */
export function preferencesOf(session: Session): Preferences {
  return {
    theme: session.theme,
    benchWidth_px: Math.round(session.benchWidth_px),
    sectionHeight_px: Math.round(session.sectionHeight_px),
    sideViewWidth_px: Math.round(session.sideViewWidth_px),
    stock_m: session.takeOff.stock_m,
    kerf_m: session.takeOff.kerf_m,
    ...Object.fromEntries(SNAPS.map((snap) => [snap, session.toolOptions[snap]])),
    ...Object.fromEntries(HIDEABLE.map((layer) => [`show-${layer}`, session.layers[layer].visible])),
  };
}

const within = (value: unknown, least: number, most: number, otherwise: number): number => (typeof value === 'number' && value >= least && value <= most ? value : otherwise);
const flag = (value: unknown, otherwise: boolean): boolean => (typeof value === 'boolean' ? value : otherwise);

/** A session as the user left it last time; what cannot be used is passed over. */
export function withPreferences(session: Session, remembered: Preferences): Partial<Session> {
  const { theme } = remembered;
  const { toolOptions, layers } = session;
  return {
    theme: theme === 'light' || theme === 'dark' || theme === 'system' ? theme : session.theme,
    benchWidth_px: within(remembered.benchWidth_px, 260, 900, session.benchWidth_px),
    sectionHeight_px: within(remembered.sectionHeight_px, 0, 1200, session.sectionHeight_px),
    sideViewWidth_px: within(remembered.sideViewWidth_px, 240, 2000, session.sideViewWidth_px),
    takeOff: {
      stock_m: within(remembered.stock_m, STOCK_m.least, STOCK_m.most, session.takeOff.stock_m),
      kerf_m: within(remembered.kerf_m, KERF_m.least, KERF_m.most, session.takeOff.kerf_m),
    },
    toolOptions: {
      ...toolOptions,
      orthogonal: flag(remembered.orthogonal, toolOptions.orthogonal),
      snapGrid: flag(remembered.snapGrid, toolOptions.snapGrid),
      snapPlan: flag(remembered.snapPlan, toolOptions.snapPlan),
      snapUnderlay: flag(remembered.snapUnderlay, toolOptions.snapUnderlay),
    },
    layers: Object.fromEntries(
      Object.entries(layers).map(([name, layer]) => [name, { ...layer, visible: flag(remembered[`show-${name}`], layer.visible) }]),
    ) as Session['layers'],
  };
}

/** Writes preferences a moment after they changed. */
export function keepPreferences(store: Store, host: Host, desk: Desk): () => void {
  const text = (): string =>
    JSON.stringify({ ...preferencesOf(store.get().session), lengths: store.get().history.present.settings.lengths, showsSteps: desk.get().showsSteps });
  let written = text();
  let timer: ReturnType<typeof setTimeout> | null = null;
  const look = (): void => {
    if (timer !== null || text() === written) return;
    timer = setTimeout(() => {
      timer = null;
      written = text();
      void host.writePreferences({ preferences: JSON.parse(written) as Preferences });
    }, 400);
  };
  const stops = [store.subscribe(look), desk.subscribe(look)];
  return () => {
    for (const stop of stops) stop();
  };
}
