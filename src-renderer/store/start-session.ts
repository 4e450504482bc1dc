import { USUAL_KERF_m } from '#shared/take-off/nest-pieces';
import { STOCK_LENGTH_m } from '#shared/take-off/pieces-of';
import { feet_m } from '#shared/units/convert';
import type { LayerName, LayerState, Session } from './state.ts';

const SHOWN: LayerState = { visible: true, locked: false };
const LAYERS: Readonly<Record<LayerName, LayerState>> = {
  underlays: SHOWN,
  adjoining: SHOWN,
  enclosures: SHOWN,
  obstructions: SHOWN,
  devices: SHOWN,
  pipes: SHOWN,
  nozzles: SHOWN,
  coverage: SHOWN,
  jets: SHOWN,
  dimensions: SHOWN,
  notes: SHOWN,
  findings: SHOWN,
  grid: SHOWN,
};

/** A window's session before anything was opened or chosen. Heights are common practice, to be typed over. */
export const startSession = (id: string): Session => ({
  id,
  host: null,
  file: null,
  stage: 'survey',
  level: 'level-0',
  tool: 'select',
  toolOptions: {
    pipeHeight_m: feet_m(7.5),
    pipeSize: '3/4',
    pipeFall: 0,
    pipeFollow_m: null,
    pipeDrop_m: null,
    pipeMove: 'stretch',
    openingKind: 'door',
    openingWidth_m: null,
    obstructionKind: 'cabinet',
    obstructionBottom_m: 0,
    obstructionTop_m: feet_m(7),
    deviceKind: 'detector',
    deviceHeight_m: null,
    signKind: 'entrance',
    adjoiningKind: 'corridor',
    orthogonal: true,
    snapGrid: true,
    snapPlan: true,
    snapUnderlay: true,
  },
  selection: [],
  camera: { at: { x: 4, y: 3 }, scale_px_m: 80 },
  board: { width: 800, height: 600 },
  pointer: null,
  layers: LAYERS,
  cut: null,
  sectionHeight_px: 170,
  benchWidth_px: 340,
  pointed: [],
  sideView: 'none',
  sideViewWidth_px: 460,
  takeOff: { stock_m: STOCK_LENGTH_m, kerf_m: USUAL_KERF_m },
  theme: 'system',
  dialog: null,
  message: null,
  refusal: null,
  finding: null,
});
